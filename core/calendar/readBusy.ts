import ICAL from 'ical.js';
import { Temporal } from 'temporal-polyfill';
import { addDays, day, dayInWords, type Day } from '#shared/days.ts';
import { refuse, type Answer } from '#shared/faults.ts';
import { eventFault, nameOf } from './eventFault.ts';
import { splitEvents } from './splitEvents.ts';
import { product } from './writeCalendar.ts';

/** Time that is taken on one day. Minutes after midnight where the person is; both null for all day. */
export interface BusySpan {
  readonly day: Day;
  readonly from: number | null;
  readonly until: number | null;
  readonly what: string;
}

export interface BusyCalendar {
  readonly name: string | null;
  /** In the order of days. */
  readonly spans: readonly BusySpan[];
  /** Events that take time in these days, and those that do not: cancelled, shown as free, or without length. */
  readonly events: number;
  readonly free: number;
  /** Events that cannot be read, each with a sentence; the rest are read all the same. */
  readonly unread: readonly string[];
}

/** Repeats of one event that are gone through; a rule by the second would never come to an end. */
const mostRepeats = 50_000;
const dayMinutes = 24 * 60;

/**
 * The taken time in a calendar file (RFC 5545), repeating events written out (3.8.5). Times with a zone or in UTC are
 * turned to the person's own; floating ones stay as written. All-day events that are shown as free take nothing.
 * @param zone the person's time zone, as `Europe/Berlin`
 */
export function readBusy(text: string, fileName: string, from: Day, until: Day, zone: string): Answer<BusyCalendar> {
  const calendars: ICAL.Component[] = [];
  const unread: string[] = [];
  const whole = text.replace(/^\uFEFF/, '');
  try {
    calendars.push(...parsed(whole));
  } catch {
    const split = splitEvents(whole);
    if (split.unread.length === 0) return notRead(fileName);
    try {
      calendars.push(...parsed(split.text));
    } catch {
      return notRead(fileName);
    }
    unread.push(...split.unread);
  }
  if (calendars.length === 0 || calendars.some(({ name }) => name !== 'vcalendar')) return notRead(fileName);
  if (calendars.some((one) => one.getFirstPropertyValue('prodid') === product)) {
    return refuse('refused', `${fileName} is a calendar that Outyard wrote: its visits would take the time of the visits themselves.`, { mend: 'Choose the calendar of your day job or your family.' });
  }
  const spans: BusySpan[] = [];
  let events = 0;
  let free = 0;
  for (const calendar of calendars) {
    const sound = calendar.getAllSubcomponents('vevent').filter((one) => {
      const fault = eventFault(one);
      if (fault !== null) unread.push(`${nameOf(one)}: ${fault}.`);
      return fault === null;
    });
    for (const members of seriesOf(sound)) {
      try {
        const found = ofSeries(members, from, until, zone);
        events += found.taking;
        free += found.free;
        spans.push(...found.spans);
        if (found.readUntil !== null) unread.push(`${nameOf(members[0] as ICAL.Component)}: it repeats so often that it is read only up to ${dayInWords(found.readUntil)}.`);
      } catch {
        // The library's own words are for whoever wrote the file.
        const why = members.some((one) => one.hasProperty('rrule')) ? 'its rule for repeating cannot be read' : 'it is not written as events are';
        for (const one of members) unread.push(`${nameOf(one)}: ${why}.`);
      }
    }
  }
  const named = calendars[0]?.getFirstPropertyValue('x-wr-calname') ?? calendars[0]?.getFirstPropertyValue('name');
  const ordered = spans.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : (a.from ?? -1) - (b.from ?? -1)));
  return { ok: true, value: { name: typeof named === 'string' && named.trim() !== '' ? named.trim() : null, spans: ordered, events, free, unread } };
}

function notRead(fileName: string): Answer<BusyCalendar> {
  return refuse('file-unreadable', `${fileName} cannot be read as a calendar.`, { mend: 'Choose a calendar file, one that ends in .ics and begins with BEGIN:VCALENDAR.' });
}

/** Events that belong together by their UID: one with its changed repeats. Of several with the same one, an older revision is replaced by a newer (RFC 5545, 3.8.7.4); others stand by themselves. */
function seriesOf(events: readonly ICAL.Component[]): ICAL.Component[][] {
  let nameless = 0;
  return [...Map.groupBy(events, (one) => String(one.getFirstPropertyValue('uid') ?? '') || (nameless += 1)).values()].flatMap((own) => {
    const changed = own.filter((one) => one.hasProperty('recurrence-id'));
    const all = own.filter((one) => !one.hasProperty('recurrence-id'));
    const newest = Math.max(...all.map(revision));
    const [main, ...more] = all.filter((one) => revision(one) === newest);
    return main === undefined ? [changed] : [[main, ...changed], ...more.map((one) => [one])];
  });
}

function revision(event: ICAL.Component): number {
  return Number(event.getFirstPropertyValue('sequence') ?? 0) || 0;
}

function parsed(text: string): ICAL.Component[] {
  const found: unknown = ICAL.parse(text);
  return (isMany(found) ? found : [found]).map((one) => new ICAL.Component(one as ConstructorParameters<typeof ICAL.Component>[0]));
}

/** ical.js gives one calendar as ['vcalendar', ...] and several as a list of those. */
function isMany(parsed: unknown): parsed is unknown[] {
  return Array.isArray(parsed) && Array.isArray(parsed[0]);
}

