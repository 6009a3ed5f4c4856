import { countBelow, type SortedSpans } from './survivalSpans.ts';

/**
 * Number at risk at time t: entry < t <= exit. At the start of the axis itself, where that rule would always
 * give 0, it is the number that begin there. For the row of counts under a survival curve.
 */
export function numberAtRisk(spans: SortedSpans, time: number): number {
  if (time < spans.start) return 0;
  if (time === spans.start) return firstAbove(spans.entries, time);
  return countBelow(spans.entries, time) - countBelow(spans.exits, time);
}

/**
 * The earliest time from which on at least `minimum` are watched (those that entered by then and have not
 * left), or null if there never are so many.
 */
export function firstTimeWithAtLeast(minimum: number, spans: SortedSpans): number | null {
  const { entries, exits } = spans;
  let gone = 0;
  for (let come = 0; come < entries.length; come++) {
    const time = entries[come] as number;
    if (entries[come + 1] === time) continue;
    while (gone < exits.length && (exits[gone] as number) <= time) gone++;
    if (come + 1 - gone >= minimum) return time;
  }
  return null;
}

/** How many values of an ascending column lie at or below `time`. */
function firstAbove(sorted: Float64Array, time: number): number {
  let count = countBelow(sorted, time);
  while (count < sorted.length && sorted[count] === time) count++;
  return count;
}
