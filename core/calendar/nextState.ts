import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { CalendarItem, CalendarState, ToldEvent } from './calendarItem.ts';

/** Days for which what is over stays in the file, so that a calendar that is read anew keeps what was. */
const remembered = 60;

/**
 * What the calendar is to be told next: new things get a name of their own, a changed one keeps its name with a higher
 * SEQUENCE and a new LAST-MODIFIED, one that is no longer wanted is cancelled (RFC 5545, 3.8.7.4 and 3.8.1.11). What
 * is over is left as it was last told: it is not cancelled for having passed.
 * @param stamp UTC, `2026-11-25T21:05:00Z`.
 */
export function nextState(told: CalendarState, items: readonly CalendarItem[], today: Day, stamp: string): CalendarState {
  const matched = matchTold(told.events, items, today);
  const events: ToldEvent[] = [];
  for (const event of told.events) {
    const item = matched.get(event);
    if (item !== undefined) events.push(sameItem(event.item, item) && !event.cancelled ? event : { ...event, sequence: event.sequence + 1, changed: stamp, cancelled: false, item });
    else if (event.cancelled || event.item.last < today) {
      if (event.item.last >= addDays(today, -remembered)) events.push(event);
    } else events.push({ ...event, sequence: event.sequence + 1, changed: stamp, cancelled: true });
  }
  const known = new Set(matched.values());
  let { next } = told;
  for (const item of items) {
    if (known.has(item)) continue;
    events.push({ uid: `${item.kind}-${next}-${told.book}@outyard`, sequence: 0, created: stamp, changed: stamp, cancelled: false, item });
    next += 1;
  }
  return { book: told.book, next, events };
}

export function startState(book: string): CalendarState {
  return { book, next: 1, events: [] };
}

/** Each told event with what it stands for now: by key, and then, within a line, the nearest day takes the nearest. */
function matchTold(told: readonly ToldEvent[], items: readonly CalendarItem[], today: Day): Map<ToldEvent, CalendarItem> {
  const matched = new Map<ToldEvent, CalendarItem>();
  const byKey = new Map(told.map((event) => [event.item.key, event]));
  const left: CalendarItem[] = [];
  for (const item of items) {
    const event = byKey.get(item.key);
    if (event !== undefined && !matched.has(event)) matched.set(event, item);
    else left.push(item);
  }
  const movable = told.filter((event) => !matched.has(event) && !event.cancelled && event.item.line !== null && event.item.last >= today);
  const pairs = left.flatMap((item) => movable.filter((event) => event.item.line === item.line).map((event) => ({ item, event, apart: Math.abs(daysBetween(event.item.first, item.first)) })));
  const taken = new Set<CalendarItem>();
  for (const { item, event } of pairs.toSorted((a, b) => a.apart - b.apart || (a.event.item.first < b.event.item.first ? -1 : 1))) {
    if (taken.has(item) || matched.has(event)) continue;
    matched.set(event, item);
    taken.add(item);
  }
  return matched;
}

function sameItem(a: CalendarItem, b: CalendarItem): boolean {
  return (
    a.key === b.key && a.first === b.first && a.last === b.last && a.time?.from === b.time?.from && a.time?.minutes === b.time?.minutes &&
    a.summary === b.summary && a.description === b.description && a.location === b.location
  );
}

/** True where telling the calendar would change nothing. */
export function sameState(a: CalendarState, b: CalendarState): boolean {
  return a.next === b.next && a.events.length === b.events.length && a.events.every((event, at) => event === b.events[at]);
}
