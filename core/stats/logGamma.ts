import { lgam } from './cephes.cjs';

/**
 * Natural logarithm of the gamma function, for x > 0.
 *
 * Method: Cephes `lgam` (Moshier, Methods and Programs for Mathematical Functions, 1989).
 * Relative error about 1e-15. Throws a RangeError for x <= 0 and for what is not a number.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`log gamma is used for positive numbers only, not for ${x}`);
  return lgam(x);
}
