import type ICAL from 'ical.js';
import { day, dayFromIso, dayInWords, type Day } from '#shared/days.ts';

const dayParts = ['dtstart', 'dtend', 'recurrence-id', 'exdate', 'rdate'] as const;
const partNames: Readonly<Record<(typeof dayParts)[number], string>> = { dtstart: 'its beginning', dtend: 'its end', 'recurrence-id': 'the day of the series that it stands for', exdate: 'a day that it leaves out', rdate: 'a day that it adds' };
/** RFC 5545, 3.3.6: weeks alone, or days and times. */
const duration = /^[+-]?P(?:\d+W|(?=\d|T\d)(?:\d+D)?(?:T(?=\d)(?:\d+H)?(?:\d+M)?(?:\d+S)?)?)$/;

/** What is wrong with an event as it is written, as the rest of a sentence after its name; null where it can be read. */
export function eventFault(event: ICAL.Component): string | null {
  const starts = event.getAllProperties('dtstart');
  if (starts.length === 0) return 'it has no beginning';
  if (starts.length > 1) return 'it has two beginnings';
  for (const name of dayParts) {
    for (const property of event.getAllProperties(name)) {
      const wrong = rawValues(property).find((value) => !isMoment(value));
      if (wrong !== undefined) return `${partNames[name]} is no day or time that there is${asWritten(wrong)}`;
    }
  }
  const lasts = event.getFirstProperty('duration');
  const long = lasts === null ? '' : (rawValues(lasts)[0] ?? '');
  if (lasts !== null && (!duration.test(long) || long.startsWith('-'))) return `how long it takes cannot be read${long.trim() === '' ? '' : ` (“${long.slice(0, 40)}”)`}`;
  const [start, end] = [starts[0], event.getFirstProperty('dtend')].map((one) => (one == null ? null : (rawValues(one)[0] ?? null)));
  // Of two zones only the library can tell.
  if (start != null && end != null && zoneOf(starts[0]) === zoneOf(event.getFirstProperty('dtend')) && start.endsWith('Z') === end.endsWith('Z') && end < start) return 'it ends before it begins';
  return null;
}

/** An event by its name and its day, as far as they can be read. */
export function eventName(summary: unknown, first: Day | null): string {
  const name = typeof summary === 'string' ? summary.trim().slice(0, 120) : '';
  const on = first === null ? '' : ` on ${dayInWords(first)}`;
  return name === '' ? `An event without a name${on}` : `“${name}”${on}`;
}

export function nameOf(event: ICAL.Component): string {
  const start = event.getFirstProperty('dtstart');
  return eventName(event.getFirstPropertyValue('summary'), start === null ? null : dayFromIso((rawValues(start)[0] ?? '').slice(0, 10)));
}

/** What the library made of a line before it looks into it: days and times as jCal has them (RFC 7265, 3.6.4 and 3.6.5). */
function rawValues(property: ICAL.Property): string[] {
  const [, , , ...values] = property.toJSON() as unknown[];
  return values.map((value) => (typeof value === 'string' ? value : Array.isArray(value) ? String(value[0]) : ''));
}

function isMoment(value: string): boolean {
  const time = /^(.{10})(?:T(\d{2}):?(\d{2}):?(\d{2})Z?)?$/.exec(value.replace(/\/.*$/, ''));
  const on = dayFromIso(time?.[1] ?? '');
  return time !== null && on !== null && on >= day('0001-01-01') && Number(time[2] ?? 0) < 24 && Number(time[3] ?? 0) < 60 && Number(time[4] ?? 0) <= 60;
}

function zoneOf(property: ICAL.Property | null | undefined): string {
  const zone = property?.getFirstParameter('tzid');
  return typeof zone === 'string' ? zone : '';
}

/** A day or time as it stood there; nothing, where the library has taken it apart beyond telling. */
function asWritten(value: string): string {
  const plain = value.replaceAll(/[:-]/g, '').replace(/T$/, '').trim();
  return plain === '' ? '' : ` (“${plain.slice(0, 40)}”)`;
}
