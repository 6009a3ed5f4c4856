import { dayNumber, type Day } from '#shared/days.ts';
import type { MassUnit } from '#shared/units.ts';
import { gramsPerPound, moneyText } from '#shared/units.ts';
import type { Minor } from '#shared/brands.ts';

/** Not recorded, not known, not defined: never 0. The margin says why. */
export const missing = '–';
/** Keeps a figure and its sign or unit on one line. */
const hold = '\u00a0';
/** Gaps of one em and half of it: plain spaces run together on a page, and figures then read as one. */
const wide = '\u2003';
const gap = '\u2002';

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const weekdays = ['Thu', 'Fri', 'Sat', 'Sun', 'Mon', 'Tue', 'Wed'];

const formatters = new Map<string, Intl.NumberFormat>();
function formatter(least: number, most: number): Intl.NumberFormat {
  const key = `${least}-${most}`;
  let found = formatters.get(key);
  if (!found) {
    found = new Intl.NumberFormat('en-US', { minimumFractionDigits: least, maximumFractionDigits: most });
    formatters.set(key, found);
  }
  return found;
}

/** A number with at most `places` decimals (0 unless told), thousands parted: `1,204`, `5.5`. */
export function number(value: number | null | undefined, places = 0): string {
  return value === null || value === undefined || !Number.isFinite(value) ? missing : formatter(0, places).format(value);
}

/** Always that many decimals, for a column that must line up: `3.0`. */
export function fixed(value: number | null | undefined, places: number): string {
  return value === null || value === undefined || !Number.isFinite(value) ? missing : formatter(places, places).format(value);
}

/** `96 colonies`, `1 colony`. */
export function counted(value: number, one: string, many: string): string {
  return `${number(value)}${hold}${value === 1 ? one : many}`;
}

/** A share from 0 to 1 as `21 %`. */
export function percent(share: number | null | undefined, places = 0): string {
  return share === null || share === undefined ? missing : `${number(share * 100, places)}${hold}%`;
}

/** Bounds from 0 to 1 as `(9–41)`, per cent understood. */
export function percentRange(range: readonly [number, number] | null | undefined, places = 0): string {
  return range ? `(${number(range[0] * 100, places)}–${number(range[1] * 100, places)})` : '';
}

/** A rate never stands alone: `5 of 24  21 %  (9–41)`; an en dash when nothing was at risk. */
export function rate(lost: number, atRisk: number, range: readonly [number, number] | null | undefined): string {
  if (atRisk === 0) return missing;
  const told = `${number(lost)} of ${number(atRisk)}${wide}${percent(lost / atRisk)}`;
  return range ? `${told}${gap}${percentRange(range)}` : told;
}

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
