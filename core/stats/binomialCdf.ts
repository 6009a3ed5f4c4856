import { compensatedSum } from './compensatedSum.ts';

/**
 * Distribution function of the binomial distribution: element k is P(at most k of n), k = 0..n.
 *
 * Method: term ratios summed in logarithms with compensation, scaled to sum to 1. O(n).
 * n a whole number >= 0, p in [0, 1], else RangeError.
 */
export function binomialCdf(n: number, p: number): readonly number[] {
  if (!Number.isSafeInteger(n) || n < 0) throw new RangeError(`a number of trials is whole and not negative, not ${n}`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability lies between 0 and 1, not at ${p}`);
  if (p === 0) return Array.from({ length: n + 1 }, () => 1);
  if (p === 1) return Array.from({ length: n + 1 }, (_, k) => (k === n ? 1 : 0));
  const logOdds = Math.log(p) - Math.log1p(-p);
  const logs = [0, ...compensatedSum(Array.from({ length: n }, (_, k) => Math.log((n - k) / (k + 1)) + logOdds))];
  const highest = logs.reduce((top, log) => Math.max(top, log), -Infinity);
  const sums = compensatedSum(logs.map((log) => Math.exp(log - highest)));
  const total = sums.at(-1) ?? 1;
  return sums.map((sum) => Math.min(1, sum / total));
}
