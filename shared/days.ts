import { Temporal } from 'temporal-polyfill';
import type { Brand } from './brands.ts';

/** A plain calendar day as text, `YYYY-MM-DD`; sorts as text, has no time zone. */
export type Day = Brand<string, 'Day'>;

/** In which order a person writes day and month with slashes. */
export type DateOrder = 'month-first' | 'day-first';

const iso = /^(\d{4})-(\d{2})-(\d{2})$/;
const slashes = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/;
const dots = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/;

/** The day if the text is one real ISO day, else null. */
export function dayFromIso(text: string): Day | null {
  const parts = iso.exec(text);
  return parts ? realDay(Number(parts[1]), Number(parts[2]), Number(parts[3])) : null;
}

/**
 * The day a person typed: ISO always; with slashes in the book's own order; with dots day first,
 * which is the only order dots are written in. Null if it is no real day.
 */
export function dayFromTyped(text: string, order: DateOrder): Day | null {
  const typed = text.trim();
  const slashed = slashes.exec(typed);
  if (slashed) {
    const [first, second, year] = [Number(slashed[1]), Number(slashed[2]), Number(slashed[3])];
    return order === 'month-first' ? realDay(year, first, second) : realDay(year, second, first);
  }
  const dotted = dots.exec(typed);
  if (dotted) return realDay(Number(dotted[3]), Number(dotted[2]), Number(dotted[1]));
  return dayFromIso(typed);
}

/** A day from text that is known to be one (the book's own columns, constants). Throws a RangeError if not. */
export function day(text: string): Day {
  const found = dayFromIso(text);
  if (found === null) throw new RangeError(`not a day: ${text}`);
  return found;
}

/** Throws a RangeError for what is no day, and for a part of one. */
export function addDays(from: Day, days: number): Day {
  const at = dayNumber(from) + days;
  // Years of four digits are reckoned here: the Temporal polyfill costs microseconds a call, and lists of needs make hundreds of thousands.
  return Number.isInteger(at) && at >= firstNumber && at <= lastNumber && iso.test(from) ? dayOfNumber(at) : (Temporal.PlainDate.from(from).add({ days }).toString() as Day);
}

/** Whole days from `from` to `to`; negative if `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

export function yearOf(of: Day): number {
  return Number(of.slice(0, 4));
}

/** `MM-DD` part, comparable as text. */
export function monthDayOf(of: Day): string {
  return of.slice(5);
}

function realDay(year: number, month: number, dayOfMonth: number): Day | null {
  if (year < 1 || month < 1 || month > 12 || dayOfMonth < 1) return null;
  if (dayOfMonth > daysInMonth(year, month)) return null;
  const pad = (value: number, width: number) => String(value).padStart(width, '0');
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(dayOfMonth, 2)}` as Day;
}

function daysInMonth(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
}

/**
 * Days since 1970-01-01 in the proleptic Gregorian calendar, by Hinnant's "days_from_civil"; written out
 * because the survival curves take it for every colony and the Temporal polyfill costs microseconds a call.
 */
export function dayNumber(of: Day): number {
  const month = twoDigits(of, 5);
  const year = 100 * twoDigits(of, 0) + twoDigits(of, 2) - (month <= 2 ? 1 : 0);
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + twoDigits(of, 8) - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** 0001-01-01 and 9999-12-31. */
const [firstNumber, lastNumber] = [-719_162, 2_932_896];

/** The day of a number of `dayNumber`, by Hinnant's "civil_from_days". */
function dayOfNumber(of: number): Day {
  const at = of + 719_468;
  const era = Math.floor(at / 146_097);
  const dayOfEra = at - era * 146_097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const part = Math.floor((5 * dayOfYear + 2) / 153);
  const month = part < 10 ? part + 3 : part - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${pad2(month)}-${pad2(dayOfYear - Math.floor((153 * part + 2) / 5) + 1)}` as Day;
}

function pad2(value: number): string {
  return value < 10 ? `0${value}` : String(value);
}

/** The number at a place of a day's text, read off its characters: cutting them out would make a text for each. */
function twoDigits(of: Day, at: number): number {
  return 10 * of.charCodeAt(at) + of.charCodeAt(at + 1) - 528;
}

const monthNames = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** "14 February 2025", the same in every place and language setting. */
export function dayInWords(of: Day): string {
  return `${Number(of.slice(8, 10))} ${monthNames[Number(of.slice(5, 7)) - 1] ?? ''} ${of.slice(0, 4)}`;
}

/** "14 February" without the year. */
export function monthDayInWords(of: Day): string {
  return `${Number(of.slice(8, 10))} ${monthNames[Number(of.slice(5, 7)) - 1] ?? ''}`;
}
