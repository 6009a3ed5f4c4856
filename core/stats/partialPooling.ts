import { varianceComponents, type VarianceComponents } from './analysisOfVariance.ts';
import type { GroupOfValues } from './groupedValues.ts';
import type { Interval } from './interval.ts';
import { meanOf } from './meanInterval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';

/** A group's mean, and the mean pulled towards the whole; `shrinkage` 0 = left alone, 1 = all the way. */
export interface PooledGroup {
  readonly group: string;
  readonly n: number;
  readonly mean: number;
  readonly shrinkage: number;
  readonly pooled: number;
  readonly pooledSe: number;
  readonly limits: Interval;
}

/** Empirical-Bayes estimate; `tau2` is the variance between groups (0: no sign that they differ). */
export interface PartialPooling {
  readonly components: VarianceComponents;
  readonly n0: number;
  /** The moment estimate before it is kept from going below 0. */
  readonly tau2Raw: number;
  readonly tau2: number;
  readonly mu: number;
  readonly seMu: number;
  readonly groups: readonly PooledGroup[];
}

/**
 * Partial pooling of group means: small groups are pulled towards the overall mean before they are ranked.
 *
 * Method: normal model, variance between groups by moments from a one-way analysis of variance (equal to REML
 * for balanced data), means weighed by it; the 95 % limits ignore the error in tau2 and are somewhat short for
 * fewer than 6 groups. Source: Efron and Morris 1975; Searle et al. 1992 (from memory).
 * Null for fewer than 3 groups or one value in each: then do not pool. No spread within groups: no shrinkage.
 * `spent`: degrees of freedom that were used up before, for effects (of years) taken out of the values; the spread
 * within groups is then judged on that many fewer, as the residual of the two-way fit is.
 */
export function partialPooling(groups: readonly GroupOfValues[], spent = 0): PartialPooling | null {
  const components = lessSpent(varianceComponents(groups), spent);
  if (components === null || components.groups < 3) return null;
  const { msWithin, msBetween, n: N, groups: k } = components;
  if (msWithin === null || msBetween === null) return null;
  const squares = groups.reduce((sum, { values }) => sum + values.length ** 2, 0);
  const n0 = (N - squares / N) / (k - 1);
  const tau2Raw = (msBetween - msWithin) / n0;
  const tau2 = Math.max(0, tau2Raw);
  const means = groups.map(({ group, values }) => ({ group, n: values.length, mean: meanOf(values), v: msWithin / values.length }));
  // All values equal: every weight would be infinite, and any weights give the same mean.
  const weights = means.map(({ v }) => (tau2 + v === 0 ? 1 : 1 / (tau2 + v)));
  const W = weights.reduce((sum, weight) => sum + weight, 0);
  const mu = means.reduce((sum, { mean }, g) => sum + (weights[g] as number) * mean, 0) / W;
  const varMu = tau2 + msWithin === 0 ? 0 : 1 / W;
  return {
    components,
    n0,
    tau2Raw,
    tau2,
    mu,
    seMu: Math.sqrt(varMu),
    groups: means.map(({ group, n, mean, v }) => {
      const shrinkage = v === 0 ? 0 : v / (v + tau2);
      const pooled = mu + (1 - shrinkage) * (mean - mu);
      const pooledSe = Math.sqrt((1 - shrinkage) * v + shrinkage ** 2 * varMu);
      const half = NORMAL_QUANTILE_975 * pooledSe;
      return { group, n, mean, shrinkage, pooled, pooledSe, limits: { lower: pooled - half, upper: pooled + half } };
    }),
  };
}

function lessSpent(components: VarianceComponents | null, spent: number): VarianceComponents | null {
  if (components === null || spent === 0) return components;
  const dfWithin = components.dfWithin - spent;
  return { ...components, dfWithin, msWithin: dfWithin > 0 ? components.ssWithin / dfWithin : null };
}
