import { addDays, day, dayFromIso, type DateOrder, type Day } from '#shared/days.ts';
import type { SheetCell } from './sheet.ts';

const monthStarts = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const time = /[ T,]+\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?( ?[ap]\.?m\.?)?Z?$/i;
const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const eight = /^((?:19|20)\d{2})(\d{2})(\d{2})$/;
const ordered = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4}|\d{2})\.?$/;
const dayThenMonth = /^(\d{1,2})(?:st|nd|rd|th)?[ .-]+([a-z]{3,9})\.?[ ,.-]+(\d{4}|\d{2})$/i;
const monthThenDay = /^([a-z]{3,9})\.?[ -]+(\d{1,2})(?:st|nd|rd|th)?,?[ -]+(\d{4}|\d{2})$/i;
/** Days since 1899-12-30, as spreadsheets count (ECMA-376, 18.17.4.1, base 1900, from 1 March 1900 on); five figures are 1927 to 2173. */
const serial = /^[1-9]\d{4}(\.\d+)?$/;
const serialStart = day('1899-12-30');

type Form = { readonly sure: Day | null } | { readonly first: number; readonly second: number; readonly year: number };

/** The day in a cell: an ISO day, a spreadsheet's day number, a month in words, dots day first, slashes and dashes in the order given. Years of two figures are 20xx. Null if it is none. */
export function readDay(cell: SheetCell, order: DateOrder | null): Day | null {
  const form = formOf(cell.text);
  if (form === null) return null;
  if ('sure' in form) return form.sure;
  if (order === null) return null;
  return order === 'month-first' ? realDay(form.year, form.first, form.second) : realDay(form.year, form.second, form.first);
}

export type DayFinding = 'none' | 'clear' | 'month-first' | 'day-first' | 'either' | 'mixed';

/** What the cells of the columns of days say about their order; `either` when every one can be read both ways to another day. */
export function orderOfDays(cells: Iterable<SheetCell>): DayFinding {
  let monthFirst = false;
  let dayFirst = false;
  let open = false;
  let any = false;
  for (const { text } of cells) {
    const form = formOf(text);
    if (form === null) continue;
    any = true;
    if ('sure' in form) continue;
    const asMonth = realDay(form.year, form.first, form.second) !== null;
    const asDay = realDay(form.year, form.second, form.first) !== null;
    if (asMonth && !asDay) monthFirst = true;
    else if (asDay && !asMonth) dayFirst = true;
    else if (asMonth && form.first !== form.second) open = true;
  }
  if (monthFirst && dayFirst) return 'mixed';
  if (monthFirst) return 'month-first';
  if (dayFirst) return 'day-first';
  if (open) return 'either';
  return any ? 'clear' : 'none';
}

export function isDayLike(text: string): boolean {
  return formOf(text) !== null && !serial.test(text);
}

export function hasTime(text: string): boolean {
  return time.test(text.trim()) && formOf(text) !== null;
}

function formOf(text: string): Form | null {
  const typed = text.trim().replace(time, '');
  const parts = iso.exec(typed) ?? eight.exec(typed);
  if (parts !== null) return { sure: realDay(Number(parts[1]), Number(parts[2]), Number(parts[3])) };
  if (serial.test(typed)) return { sure: addDays(serialStart, Math.floor(Number(typed))) };
  const pair = ordered.exec(typed);
  if (pair !== null) {
    const [first, second, year] = [Number(pair[1]), Number(pair[3]), fullYear(pair[4] ?? '')];
    if (pair[2] === '.') return { sure: realDay(year, second, first) };
    return first === second ? { sure: realDay(year, first, second) } : { first, second, year };
  }
  const words = dayThenMonth.exec(typed);
  if (words !== null) return inWords(words[3], words[2], words[1]);
  const american = monthThenDay.exec(typed);
  return american === null ? null : inWords(american[3], american[1], american[2]);
}

function inWords(year = '', month = '', dayOfMonth = ''): Form | null {
  const at = monthStarts.indexOf(month.slice(0, 3).toLowerCase());
  return at < 0 ? null : { sure: realDay(fullYear(year), at + 1, Number(dayOfMonth)) };
}

function fullYear(year: string): number {
  return year.length === 2 ? 2000 + Number(year) : Number(year);
}

function realDay(year: number, month: number, dayOfMonth: number): Day | null {
  const two = (value: number) => String(value).padStart(2, '0');
  return dayFromIso(`${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}`);
}
