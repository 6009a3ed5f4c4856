import { addDays, day, dayNumber, type Day } from '#shared/days.ts';

const texts = new Map<number, Day>();
const epoch = day('1970-01-01');

/** The day as text from its number (days since 1970-01-01); remembered, since a run asks for the same days often. */
export function dayText(number: number): Day {
  let text = texts.get(number);
  if (text === undefined) {
    text = addDays(epoch, number);
    texts.set(number, text);
  }
  return text;
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
