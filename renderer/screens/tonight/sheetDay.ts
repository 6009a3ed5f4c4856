import { addDays, dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { words } from './words.ts';

/** The day that a key leads to, or null when the key means nothing to a day. Right and up are later, left and down earlier. */
export function dayForKey(key: string, from: Day, today: Day): Day | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return addDays(from, 1);
    case 'ArrowLeft':
    case 'ArrowDown':
      return addDays(from, -1);
    case 't':
    case 'T':
      return today;
    case 'y':
    case 'Y':
      return addDays(today, -1);
    default:
      return null;
  }
}

export type TypedDay = { readonly ok: true; readonly day: Day } | { readonly ok: false; readonly sentence: string };

/** A day as typed, in ISO or the book's own order. Days to come are understood here; `dayAhead` speaks about them. */
export function readDay(text: string, order: DateOrder): TypedDay {
  const found = dayFromTyped(text, order);
  return found === null ? { ok: false, sentence: words.day.unreadable(text.trim(), order) } : { ok: true, day: found };
}

/** What is said of a day to come, or null: its sheet can be printed, but what has not been seen yet is hardly to be recorded. */
export function dayAhead(day: Day, today: Day): string | null {
  return day > today ? words.day.ahead(day, today) : null;
}

/** The day as it is typed in the book's own order: `11/25/2026` or `25.11.2026`. */
export function dayAsTyped(day: Day, order: DateOrder): string {
  const [year, month, date] = [day.slice(0, 4), day.slice(5, 7), day.slice(8, 10)];
  return order === 'month-first' ? `${month}/${date}/${year}` : `${date}.${month}.${year}`;
}
