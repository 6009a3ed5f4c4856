import type { SurvivalSpans } from './survivalSpans.ts';

/** A value that holds from `time` on, until the next one of the same row is known. */
export interface TimedValue {
  readonly time: number;
  readonly value: number;
}

/** Pieces of the rows given: `row` is the row (from 0) that a piece comes from, `value` what was last known at its entry. */
export interface SplitSpans extends SurvivalSpans {
  readonly entry: readonly number[];
  readonly exit: readonly number[];
  readonly status: readonly number[];
  readonly row: readonly number[];
  readonly value: readonly (number | null)[];
}

/**
 * Cuts each span where a new value of a time-varying covariate becomes known, so that every piece carries the
 * value last known when it began: a later value is never used for an earlier stretch. Counting process form after
 * Andersen and Gill 1982, Ann Stat 10:1100-1120 (from memory); the same rows as `tmerge` of R's survival package.
 *
 * A value known at or before the entry holds from the entry; one known at the exit or after it is not used, for
 * a value of the day of the loss was not known before it. Before the first value: null. Of two values of one
 * time the later in the list holds. Only the last piece of a row can have its loss. `values` has one list a row,
 * in any order; fewer lists than rows, or a time that is not finite: RangeError.
 */
export function splitSpans(spans: SurvivalSpans, values: readonly (readonly TimedValue[])[]): SplitSpans {
  const rows = spans.entry.length;
  if (values.length !== rows) throw new RangeError(`every row needs its list of values: ${rows} rows, ${values.length} lists`);
  const pieces = { entry: [] as number[], exit: [] as number[], status: [] as number[], row: [] as number[], value: [] as (number | null)[] };
  for (let row = 0; row < rows; row++) {
    const exit = spans.exit[row] as number;
    const known = (values[row] as readonly TimedValue[]).toSorted((one, other) => one.time - other.time);
    if (known.some(({ time }) => !Number.isFinite(time))) throw new RangeError(`row ${row}: a value has no time`);
    let from = spans.entry[row] as number;
    let value: number | null = null;
    const push = (until: number, status: number) => {
      pieces.entry.push(from);
      pieces.exit.push(until);
      pieces.status.push(status);
      pieces.row.push(row);
      pieces.value.push(value);
    };
    for (const next of known) {
      if (next.time >= exit) break;
      if (next.time > from) {
        push(next.time, 0);
        from = next.time;
      }
      value = next.value;
    }
    push(exit, spans.status[row] as number);
  }
  return pieces;
}
