import { incompleteBetaInverse } from './incompleteBeta.ts';

/**
 * Quantile of Student's t distribution: the t with P(T <= t) = p, for df degrees of freedom.
 *
 * Method: T^2 / (df + T^2) follows Beta(1/2, df/2) (Abramowitz and Stegun 26.5.27); the smaller of the two
 * beta tails is inverted, so that no digits are lost near t = 0 or far out. df > 0 need not be whole
 * (Welch). p in (0, 1), else RangeError.
 */
export function studentTQuantile(p: number, df: number): number {
  if (!(df > 0)) throw new RangeError(`degrees of freedom are positive, not ${df}`);
  if (!(p > 0 && p < 1)) throw new RangeError(`a t quantile needs a probability between 0 and 1, not ${p}`);
  if (p === 0.5) return 0;
  if (p < 0.5) return -upperHalf(1 - p, p, df);
  return upperHalf(p, 1 - p, df);
}

function upperHalf(p: number, tail: number, df: number): number {
  if (tail < 0.25) {
    const y = incompleteBetaInverse(2 * tail, df / 2, 0.5);
    return Math.sqrt((df * (1 - y)) / y);
  }
  const y = incompleteBetaInverse(2 * (p - 0.5), 0.5, df / 2);
  return Math.sqrt((df * y) / (1 - y));
}
