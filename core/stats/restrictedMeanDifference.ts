import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import type { RestrictedMean } from './restrictedMean.ts';

/** One restricted mean less another, in the unit of the time axis. */
export interface RestrictedMeanDifference {
  readonly value: number;
  readonly se: number;
  readonly interval: Interval;
}

/**
 * Difference of two restricted means of independent groups with its 95 % interval: se is the root of the sum
 * of squares, the quantile normal. Source: Royston and Parmar 2013, BMC Med Res Methodol 13:152 (from memory).
 * Both must be restricted to the same time, else RangeError.
 */
export function restrictedMeanDifference(one: RestrictedMean, other: RestrictedMean): RestrictedMeanDifference {
  if (one.tau !== other.tau) throw new RangeError(`means restricted to ${one.tau} and ${other.tau} cannot be compared`);
  const value = one.value - other.value;
  const se = Math.hypot(one.se, other.se);
  return { value, se, interval: { lower: value - NORMAL_QUANTILE_975 * se, upper: value + NORMAL_QUANTILE_975 * se } };
}
