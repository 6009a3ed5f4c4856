import { day, daysBetween, monthDayOf, yearOf, type Day } from '#shared/days.ts';
import { niceTicks } from './scale.ts';
import { monthNames } from './words.ts';

export interface TimeTick {
  /** Days from the origin of the axis. */
  readonly at: number;
  /** Where the label stands, in days; a month's name stands in the middle of its month. */
  readonly labelAt: number;
  readonly label: string;
}

/** One tick at the start of each calendar month that lies within `last` days of the origin. */
export function monthTicks(origin: Day, last: number): TimeTick[] {
  const ticks: TimeTick[] = [];
  const first = yearOf(origin) * 12 + Number(monthDayOf(origin).slice(0, 2)) - 1;
  for (let month = first; ; month += 1) {
    const at = Math.max(0, daysBetween(origin, monthStart(month)));
    if (at >= last) return ticks;
    const until = Math.min(last, daysBetween(origin, monthStart(month + 1)));
    // The stub of a month at either end has no room for a name.
    if (until - at >= 10 || last < 20) ticks.push({ at, labelAt: (at + until) / 2, label: monthNames[month % 12] ?? '' });
  }
}

/** First day of a month counted from year 0. */
function monthStart(month: number): Day {
  return day(`${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}-01`);
}

/** Ticks in years for long spans, in days for spans of up to two years. */
export function ageTicks(last: number): TimeTick[] {
  if (last <= 730) return niceTicks(0, last, 6).map((at) => ({ at, labelAt: at, label: String(at) }));
  return niceTicks(0, last / 365.25, 6)
    .filter(Number.isInteger)
    .map((years) => ({ at: years * 365.25, labelAt: years * 365.25, label: String(years) }));
}

/** True when `ageTicks` counts years rather than days. */
export function countsYears(last: number): boolean {
  return last > 730;
}
