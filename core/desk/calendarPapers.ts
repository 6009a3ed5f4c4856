import { randomUUID } from 'node:crypto';
import { hostname } from 'node:os';
import { z } from 'zod';
import { busyCalendar, type BusyCalendarRow } from '#shared/contract/calendar.ts';
import { dayValue } from '#shared/contract/values.ts';
import type { Paper, Store } from '#core/book/store.ts';
import { calendarKinds, type CalendarState } from '#core/calendar/calendarItem.ts';
import { startState } from '#core/calendar/nextState.ts';

const statePaper = 'calendar told';
const stateKey = 'state';
const filePaper = 'calendar file';
const busyPaper = 'busy calendar';

const item = z.object({
  kind: z.enum(calendarKinds), key: z.string(), line: z.string().nullable(), first: dayValue, last: dayValue,
  time: z.object({ from: z.number(), minutes: z.number() }).nullable(),
  summary: z.string(), description: z.string().nullable(), location: z.string().nullable(),
});
const stateBody = z.object({
  book: z.string(), next: z.number().int(),
  events: z.array(z.object({ uid: z.string(), sequence: z.number().int(), created: z.string(), changed: z.string(), cancelled: z.boolean(), item })),
});
const fileBody = z.strictObject({ path: z.string() });
const busyBody = busyCalendar.omit({ key: true });

/** What calendars were last told; a book that told none yet gets the name that its events will bear. */
export async function readTold(store: Store): Promise<CalendarState> {
  const body = (await store.papers(statePaper)).get(stateKey);
  return body === undefined ? startState(randomUUID()) : stateBody.parse(JSON.parse(body));
}

export function toldPaper(state: CalendarState): Paper {
  return { kind: statePaper, key: stateKey, body: JSON.stringify(state) };
}

/** The file chosen on this machine; a book that is carried to another one keeps each machine's own. */
export async function readFollowed(store: Store): Promise<string | null> {
  const body = (await store.papers(filePaper)).get(hostname());
  return body === undefined ? null : fileBody.parse(JSON.parse(body)).path;
}

export function followedPaper(path: string | null): Paper {
  return { kind: filePaper, key: hostname(), body: path === null ? null : JSON.stringify({ path }) };
}

export async function readBusyCalendars(store: Store): Promise<BusyCalendarRow[]> {
  return [...(await store.papers(busyPaper))].map(([key, body]) => ({ ...busyBody.parse(JSON.parse(body)), key }));
}

/** One calendar of one person is kept once: brought in again, it takes its own place. */
export function busyPaperOf({ key: _, ...body }: BusyCalendarRow): Paper {
  return { kind: busyPaper, key: `${body.person}: ${body.name}`.slice(0, 400), body: JSON.stringify(body) };
}

export function withoutBusy(key: string): Paper {
  return { kind: busyPaper, key, body: null };
}
