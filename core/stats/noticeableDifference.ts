import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { normalTwoSided } from './tailProbabilities.ts';

/**
 * Power of the usual two-sided test, level 0.05, of two rates `p1` and `p2` seen in `n` colonies each: the chance
 * that such a difference is noticed. Normal approximation, the far tail left out.
 * Source: the formula of R's `power.prop.test` (from memory; checked against it).
 */
export function powerOfTwoRates(n: number, p1: number, p2: number): number {
  const both = (p1 + p2) / 2;
  const same = Math.sqrt(2 * both * (1 - both));
  const own = Math.sqrt(p1 * (1 - p1) + p2 * (1 - p2));
  if (own === 0) return p1 === p2 ? 0.025 : 1;
  const z = (Math.sqrt(n) * Math.abs(p1 - p2) - NORMAL_QUANTILE_975 * same) / own;
  const tail = normalTwoSided(z) / 2;
  return z > 0 ? 1 - tail : tail;
}

/**
 * The smallest difference between two halves of `total` colonies, their mean rate being `rate`, that would be
 * noticed with the chance `power`; in shares. Null if even the largest that fits such a mean would not be, or with
 * fewer than four colonies. A rate outside (0, 1) gives null too: nothing can differ.
 */
export function noticeableDifference(total: number, rate: number, power = 0.8): number | null {
  if (total < 4 || !(rate > 0 && rate < 1)) return null;
  const most = 2 * Math.min(rate, 1 - rate);
  const noticed = (difference: number) => powerOfTwoRates(total / 2, rate + difference / 2, rate - difference / 2) >= power;
  if (!noticed(most)) return null;
  let [low, high] = [0, most];
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (noticed(middle)) high = middle;
    else low = middle;
  }
  return high;
}
