import { z } from 'zod';
import { miteRate, miteRateBinomial, probabilityAbove, type MiteWash, type RatePer100 } from '#core/mites/miteRate.ts';
import { coloniesToWash, pooledWash, yardMites } from '#core/mites/yardMites.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm, quantile } from '../tolerances.ts';

const input = z.object({
  mites: z.array(z.number()),
  bees: z.array(z.number()),
  thresholdPer100: z.number(),
  precisionD: z.number(),
  apiarySize: z.number().nullish(),
});

/** Fields that come from a quantile or a tail of the gamma or t distribution. */
const QUANTILES = new Set(['lower', 'upper', 'pAbove', 'pAboveIndependent', 'pAboveOverdispersed']);

export const mites: GoldenMethod = {
  method: 'mites',
  compute: (given) => {
    const { mites: found, bees, thresholdPer100, precisionD, apiarySize = null } = input.parse(given);
    const washes = found.map((count, at) => ({ mites: count, bees: bees[at] ?? Number.NaN }));
    return {
      perColony: washes.map((wash) => ({
        poisson: rateForm(miteRate(wash)),
        binomial: rateForm(miteRateBinomial(wash)),
        pAbove: probabilityAbove(wash, thresholdPer100),
      })),
      pooledPoisson: rateForm(miteRate(pooledWash(washes))),
      yard: yardForm(washes, thresholdPer100, precisionD, apiarySize),
    };
  },
  tolerance: (path) => {
    const field = path.at(-1);
    if (field === 'ceil') return 'exact';
    return typeof field === 'string' && QUANTILES.has(field) ? quantile : closedForm;
  },
};

function rateForm(rate: RatePer100 | null): unknown {
  return rate === null ? null : { per100: rate.per100, ...rate.limits };
}

function yardForm(washes: readonly MiteWash[], threshold: number, precision: number, apiarySize: number | null): unknown {
  const yard = yardMites(washes, apiarySize);
  if (yard === null) return null;
  const need = coloniesToWash(yard.cv2, precision, apiarySize);
  const pooled = pooledWash(washes);
  return {
    per100: yard.per100,
    dispersion: yard.dispersion,
    quasi: { seLog: yard.seLog, ...yard.limits },
    quasiFloor1: { seLog: yard.seLogFloor1, ...yard.limitsFloor1 },
    ratio: { se100: yard.ratio.se100, ...yard.ratio.limits, fpc: yard.ratio.factor },
    betweenVar: yard.betweenVariance,
    cv2: yard.cv2,
    needColonies: { D: precision, raw: need.raw, withFpc: need.forYard, ceil: need.colonies },
    pAboveIndependent: probabilityAbove(pooled, threshold),
    pAboveOverdispersed: probabilityAbove(pooled, threshold, Math.max(1, yard.dispersion)),
  };
}
