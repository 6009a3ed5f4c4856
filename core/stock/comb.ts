import { addDays, dayFromIso, daysBetween, yearOf, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';

/**
 * The day on which a frame that came on a hive on a day has been there for so many summer days (season's start to
 * winter's start), when its foundation counts as drawn.
 */
export function drawnOn(since: Day, summerDays: number, borders: Borders): Day {
  let left = summerDays;
  for (let year = yearOf(since); ; year += 1) {
    const start = dayOf(year, borders.seasonStart);
    const end = dayOf(year, borders.winterStart);
    const from = since > start ? since : start;
    const days = Math.max(0, daysBetween(from, end));
    if (days >= left) return addDays(from, left);
    left -= days;
  }
}

/** Brood comb built in that year is due for rotation on the day; false where the year is not known. */
export function dueForRotation(year: number | null, on: Day, afterYears: number): boolean {
  return year !== null && yearOf(on) - year >= afterYears;
}

/** Frames to be replaced each year so that none grows older; rounded up. */
export function replacedEachYear(frames: number, afterYears: number): number {
  return Math.ceil(frames / afterYears - 1e-9);
}

function dayOf(year: number, monthDay: string): Day {
  return dayFromIso(`${year}-${monthDay}`) ?? (`${year}-04-01` as Day);
}
