import { z } from 'zod';
import {
  cheapestPurchase,
  coloniesToBuy,
  forecastLosses,
  lossQuantile,
  splitsToMake,
  survivorRange,
  type LossForecast,
} from '#core/order/forecastLosses.ts';
import { betaPriorByMoments } from '#core/stats/betaPriorByMoments.ts';
import { Asked } from '../compare.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm } from '../tolerances.ts';

const input = z.object({
  past: z.object({ lost: z.array(z.number()), atRisk: z.array(z.number()) }),
  nNext: z.number(),
  target: z.number(),
  underCost: z.number(),
  overCost: z.number(),
  splitSuccess: z.number(),
  MDefault: z.number(),
});
const askedQuantiles = z.array(z.object({ p: z.number() }));
const askedCounts = z.object({ k: z.array(z.number()) });

const COUNTS = new Set(['seasons', 'losses', 'm', 'lower', 'upper', 'k']);

export const forecast: GoldenMethod = {
  method: 'forecast',
  compute: (given) => {
    const { past, nNext, target, underCost, overCost, splitSuccess, MDefault } = input.parse(given);
    const winters = past.atRisk.map((atRisk, at) => ({ atRisk, lost: past.lost[at] ?? Number.NaN }));
    const prior = betaPriorByMoments(winters, MDefault);
    if (prior === null) throw new Error('no past winter with colonies at risk');
    const next = forecastLosses(prior, nNext);
    const survivors = survivorRange(next, 0.8);
    const buy = coloniesToBuy(next, target, 0.9);
    const cheapest = cheapestPurchase(next, target, underCost, overCost);
    const splits = splitsToMake(next, target, 0.9, splitSuccess);
    return {
      prior,
      mean: next.losses.mean,
      var: next.losses.variance,
      quantiles: new Asked((want) =>
        askedQuantiles.parse(want).map(({ p }) => ({ p, losses: lossQuantile(next, p) })),
      ),
      survivors80: { lower: survivors.low, upper: survivors.high },
      buyShortfall10: {
        m: buy.colonies,
        pShortfall: buy.probabilityShort,
        expectedShort: buy.expectedShort,
        expectedLeft: buy.expectedLeft,
      },
      newsvendor: { criticalRatio: cheapest.criticalRatio, m: cheapest.colonies, cost: cheapest.expectedCost },
      splitsShortfall10: { m: splits.splits, pShortfall: splits.probabilityShort },
      pmf: next.losses.pmf,
      cdf: next.losses.cdf,
      pmfAt: new Asked((want) => probabilitiesAt(next, askedCounts.parse(want).k)),
    };
  },
  tolerance: (path) => (path.some((step) => typeof step === 'string' && COUNTS.has(step)) ? 'exact' : closedForm),
};

/** A point outside 0..n yields undefined, which matches nothing. */
function probabilitiesAt({ losses }: LossForecast, counts: readonly number[]): unknown {
  return { k: counts, pmf: counts.map((k) => losses.pmf[k]), cdf: counts.map((k) => losses.cdf[k]) };
}
