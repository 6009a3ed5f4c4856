import { addDays, dayFromIso, daysBetween, yearOf, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import type { Comb } from './itemName.ts';

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

/** What a frame's comb is on a day, and the year it was built. `since`: the day it came on the hive it is on. */
export interface CombOf {
  readonly comb: Comb | null;
  readonly year: number | null;
  readonly since: Day | null;
}

/** A frame on a hive is drawn once it has been there for the summer days of the rule, or honey was taken from it. */
export function combOn(frame: CombOf, day: Day, summerDays: number, borders: Borders, harvested = false): Pick<CombOf, 'comb' | 'year'> {
  if (frame.comb === 'drawn' || frame.since === null) return frame;
  const drawn = harvested ? day : drawnOn(frame.since, summerDays, borders);
  return drawn <= day ? { comb: 'drawn', year: frame.year ?? yearOf(drawn) } : frame;
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
