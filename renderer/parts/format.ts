import { dayFromIso, dayNumber, type Day } from '#shared/days.ts';
import type { MassUnit } from '#shared/units.ts';
import { gramsPerPound, moneyText } from '#shared/units.ts';
import type { Minor } from '#shared/brands.ts';
import { fixed, hold, missing } from '#shared/figures.ts';

export { counted, fixed, missing, number, percent, percentRange, rate } from '#shared/figures.ts';

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const weekdays = ['Thu', 'Fri', 'Sat', 'Sun', 'Mon', 'Tue', 'Wed'];

/** `18 May 2026`. */
export function dayText(of: Day | null | undefined): string {
  return of ? `${Number(of.slice(8))}${hold}${monthName(of)}${hold}${of.slice(0, 4)}` : missing;
}

/** `18 May`, where the year is plain from the place. */
export function dayShort(of: Day | null | undefined): string {
  return of ? `${Number(of.slice(8))}${hold}${monthName(of).slice(0, 3)}` : missing;
}

/** `18 May 26`: for narrow columns. */
export function dayTight(of: Day | null | undefined): string {
  return of ? `${dayShort(of)}${hold}${of.slice(2, 4)}` : missing;
}

/** `Mon 18 May 2026`. */
export function dayWithWeekday(of: Day | null | undefined): string {
  return of ? `${weekdays[((dayNumber(of) % 7) + 7) % 7]}${hold}${dayText(of)}` : missing;
}

/** `25 November 2026, 20:00`, of a stamp as the desk writes it. */
export function momentText(stamp: string): string {
  return `${dayText(dayFromIso(stamp.slice(0, 10)))}, ${stamp.slice(11, 16)}`;
}

/** Minor units as `174` or `174.50`. The book keeps no currency, so none is written. */
export function money(minor: number | null | undefined): string {
  return minor === null || minor === undefined ? missing : moneyText(minor as Minor).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}

/** Pounds from the desk, in the book's own unit, without the unit's name. */
export function massFromPounds(pounds: number | null | undefined, unit: MassUnit, places = 0): string {
  if (pounds === null || pounds === undefined) return missing;
  return fixed(unit === 'lb' ? pounds : (pounds * gramsPerPound) / 1000, places);
}

function monthName(of: Day): string {
  return months[Number(of.slice(5, 7)) - 1] ?? '';
}
