import { clopperPearsonInterval } from './clopperPearsonInterval.ts';
import type { Interval } from './interval.ts';
import { wilsonInterval } from './wilsonInterval.ts';

/** A share with the counts it comes from; `rate` and both 95 % intervals are null when `of` is 0. */
export interface Proportion {
  readonly count: number;
  readonly of: number;
  readonly rate: number | null;
  readonly wilson: Interval | null;
  readonly clopperPearson: Interval | null;
}

/**
 * `count` out of `of` as a share in [0, 1], with its Wilson interval (the one to show) and its
 * Clopper-Pearson interval (where "at least 95 %" is wanted). Errors as for `wilsonInterval`.
 */
export function proportion(count: number, of: number): Proportion {
  return {
    count,
    of,
    rate: of === 0 ? null : count / of,
    wilson: wilsonInterval(count, of),
    clopperPearson: clopperPearsonInterval(count, of),
  };
}
