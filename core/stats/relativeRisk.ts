import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { checkTwoByTwo, type TwoByTwo } from './twoByTwo.ts';

/**
 * Ratio of two loss rates. `rawValue` is the plain ratio (null for 0/0, Infinity for x/0); `value` and limits
 * are those of the table with 0.5 added to each cell where `correctedByHalf` says so, else `value` = `rawValue`.
 */
export interface RelativeRisk {
  readonly value: number;
  readonly limits: Interval;
  readonly rawValue: number | null;
  readonly correctedByHalf: boolean;
}

/**
 * Relative risk of loss, exposed over others, with its 95 % interval on the logarithmic scale.
 * Source: Katz et al. 1978, Biometrics 34:469-474 (from memory). A zero in any cell: 0.5 is added to all four
 * and the result flagged. Both groups empty or not, a value is always given; broken cells: RangeError.
 */
export function relativeRisk(table: TwoByTwo): RelativeRisk {
  checkTwoByTwo(table);
  const { a, b, c, d } = table;
  const correctedByHalf = a === 0 || b === 0 || c === 0 || d === 0;
  const half = correctedByHalf ? 0.5 : 0;
  const n1 = a + b + 2 * half;
  const n2 = c + d + 2 * half;
  const value = (a + half) / n1 / ((c + half) / n2);
  const se = Math.sqrt(1 / (a + half) - 1 / n1 + 1 / (c + half) - 1 / n2);
  const factor = Math.exp(NORMAL_QUANTILE_975 * se);
  const raw = a / (a + b) / (c / (c + d));
  return {
    value,
    limits: { lower: value / factor, upper: value * factor },
    rawValue: Number.isNaN(raw) ? null : raw,
    correctedByHalf,
  };
}
