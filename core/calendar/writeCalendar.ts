import ical, { escape, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { Temporal } from 'temporal-polyfill';
import { addDays } from '#shared/days.ts';
import type { CalendarKind, CalendarState, ToldEvent } from './calendarItem.ts';

export const product = '-//Outyard//Outyard//EN';

const categories: Readonly<Record<CalendarKind, string>> = { visit: 'Yard visit', due: 'Due', deadline: 'Order by', delivery: 'Delivery' };

/**
 * A calendar has at least one component (RFC 5545, 3.4 and 3.6: `component = 1*(...)`). Where there is nothing to tell, a time
 * zone that no event asks for stands in it: a reader finds a whole calendar without events.
 */
const nothingToTell = ['BEGIN:VTIMEZONE', 'TZID:Etc/UTC', 'BEGIN:STANDARD', 'DTSTART:19700101T000000', 'TZOFFSETFROM:+0000', 'TZOFFSETTO:+0000', 'END:STANDARD', 'END:VTIMEZONE', ''].join('\r\n');

/**
 * The file of RFC 5545: lines end in CRLF and are folded at 75 octets. All-day events have a first day and the day after
 * the last (3.6.1), as plain dates without a zone. Times are floating (3.3.5, form 1): half past five in the yard is half
 * past five wherever the file is read. DTSTAMP is the last change (3.8.7.2), so that nothing changed is the same file.
 */
export function writeCalendar(state: CalendarState, name: string): string {
  const calendar = ical({ prodId: { company: 'Outyard', product: 'Outyard', language: 'EN' }, name: escape(plain(name), false) });
  for (const event of state.events) calendar.createEvent(eventData(event));
  const text = `${calendar.toString()}\r\n`;
  return state.events.length > 0 ? text : text.replace(/END:VCALENDAR\r\n$/, `${nothingToTell}END:VCALENDAR\r\n`);
}

function eventData({ uid, sequence, created, changed, cancelled, item }: ToldEvent) {
  const { time } = item;
  const start = Temporal.PlainDate.from(item.first);
  const at = (minutes: number) => start.toPlainDateTime(Temporal.PlainTime.from('00:00')).add({ minutes });
  return {
    id: uid, sequence,
    stamp: Temporal.Instant.from(changed), created: Temporal.Instant.from(created), lastModified: Temporal.Instant.from(changed),
    ...(time === null
      ? { allDay: true, start, end: Temporal.PlainDate.from(addDays(item.last, 1)) }
      : { floating: true, start: at(time.from), end: at(time.from + time.minutes) }),
    summary: plain(item.summary),
    description: item.description === null ? null : plain(item.description),
    location: item.location === null ? null : plain(item.location),
    categories: [{ name: categories[item.kind] }],
    status: cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    // A visit takes the person's time; what is due by a day does not.
    transparency: time === null || cancelled ? ICalEventTransparency.TRANSPARENT : ICalEventTransparency.OPAQUE,
  };
}

/** Text without what RFC 5545 lets stand in no text (3.3.11): control characters but tab and line end, and halves of characters. */
function plain(text: string): string {
  return text.toWellFormed().replace(/\r\n?/g, '\n').replace(/[^\P{Cc}\t\n]/gu, '');
}
