import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { checkTwoByTwo, type TwoByTwo } from './twoByTwo.ts';
import { wilsonInterval } from './wilsonInterval.ts';

/** Difference of two loss rates (exposed - others), in shares; `newcombe` is the interval to show. */
export interface RiskDifference {
  readonly value: number;
  readonly newcombe: Interval;
  /** The textbook interval; it collapses where nothing or everything was lost. */
  readonly wald: Interval;
}

/**
 * Risk difference with its 95 % interval. Source: Newcombe 1998, Statistics in Medicine 17:873-890, method 10
 * (hybrid score). Null if either group is empty; broken cells: RangeError.
 */
export function riskDifference(table: TwoByTwo): RiskDifference | null {
  checkTwoByTwo(table);
  const { a, b, c, d } = table;
  const exposed = wilsonInterval(a, a + b);
  const others = wilsonInterval(c, c + d);
  if (exposed === null || others === null) return null;
  const p1 = a / (a + b);
  const p2 = c / (c + d);
  const value = p1 - p2;
  const half = NORMAL_QUANTILE_975 * Math.sqrt((p1 * (1 - p1)) / (a + b) + (p2 * (1 - p2)) / (c + d));
  return {
    value,
    newcombe: {
      lower: value - Math.hypot(p1 - exposed.lower, others.upper - p2),
      upper: value + Math.hypot(exposed.upper - p1, p2 - others.lower),
    },
    wald: { lower: value - half, upper: value + half },
  };
}
