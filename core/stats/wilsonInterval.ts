import { checkCounts } from './checkCounts.ts';
import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';

/**
 * Wilson score interval, 95 %, for a proportion of `count` out of `of`. Limits are shares in [0, 1].
 *
 * Source: Wilson 1927; Newcombe 1998, Statistics in Medicine 17:857-872, method 3.
 * Edges: `of` = 0 gives null (nothing to estimate); `count` = 0 puts the lower limit at exactly 0,
 * `count` = `of` the upper at exactly 1. Counts that are not whole, negative, or more than `of`: RangeError.
 */
export function wilsonInterval(count: number, of: number): Interval | null {
  checkCounts(count, of);
  if (of === 0) return null;
  const z = NORMAL_QUANTILE_975;
  const rate = count / of;
  const scale = 1 + (z * z) / of;
  const centre = (rate + (z * z) / (2 * of)) / scale;
  const half = (z * Math.sqrt((rate * (1 - rate)) / of + (z * z) / (4 * of * of))) / scale;
  return {
    lower: count === 0 ? 0 : Math.max(0, centre - half),
    upper: count === of ? 1 : Math.min(1, centre + half),
  };
}
