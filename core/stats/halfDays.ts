/** The least and the greatest of some times. */
export interface TimeRange {
  readonly low: number;
  readonly high: number;
}

/**
 * The range of times in whole or half days that take few values beside their number, so that they can be counted
 * instead of compared; null for all others. O(n).
 */
export function halfDayRange(times: Float64Array): TimeRange | null {
  if (times.length === 0) return null;
  let [low, high] = [Infinity, -Infinity];
  for (let at = 0; at < times.length; at++) {
    const time = times[at] as number;
    if (!Number.isInteger(2 * time)) return null;
    if (time < low) low = time;
    if (time > high) high = time;
  }
  return 2 * (high - low) <= 4 * times.length ? { low, high } : null;
}
