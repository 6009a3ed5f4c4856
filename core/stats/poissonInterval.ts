import { gammaQuantile } from './incompleteGamma.ts';
import type { Interval } from './interval.ts';

/**
 * Exact 95 % interval of a Poisson mean from a count (Garwood 1936, Biometrika 28:437-442). For a rate, divide
 * both limits by what was searched. A count of 0 has the lower limit 0; counts not whole or negative: RangeError.
 */
export function poissonInterval(count: number): Interval {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`a count is a whole number from 0 up, not ${count}`);
  return { lower: count === 0 ? 0 : gammaQuantile(0.025, count), upper: gammaQuantile(0.975, count + 1) };
}
