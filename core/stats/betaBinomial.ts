import { compensatedSum } from './compensatedSum.ts';

/** Beta-binomial distribution of a count 0..n; `pmf[k]` and `cdf[k]` have n + 1 elements. */
export interface BetaBinomial {
  readonly n: number;
  readonly alpha: number;
  readonly beta: number;
  readonly pmf: readonly number[];
  readonly cdf: readonly number[];
  readonly mean: number;
  readonly variance: number;
}

/**
 * Beta-binomial distribution: the number lost of `n` when the rate itself is a draw from Beta(alpha, beta).
 *
 * Method: the ratio P(k+1)/P(k) = (n-k)(k+alpha) / ((k+1)(n-k-1+beta)) summed in logarithms with
 * compensation, then scaled to sum to 1: no gamma functions, no overflow, digits kept for thousands of
 * colonies. Source: Skellam 1948 (from memory). alpha = beta = 1 is uniform on 0..n.
 * n a whole number >= 0, alpha and beta > 0, else RangeError. O(n).
 */
export function betaBinomial(n: number, alpha: number, beta: number): BetaBinomial {
  if (!Number.isSafeInteger(n) || n < 0) throw new RangeError(`a number of colonies is whole and not negative, not ${n}`);
  if (!(alpha > 0 && beta > 0 && Number.isFinite(alpha + beta))) {
    throw new RangeError(`alpha and beta are positive numbers, not ${alpha} and ${beta}`);
  }
  const logRatios = Array.from({ length: n }, (_, k) => Math.log(((n - k) * (k + alpha)) / ((k + 1) * (n - k - 1 + beta))));
  const logs = [0, ...compensatedSum(logRatios)];
  const highest = logs.reduce((top, log) => Math.max(top, log), -Infinity);
  const weights = logs.map((log) => Math.exp(log - highest));
  const total = compensatedSum(weights).at(-1) ?? 1;
  const pmf = weights.map((weight) => weight / total);
  const sum = alpha + beta;
  return {
    n,
    alpha,
    beta,
    pmf,
    cdf: compensatedSum(pmf).map((p) => Math.min(1, p)),
    mean: (n * alpha) / sum,
    variance: (n * alpha * beta * (sum + n)) / (sum * sum * (sum + 1)),
  };
}
