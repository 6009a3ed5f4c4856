import type { BusyCalendarRow } from '#shared/contract/calendar.ts';
import type { WorkHours, WorkSlot } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { slotOn } from './workHours.ts';

/**
 * Hours less the time that people's calendars take. A day keeps the longest stretch that is left of it (the earlier of
 * two alike): an outing goes from home to home in one piece. What somebody wrote down for that very day themselves stands.
 */
export function lessBusy(hours: WorkHours, calendars: readonly Pick<BusyCalendarRow, 'person' | 'spans'>[]): WorkHours {
  const people = hours.people.map((worker) => {
    const byDay = Map.groupBy(calendars.filter(({ person }) => person === worker.name).flatMap(({ spans }) => spans), ({ day }) => day);
    const own = new Set(worker.exceptions.map(({ day }) => day));
    const taken = [...byDay].flatMap(([day, spans]) => {
      const slot = slotOn(worker, day as Day);
      if (slot === null || own.has(day)) return [];
      const left = longestLeft(slot, spans);
      return left !== null && left.from === slot.from && left.until === slot.until ? [] : [{ day, slot: left }];
    });
    return { ...worker, exceptions: [...worker.exceptions, ...taken] };
  });
  return { ...hours, people };
}

function longestLeft(slot: WorkSlot, spans: readonly { readonly from: number | null; readonly until: number | null }[]): WorkSlot | null {
  let pieces: WorkSlot[] = [slot];
  for (const { from, until } of spans) {
    if (from === null || until === null) return null;
    pieces = pieces.flatMap((piece) => [
      ...(from > piece.from ? [{ from: piece.from, until: Math.min(from, piece.until) }] : []),
      ...(until < piece.until ? [{ from: Math.max(until, piece.from), until: piece.until }] : []),
    ]);
  }
  const [longest] = pieces.filter((piece) => piece.until > piece.from).toSorted((a, b) => b.until - b.from - (a.until - a.from) || a.from - b.from);
  return longest ?? null;
}
