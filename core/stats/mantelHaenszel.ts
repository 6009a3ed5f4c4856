import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { chiSquareUpperTail } from './tailProbabilities.ts';
import { checkTwoByTwo, type TwoByTwo } from './twoByTwo.ts';

/** Relative risk and risk difference common to several strata, the strata never added into one table. */
export interface MantelHaenszel {
  /** Strata with somebody in both groups; the others compare nothing. */
  readonly strata: number;
  /** Null if nobody was lost in either group. Infinity or 0 where only one group has losses. */
  readonly relativeRisk: number | null;
  /** Null where either group has no losses: the logarithm has no spread then. */
  readonly limits: Interval | null;
  /** Weighted mean of the strata's risk differences, exposed - others; null without a stratum. */
  readonly riskDifference: number | null;
  readonly differenceLimits: Interval | null;
  /** Cochran-Mantel-Haenszel chi-square on 1 df, without continuity correction; null if nothing can vary. */
  readonly chiSquare: number | null;
  readonly p: number | null;
}

/**
 * Source: Mantel and Haenszel 1959, J Natl Cancer Inst 22:719-748; variance of ln RR: Greenland and Robins 1985,
 * Biometrics 41:55-68, as is the risk difference's with Sato's form of its variance (1989, Biometrics 45:1323-1324);
 * all from memory. RR = sum(a n2/n) / sum(c n1/n); weights of the difference n1 n2/n. Broken cells: RangeError.
 */
export function mantelHaenszel(tables: readonly TwoByTwo[]): MantelHaenszel {
  for (const table of tables) checkTwoByTwo(table);
  const used = tables.filter(({ a, b, c, d }) => a + b > 0 && c + d > 0);
  const sum = (of: (table: TwoByTwo, n1: number, n2: number, n: number) => number): number =>
    used.reduce((total, table) => total + of(table, table.a + table.b, table.c + table.d, table.a + table.b + table.c + table.d), 0);
  const top = sum(({ a }, _, n2, n) => (a * n2) / n);
  const bottom = sum(({ c }, n1, _, n) => (c * n1) / n);
  const spread = sum(({ a, c }, n1, n2, n) => (n1 * n2 * (a + c) - a * c * n) / (n * n));
  const weight = sum((_, n1, n2, n) => (n1 * n2) / n);
  const excess = sum(({ a, c }, n1, _, n) => a - ((a + c) * n1) / n);
  const variance = sum(({ a, b, c, d }, n1, n2, n) => (n < 2 ? 0 : (n1 * n2 * (a + c) * (b + d)) / (n * n * (n - 1))));
  const factor = top > 0 && bottom > 0 ? Math.exp(NORMAL_QUANTILE_975 * Math.sqrt(spread / (top * bottom))) : null;
  const relativeRisk = top === 0 && bottom === 0 ? null : top / bottom;
  const difference = weight === 0 ? null : (top - bottom) / weight;
  return {
    strata: used.length,
    relativeRisk,
    limits: factor === null || relativeRisk === null ? null : { lower: relativeRisk / factor, upper: relativeRisk * factor },
    riskDifference: difference,
    differenceLimits: difference === null ? null : differenceLimits(used, difference, weight),
    chiSquare: variance > 0 ? (excess * excess) / variance : null,
    p: variance > 0 ? chiSquareUpperTail((excess * excess) / variance, 1) : null,
  };
}

function differenceLimits(used: readonly TwoByTwo[], difference: number, weight: number): Interval {
  let p = 0;
  let q = 0;
  for (const { a, b, c, d } of used) {
    const [n1, n2] = [a + b, c + d];
    const n = n1 + n2;
    p += (n1 * n1 * c - n2 * n2 * a + (n1 * n2 * (n2 - n1)) / 2) / (n * n);
    q += (a * d + b * c) / (2 * n);
  }
  const half = NORMAL_QUANTILE_975 * Math.sqrt(Math.max(0, difference * p + q)) / weight;
  return { lower: Math.max(-1, difference - half), upper: Math.min(1, difference + half) };
}
