import { figure } from './sheetAmounts.ts';

/** Hours as typed: `2.5`, or from when until when, by the clock. */
export interface WorkedTime {
  readonly hours: number;
  /** `17:30 to 20:15`; null where only hours were typed. */
  readonly clock: string | null;
}

const longest = 18 * 60;

const stretch = /^(\d{1,2})(?:[:.h]?([0-5]\d))?\s*(?:-|–|to|until)\s*(\d{1,2})(?:[:.h]?([0-5]\d))?$/i;

/** Reads `2.5`, `17:30-20:15`, `1730-2015` or `5 to 7`; one that ends before it begins went past midnight. Null if it is neither, or longer than anybody works in a stretch. */
export function workedTime(typed: string): WorkedTime | null {
  const text = typed.trim();
  const parts = stretch.exec(text);
  if (parts === null) {
    const hours = figure(text);
    return hours === null ? null : { hours, clock: null };
  }
  const [from, until] = [clockOf(parts[1], parts[2]), clockOf(parts[3], parts[4])];
  if (from === null || until === null || from === until) return null;
  const minutes = (until - from + 24 * 60) % (24 * 60);
  // A slip: 18-17 is no night's work.
  if (minutes > longest) return null;
  return { hours: Math.round((minutes / 60) * 100) / 100, clock: `${written(from)} to ${written(until)}` };
}

function clockOf(hour: string | undefined, minute: string | undefined): number | null {
  const minutes = Number(hour) * 60 + Number(minute ?? 0);
  return minutes <= 24 * 60 ? minutes : null;
}

function written(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
