import { halfDayRange } from './halfDays.ts';

/**
 * Times under observation, one row a colony (or a piece of one): it is watched from `entry` (not included) to
 * `exit` (included), and `status` is 1 if it was lost at `exit`, 0 if it was still alive then (sold, given,
 * united, or the record was cut off). Any one unit of time, counted from any one origin.
 */
export interface SurvivalSpans {
  readonly entry: ArrayLike<number>;
  readonly exit: ArrayLike<number>;
  readonly status: ArrayLike<number>;
}

/** Rows that say nothing about the curve and were left out, with how many of each there were. */
export interface LeftOutSpans {
  /** entry = exit: watched for no time at all. */
  readonly zeroLength: number;
  /** Ended on or before the start of the curve. */
  readonly endedBeforeStart: number;
}

/** Spans made ready for sweeping: each column in ascending order by itself. */
export interface SortedSpans {
  readonly entries: Float64Array;
  readonly exits: Float64Array;
  /** The exits at which a colony was lost. */
  readonly losses: Float64Array;
  /** Where the time axis starts. */
  readonly start: number;
  readonly leftOut: LeftOutSpans;
}

/**
 * Checks the rows and sorts their times, O(n log n), typed arrays inside. Rows in which nothing could be seen
 * are left out and counted. `start` cuts the axis: a colony that entered earlier enters there.
 *
 * Risk sets need only the sorted columns, never the rows: the number at risk at t is the number of entries
 * before t less the number of exits before t.
 * Throws a RangeError naming the row (from 0) for columns of unequal length, times that are not finite, an
 * exit before its entry, or a status other than 0 and 1.
 */
export function sortSpans(spans: SurvivalSpans, start = 0): SortedSpans {
  const { entry, exit, status } = spans;
  const rows = entry.length;
  if (exit.length !== rows || status.length !== rows) {
    throw new RangeError(`entry, exit and status need as many rows each, not ${rows}, ${exit.length} and ${status.length}`);
  }
  const entries = new Float64Array(rows);
  const exits = new Float64Array(rows);
  const losses = new Float64Array(rows);
  let kept = 0;
  let lost = 0;
  let zeroLength = 0;
  let endedBeforeStart = 0;
  for (let row = 0; row < rows; row++) {
    const from = entry[row] as number;
    const to = exit[row] as number;
    const ended = status[row] as number;
    if (!Number.isFinite(from) || !Number.isFinite(to)) throw new RangeError(`row ${row}: entry ${from} or exit ${to} is not a time`);
    if (to < from) throw new RangeError(`row ${row}: exit ${to} lies before entry ${from}`);
    if (ended !== 0 && ended !== 1) throw new RangeError(`row ${row}: status is ${ended}, but only 0 and 1 are known`);
    if (to === from) {
      zeroLength++;
    } else if (to <= start) {
      endedBeforeStart++;
    } else {
      entries[kept] = Math.max(from, start);
      exits[kept] = to;
      kept++;
      if (ended === 1) losses[lost++] = to;
    }
  }
  return {
    entries: ascending(entries.subarray(0, kept)),
    exits: ascending(exits.subarray(0, kept)),
    losses: ascending(losses.subarray(0, lost)),
    start,
    leftOut: { zeroLength, endedBeforeStart },
  };
}

/**
 * The column sorted in place. Times in whole or half days of a few years take few values, so many of them are
 * counted and written out again in O(n); others are sorted.
 */
function ascending(column: Float64Array): Float64Array {
  if (column.length < 256) return column.sort();
  const range = halfDayRange(column);
  if (range === null) return column.sort();
  const { low, high } = range;
  const counts = new Uint32Array(2 * (high - low) + 1);
  for (let at = 0; at < column.length; at++) {
    const place = 2 * ((column[at] as number) - low);
    counts[place] = (counts[place] as number) + 1;
  }
  for (let place = 0, at = 0; place < counts.length; place++) {
    const until = at + (counts[place] as number);
    column.fill(low + place / 2, at, until);
    at = until;
  }
  return column;
}

/** How many values of an ascending column lie below `time`, O(log n). */
export function countBelow(sorted: Float64Array, time: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const mid = (low + high) >>> 1;
    if ((sorted[mid] as number) < time) low = mid + 1;
    else high = mid;
  }
  return low;
}
