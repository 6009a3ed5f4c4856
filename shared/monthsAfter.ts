import { day, type Day } from './days.ts';

/** So many months later: the same day of the month, or its last where it has none such. */
export function monthsAfter(from: Day, months: number): Day {
  const [year, month, of] = from.split('-').map(Number) as [number, number, number];
  const whole = year * 12 + (month - 1) + Math.round(months);
  const [toYear, toMonth] = [Math.floor(whole / 12), (whole % 12) + 1];
  const leap = (toYear % 4 === 0 && toYear % 100 !== 0) || toYear % 400 === 0;
  const last = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][toMonth - 1] ?? 28;
  const two = (value: number) => String(value).padStart(2, '0');
  return day(`${String(toYear).padStart(4, '0')}-${two(toMonth)}-${two(Math.min(of, last))}`);
}
