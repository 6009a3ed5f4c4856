import { igam, igamc, igami } from './cephes.cjs';
import { logGamma } from './logGamma.ts';

/** ln of the smallest positive number Cephes works with; beyond it, it reports an underflow instead of 0. */
const LOWEST_LOG = -709;

/** Lower tail of the gamma distribution with the given shape and rate 1: P(X <= x). Shape > 0. */
export function gammaLowerTail(x: number, shape: number): number {
  checkShape(shape);
  if (x <= 0) return 0;
  if (vanishes(x, shape)) return x > shape ? 1 : 0;
  return igam(shape, x);
}

/**
 * Upper tail of the gamma distribution with the given shape and rate 1: P(X > x), computed itself and not as
 * 1 - lower tail, so that small probabilities keep their digits.
 *
 * Method: Cephes `igamc`; relative error below 1e-11 for shapes up to 20,000. Below about 1e-308 it is 0.
 */
export function gammaUpperTail(x: number, shape: number): number {
  checkShape(shape);
  if (x <= 0) return 1;
  if (vanishes(x, shape)) return x > shape ? 0 : 1;
  return igamc(shape, x);
}

/** Quantile of the gamma distribution with rate 1: the x with P(X <= x) = p. Cephes `igami`; p in [0, 1). */
export function gammaQuantile(p: number, shape: number): number {
  checkShape(shape);
  if (!(p >= 0 && p < 1)) throw new RangeError(`a gamma quantile needs a probability from 0 to below 1, not ${p}`);
  return p === 0 ? 0 : igami(shape, 1 - p);
}

/** True if the gamma density at x is too small for a number, so that x lies far out in one of the tails. */
function vanishes(x: number, shape: number): boolean {
  return shape * Math.log(x) - x - logGamma(shape) < LOWEST_LOG;
}

function checkShape(shape: number): void {
  if (!(shape > 0)) throw new RangeError(`the shape of a gamma distribution is positive, not ${shape}`);
}
