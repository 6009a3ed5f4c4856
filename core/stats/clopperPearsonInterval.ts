import { checkCounts } from './checkCounts.ts';
import { incompleteBetaInverse } from './incompleteBeta.ts';
import type { Interval } from './interval.ts';

const TAIL = 0.025;

/**
 * Clopper-Pearson ("exact") interval for a proportion, guaranteed to cover at least 95 %.
 * Limits are shares in [0, 1].
 *
 * Source: Clopper and Pearson 1934, Biometrika 26:404-413; Newcombe 1998, method 5.
 * Method: beta quantiles; closed forms at the ends. Edges and errors as for `wilsonInterval`.
 */
export function clopperPearsonInterval(count: number, of: number): Interval | null {
  checkCounts(count, of);
  if (of === 0) return null;
  return { lower: lowerLimit(count, of), upper: upperLimit(count, of) };
}

function lowerLimit(count: number, of: number): number {
  if (count === 0) return 0;
  if (count === of) return TAIL ** (1 / of);
  return incompleteBetaInverse(TAIL, count, of - count + 1);
}

function upperLimit(count: number, of: number): number {
  if (count === of) return 1;
  if (count === 0) return -Math.expm1(Math.log(TAIL) / of);
  return incompleteBetaInverse(1 - TAIL, count + 1, of - count);
}
