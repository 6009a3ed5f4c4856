import type { Interval } from './interval.ts';
import { studentTQuantile } from './studentTQuantile.ts';

/** A mean with its spread, in the unit of the values; what one value cannot tell is null, with none all is. */
export interface MeanInterval {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
  readonly se: number | null;
  readonly limits: Interval | null;
}

/**
 * Mean, standard deviation (n - 1) and the 95 % t interval of the mean (Student 1908). The limits are not cut
 * off at 0; where a quantity cannot be negative, show 0 for a lower limit below it.
 */
export function meanInterval(values: readonly number[]): MeanInterval {
  const n = values.length;
  if (n === 0) return { n, mean: null, sd: null, se: null, limits: null };
  const mean = meanOf(values);
  if (n === 1) return { n, mean, sd: null, se: null, limits: null };
  const sd = Math.sqrt(squaresAround(values, mean) / (n - 1));
  const se = sd / Math.sqrt(n);
  const half = studentTQuantile(0.975, n - 1) * se;
  return { n, mean, sd, se, limits: { lower: mean - half, upper: mean + half } };
}

/** Mean of at least one value; a second pass takes away what rounding left of the first. */
export function meanOf(values: readonly number[]): number {
  const first = values.reduce((sum, value) => sum + value, 0) / values.length;
  return first + values.reduce((sum, value) => sum + (value - first), 0) / values.length;
}

/** Sum of squared distances from `centre`. */
export function squaresAround(values: readonly number[], centre: number): number {
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
}
