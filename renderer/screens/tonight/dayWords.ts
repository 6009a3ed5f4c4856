import { dayNumber, type Day } from '#shared/days.ts';

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const weekdays = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'];

/** "18 May 2026" */
export function dayInWords(day: Day): string {
  return `${dayOfMonth(day)} ${day.slice(0, 4)}`;
}

/** "18 May" */
export function dayOfMonth(day: Day): string {
  return `${Number(day.slice(8, 10))} ${months[Number(day.slice(5, 7)) - 1] ?? ''}`;
}

/** "Monday"; 1 January 1970, day number 0, was a Thursday. */
export function weekdayOf(day: Day): string {
  return weekdays[((dayNumber(day) % 7) + 7) % 7] ?? '';
}
