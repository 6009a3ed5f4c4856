import { day, dayNumber, type Day } from '#shared/days.ts';

const texts = new Map<number, Day>();

/** The day as text from its number (days since 1970-01-01), by Hinnant's "civil_from_days"; remembered, since a run asks for the same days often. */
export function dayText(number: number): Day {
  let text = texts.get(number);
  if (text === undefined) {
    text = written(number);
    texts.set(number, text);
  }
  return text;
}

function written(number: number): Day {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365);
  const dayFromMarch = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayFromMarch + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  const dayOfMonth = dayFromMarch - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  return day(`${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`);
}

/** Day number of a month and day in a year. */
export function dayIn(year: number, month: number, dayOfMonth: number): number {
  return dayNumber(day(`${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`));
}

/** 0 Monday to 6 Sunday; day 0, 1 January 1970, was a Thursday. */
export function weekday(number: number): number {
  return (((number + 3) % 7) + 7) % 7;
}

export const saturday = 5;
export const sunday = 6;

/** The first Saturday on or after the day. */
export function saturdayFrom(number: number): number {
  return number + ((saturday - weekday(number) + 7) % 7);
}

export function yearOfNumber(number: number): number {
  return Number(dayText(number).slice(0, 4));
}

/** Days since 1 January of the same year, 0 to 365. */
export function dayOfYear(number: number): number {
  return number - dayIn(yearOfNumber(number), 1, 1);
}

/** Season by the default borders: from 1 April, named by its first year. */
export function seasonOfNumber(number: number): number {
  const text = dayText(number);
  return text.slice(5) >= '04-01' ? Number(text.slice(0, 4)) : Number(text.slice(0, 4)) - 1;
}
