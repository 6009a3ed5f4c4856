import { z } from 'zod';
import { read, write } from './operation.ts';
import { dayValue, nothing } from './values.ts';

const count = z.number().int();
const minute = count.min(0).max(1440);

/** Time taken on one day, minutes after midnight; both null for all day. */
export const busySpan = z.object({ day: dayValue, from: minute.nullable(), until: minute.nullable(), what: z.string() });
export type BusySpanRow = z.infer<typeof busySpan>;

/** A calendar of taken days that was brought in, and whose it is. */
export const busyCalendar = z.object({
  key: z.string(),
  name: z.string(),
  person: z.string(),
  /** When it was brought in, local time. */
  at: z.string(),
  spans: z.array(busySpan),
  /** Events of it that could not be read, and so take no time. */
  unread: count.default(0),
});
export type BusyCalendarRow = z.infer<typeof busyCalendar>;

export const calendarStatus = z.object({
  today: dayValue,
  /** The file on this machine that is written anew after each change; null where none was chosen. */
  file: z.object({ path: z.string(), written: z.string().nullable(), trouble: z.string().nullable() }).nullable(),
  /** What a file would hold now, by kind, without what is cancelled. */
  events: z.object({ visit: count, due: count, deadline: count, delivery: count }),
  busy: z.array(busyCalendar),
});
export type CalendarStatus = z.infer<typeof calendarStatus>;

/** The text of a calendar file that was chosen; 8 MiB at most. */
const calendarFile = z.strictObject({ name: z.string().min(1).max(300), text: z.string().max(8 * 1024 * 1024) });

export const calendarOperations = {
  'calendar.status': read(nothing, calendarStatus),
  /** A calendar file (RFC 5545) of all that is planned and due. What was told is kept, so that the next file updates and cancels. */
  'calendar.export': write(nothing, z.object({ fileName: z.string(), text: z.string(), events: count, cancelled: count }), 'a file that was handed out cannot be called back'),
  /** Keeps a file on this machine written anew after each change; null ends that and leaves the file. */
  'calendar.follow': write(z.strictObject({ path: z.string().trim().min(1).max(2000).nullable() }), calendarStatus, 'choose the file again'),
  /** What a calendar takes of the coming year; nothing is kept. */
  'calendar.look': read(
    z.strictObject({ file: calendarFile }),
    z.object({ name: z.string(), from: dayValue, until: dayValue, spans: z.array(busySpan), days: count, events: count, free: count, unread: z.array(z.string()) }),
  ),
  /** Takes that time off the hours of the person. The same calendar brought in again takes the place of the earlier one. */
  'calendar.keepBusy': write(z.strictObject({ file: calendarFile, person: z.string().trim().min(1).max(40) }), calendarStatus, 'take the calendar away again'),
  'calendar.dropBusy': write(z.strictObject({ key: z.string().min(1).max(400) }), calendarStatus, 'bring the calendar in again'),
} as const;
