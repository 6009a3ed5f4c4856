import ICAL from 'ical.js';
import nodeIcal from 'node-ical';

/** One event as a reader understands it: days and times as they stand where the reader is. */
export interface ReadEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly status: string;
  readonly allDay: boolean;
  readonly start: string;
  readonly end: string;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
}

const two = (value: number) => String(value).padStart(2, '0');

export function withIcalJs(text: string): ReadEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]);
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const shown = (time: ICAL.Time) => `${time.year}-${two(time.month)}-${two(time.day)}${time.isDate ? '' : ` ${two(time.hour)}:${two(time.minute)}`}`;
    return {
      uid: event.uid, sequence: Number(event.sequence), status: String(component.getFirstPropertyValue('status')), allDay: event.startDate.isDate,
      start: shown(event.startDate), end: shown(event.endDate), summary: event.summary ?? '', description: event.description ?? '', location: event.location ?? '',
    };
  });
}

/** Reads into `Date`s of this machine's own zone. */
export function withNodeIcal(text: string): ReadEvent[] {
  return Object.values(nodeIcal.sync.parseICS(text)).flatMap((one) => {
    if (one?.type !== 'VEVENT') return [];
    const allDay = one.datetype === 'date';
    const shown = (at: Date) => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}${allDay ? '' : ` ${two(at.getHours())}:${two(at.getMinutes())}`}`;
    return [{
      uid: one.uid, sequence: Number(one.sequence), status: String(one.status), allDay, start: shown(one.start), end: one.end === undefined ? '' : shown(one.end),
      summary: String(one.summary ?? ''), description: String(one.description ?? ''), location: String(one.location ?? ''),
    }];
  });
}
