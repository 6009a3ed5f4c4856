import { erfc } from './cephes.cjs';
import { incompleteBeta } from './incompleteBeta.ts';
import { gammaUpperTail } from './incompleteGamma.ts';

// Every tail is computed itself, never as 1 - the other one: small p-values keep their digits.

/** Beyond this many standard errors a normal tail is smaller than any number. */
const FARTHEST = 37.5;

/** Two-sided p-value of a standard normal deviate: P(|Z| >= |z|). */
export function normalTwoSided(z: number): number {
  const distance = Math.abs(z);
  return distance > FARTHEST ? 0 : erfc(distance / Math.SQRT2);
}

/** Upper tail of the chi-square distribution: P(X >= x) with `df` > 0 degrees of freedom. */
export function chiSquareUpperTail(x: number, df: number): number {
  return gammaUpperTail(x / 2, df / 2);
}

/** Two-sided p-value of Student's t: P(|T| >= |t|); `df` > 0 need not be whole. */
export function studentTTwoSided(t: number, df: number): number {
  return incompleteBeta(df / (df + t * t), df / 2, 0.5);
}

/** Upper tail of the F distribution: P(F >= f); both degrees of freedom > 0, not necessarily whole. */
export function fUpperTail(f: number, df1: number, df2: number): number {
  if (f <= 0) return 1;
  return incompleteBeta(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
}
