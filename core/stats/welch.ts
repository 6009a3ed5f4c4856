import type { FTest } from './analysisOfVariance.ts';
import type { GroupOfValues } from './groupedValues.ts';
import { holm } from './holm.ts';
import type { Interval } from './interval.ts';
import { meanInterval } from './meanInterval.ts';
import { studentTQuantile } from './studentTQuantile.ts';
import { fUpperTail, studentTTwoSided } from './tailProbabilities.ts';

/** Difference of two group means (a - b), its 95 % limits, and a p-value adjusted for all pairs after Holm. */
export interface WelchPair {
  readonly a: string;
  readonly b: string;
  readonly difference: number;
  readonly t: number;
  readonly df: number;
  readonly p: number;
  readonly limits: Interval;
  readonly pHolm: number;
}

/**
 * Welch's analysis of variance, for groups of unequal spread (Welch 1951, Biometrika 38:330-336, from memory).
 * Null with fewer than two groups, a group of one value, or a group without any spread.
 */
export function welchAnalysisOfVariance(groups: readonly GroupOfValues[]): FTest | null {
  const k = groups.length;
  const weighed = groups.map(({ values }) => {
    const { n, mean, sd } = meanInterval(values);
    return mean === null || sd === null || sd === 0 ? null : { n, mean, weight: n / sd ** 2 };
  });
  const usable = weighed.filter((group) => group !== null);
  if (k < 2 || usable.length < k) return null;
  const W = usable.reduce((sum, { weight }) => sum + weight, 0);
  const centre = usable.reduce((sum, { weight, mean }) => sum + weight * mean, 0) / W;
  const lack = usable.reduce((sum, { weight, n }) => sum + (1 - weight / W) ** 2 / (n - 1), 0) / (k * k - 1);
  const between = usable.reduce((sum, { weight, mean }) => sum + weight * (mean - centre) ** 2, 0) / (k - 1);
  const F = between / (1 + 2 * (k - 2) * lack);
  const df2 = 1 / (3 * lack);
  return { F, df1: k - 1, df2, p: fUpperTail(F, k - 1, df2) };
}

/**
 * Every pair of groups by Welch's t test, degrees of freedom after Satterthwaite (Welch 1947, from memory).
 * Pairs with a group of one value, or without any spread in both, cannot be tested and are left out.
 */
export function welchPairs(groups: readonly GroupOfValues[]): readonly WelchPair[] {
  const pairs = groups.flatMap((a, at) => groups.slice(at + 1).flatMap((b) => welchPair(a, b)));
  const adjusted = holm(pairs.map(({ p }) => p));
  return pairs.map((pair, at) => ({ ...pair, pHolm: adjusted[at] as number }));
}

function welchPair(a: GroupOfValues, b: GroupOfValues): readonly Omit<WelchPair, 'pHolm'>[] {
  const one = meanInterval(a.values);
  const other = meanInterval(b.values);
  if (one.mean === null || other.mean === null || one.se === null || other.se === null) return [];
  const variance = one.se ** 2 + other.se ** 2;
  if (variance === 0) return [];
  const se = Math.sqrt(variance);
  const difference = one.mean - other.mean;
  const df = variance ** 2 / (one.se ** 4 / (one.n - 1) + other.se ** 4 / (other.n - 1));
  const t = difference / se;
  const half = studentTQuantile(0.975, df) * se;
  return [{ a: a.group, b: b.group, difference, t, df, p: studentTTwoSided(t, df), limits: { lower: difference - half, upper: difference + half } }];
}