/** One event with its repeats, and the repeats that were changed by themselves. `readUntil`: the day up to which they were gone through, where that is not far enough. */
function ofSeries(members: readonly ICAL.Component[], from: Day, until: Day, zone: string): { spans: BusySpan[]; taking: number; free: number; readUntil: Day | null } {
  const exceptions = members.filter((one) => one.hasProperty('recurrence-id'));
  const [main] = members.filter((one) => !one.hasProperty('recurrence-id'));
  const spans: BusySpan[] = [];
  let taking = 0;
  let free = 0;
  const add = (component: ICAL.Component, start: ICAL.Time, end: ICAL.Time) => {
    const own = spansOf(local(start, component, zone), local(end, component, zone), textOf(component)).filter(({ day: on }) => on >= from && on <= until);
    const began = local(start, component, zone).day;
    if (own.length === 0 && (began < from || began > until)) return;
    if (own.length > 0 && takesTime(component)) {
      spans.push(...own);
      taking += 1;
    } else free += 1;
  };
  if (main === undefined) {
    for (const one of exceptions) {
      const event = new ICAL.Event(one);
      add(one, event.startDate, event.endDate);
    }
    return { spans, taking, free, readUntil: null };
  }
  const event = new ICAL.Event(main, { exceptions: [...exceptions], strictExceptions: false });
  if (!event.isRecurring()) {
    add(main, event.startDate, event.endDate);
    return { spans, taking, free, readUntil: null };
  }
  const repeats = event.iterator();
  // A repeat that lasts into the window may begin before it, and a changed one may come from a later day.
  const [before, beyond] = [addDays(from, -1), addDays(until, 1)];
  let [last, ended] = [before, false];
  for (let count = 0; count < mostRepeats; count += 1) {
    const start = repeats.next();
    ended = start === undefined || start === null || plainDay(start) > beyond;
    if (ended || start == null) break;
    last = plainDay(start);
    const { item, startDate, endDate } = event.getOccurrenceDetails(start);
    // No zone is more than a day from another.
    if (plainDay(endDate) < before) continue;
    add(item.component, startDate, endDate);
  }
  for (const one of exceptions) {
    const moved = one.getFirstPropertyValue('recurrence-id');
    if (!(moved instanceof ICAL.Time) || plainDay(moved) <= beyond) continue;
    const own = new ICAL.Event(one);
    add(one, own.startDate, own.endDate);
  }
  return { spans, taking, free, readUntil: ended ? null : last };
}

function takesTime(component: ICAL.Component): boolean {
  const status = String(component.getFirstPropertyValue('status') ?? '').toUpperCase();
  const transparency = String(component.getFirstPropertyValue('transp') ?? '').toUpperCase();
  return status !== 'CANCELLED' && transparency !== 'TRANSPARENT';
}

function textOf(component: ICAL.Component): string {
  const summary = component.getFirstPropertyValue('summary');
  return typeof summary === 'string' && summary.trim() !== '' ? summary.trim().slice(0, 120) : 'taken';
}

interface Moment {
  readonly day: Day;
  /** Minutes after midnight; null for a day without a time. */
  readonly minutes: number | null;
}

function local(time: ICAL.Time, component: ICAL.Component, zone: string): Moment {
  if (time.isDate) return { day: plainDay(time), minutes: null };
  const written = Temporal.PlainDateTime.from({ year: time.year, month: time.month, day: time.day, hour: time.hour, minute: time.minute });
  const own = time.zone === null || time.zone === ICAL.Timezone.localTimezone ? named(component, written, zone) : Temporal.Instant.fromEpochMilliseconds(time.toUnixTime() * 1000).toZonedDateTimeISO(zone).toPlainDateTime();
  return { day: day(own.toPlainDate().toString()), minutes: own.hour * 60 + own.minute };
}

/** A zone that is named and not described in the file is looked up by its name; one that nobody knows is taken as the person's own. */
function named(component: ICAL.Component, written: Temporal.PlainDateTime, zone: string): Temporal.PlainDateTime {
  const name = component.getFirstProperty('dtstart')?.getFirstParameter('tzid');
  if (typeof name !== 'string') return written;
  try {
    return written.toZonedDateTime(name).withTimeZone(zone).toPlainDateTime();
  } catch (error) {
    if (error instanceof RangeError) return written;
    throw error;
  }
}

function plainDay(time: ICAL.Time): Day {
  const two = (value: number) => String(value).padStart(2, '0');
  return day(`${String(time.year).padStart(4, '0')}-${two(time.month)}-${two(time.day)}`);
}

/** From the first moment to the last, day by day. The end is not included; an event without length takes no time. */
function spansOf(start: Moment, end: Moment, what: string): BusySpan[] {
  if (start.minutes === null) {
    const last = end.day > start.day ? addDays(end.day, -1) : start.day;
    return days(start.day, last).map((on) => ({ day: on, from: null, until: null, what }));
  }
  const stop = end.minutes ?? 0;
  return days(start.day, end.day).flatMap((on) => {
    const from = on === start.day ? (start.minutes ?? 0) : 0;
    const until = on === end.day ? stop : dayMinutes;
    return until > from ? [{ day: on, from, until, what }] : [];
  });
}

function days(first: Day, last: Day): Day[] {
  const list: Day[] = [];
  for (let on = first; on <= last && list.length < 800; on = addDays(on, 1)) list.push(on);
  return list;
}
