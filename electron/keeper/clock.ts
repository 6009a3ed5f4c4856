import { day, type Day } from '#shared/days.ts';

export interface ClockReading {
  /** The day where the person is. */
  readonly day: Day;
  /** Local time, `YYYY-MM-DD HH:MM`. */
  readonly stamp: string;
}

/** The one place where the machine's clock is read for the book. */
export function readClock(at: Date = new Date()): ClockReading {
  const two = (value: number) => String(value).padStart(2, '0');
  const local = `${String(at.getFullYear()).padStart(4, '0')}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return { day: day(local), stamp: `${local} ${two(at.getHours())}:${two(at.getMinutes())}` };
}

/** The moment in UTC, to the second, and the machine's time zone, as `Europe/Berlin`: for what leaves the book for other programs. */
export function readMoment(at: Date = new Date()): { instant: string; zone: string } {
  return { instant: `${at.toISOString().slice(0, 19)}Z`, zone: Intl.DateTimeFormat().resolvedOptions().timeZone };
}
