import { z } from 'zod';
import { analysisOfVariance } from '#core/stats/analysisOfVariance.ts';
import { groupedValues } from '#core/stats/groupedValues.ts';
import { meanInterval, type MeanInterval } from '#core/stats/meanInterval.ts';
import { partialPooling, type PartialPooling } from '#core/stats/partialPooling.ts';
import { welchAnalysisOfVariance, welchPairs } from '#core/stats/welch.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm, quantile, tailProbability } from '../tolerances.ts';

const input = z.object({ yield: z.array(z.number()), group: z.array(z.union([z.string(), z.number()])) });

const COUNTS = new Set(['n', 'dfBetween', 'dfWithin', 'df1']);

export const yieldPerColony: GoldenMethod = {
  method: 'yield',
  compute: (given) => {
    const { yield: values, group } = input.parse(given);
    const groups = groupedValues(values, group.map(String));
    const anova = analysisOfVariance(groups);
    const pooling = partialPooling(groups);
    return {
      overall: meanForm(meanInterval(values)),
      byGroup: Object.fromEntries(groups.map((one) => [one.group, meanForm(meanInterval(one.values))])),
      anova: anova === null ? null : { dfBetween: anova.df1, dfWithin: anova.df2, F: anova.F, p: anova.p },
      welchAnova: welchAnalysisOfVariance(groups),
      welchPairs: welchPairs(groups).map(({ a, b, difference, t, df, p, limits, pHolm }) => ({ a, b, diff: difference, t, df, p, ...limits, pHolm })),
      empiricalBayes: pooling === null ? null : poolingForm(pooling),
    };
  },
  tolerance: (path, want) => {
    const field = path.findLast((step) => typeof step === 'string');
    if (field === 'p' || field === 'pHolm') return tailProbability(want);
    if (typeof field === 'string' && COUNTS.has(field)) return 'exact';
    return path[0] === 'welchPairs' ? quantile : closedForm;
  },
};

function meanForm({ n, mean, sd, se, limits }: MeanInterval): unknown {
  return { n, mean, sd, se, lower: limits?.lower ?? null, upper: limits?.upper ?? null };
}

function poolingForm({ components, groups, ...rest }: PartialPooling): unknown {
  const { ssWithin, ssBetween, msWithin, msBetween } = components;
  return {
    ...rest,
    ssWithin,
    ssBetween,
    msWithin,
    msBetween,
    groups: groups.map(({ group }) => group),
    n: groups.map(({ n }) => n),
    mean: groups.map(({ mean }) => mean),
    shrinkage: groups.map(({ shrinkage }) => shrinkage),
    pooled: groups.map(({ pooled }) => pooled),
    pooledSe: groups.map(({ pooledSe }) => pooledSe),
    lower: groups.map(({ limits }) => limits.lower),
    upper: groups.map(({ limits }) => limits.upper),
  };
}
