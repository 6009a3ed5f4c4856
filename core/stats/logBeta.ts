import { logGamma } from './logGamma.ts';

const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;
const STIRLING_FROM = 10;

/** What Stirling's formula for ln Gamma(x) leaves out, for x >= 10 (next term below 1e-16). */
function stirlingRest(x: number): number {
  const r = 1 / (x * x);
  return (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - r * (691 / 360360)))))) / x;
}

/**
 * Natural logarithm of the beta function B(a, b), for a, b > 0.
 *
 * Method: ln Gamma(a) + ln Gamma(b) - ln Gamma(a + b); where an argument is 10 or more the Stirling parts
 * are cancelled by hand (DiDonato and Morris 1992, ACM TOMS 708), because the difference of large
 * logarithms would lose half the digits when b is in the millions.
 */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < STIRLING_FROM) return logGamma(small) + logGamma(large) - logGamma(small + large);
  const share = small / (small + large);
  if (small >= STIRLING_FROM) {
    const rest = stirlingRest(small) + stirlingRest(large) - stirlingRest(small + large);
    return (
      -0.5 * Math.log(large) + HALF_LOG_TWO_PI + rest + (small - 0.5) * Math.log(share) + large * Math.log1p(-share)
    );
  }
  const rest = stirlingRest(large) - stirlingRest(small + large);
  return logGamma(small) + rest + small - small * Math.log(small + large) + (large - 0.5) * Math.log1p(-share);
}
