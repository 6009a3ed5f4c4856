import ICAL from 'ical.js';
import { dayFromIso } from '#shared/days.ts';
import { eventName } from './eventFault.ts';

export interface SplitCalendar {
  /** The file without the events that no reader of the form can take apart. */
  readonly text: string;
  /** Those, each with a sentence. */
  readonly unread: readonly string[];
}

/** Takes out of a calendar file the events whose lines cannot be taken apart, so that one of them does not keep the others from being read. */
export function splitEvents(text: string): SplitCalendar {
  // Long lines go on after a line end and a blank (RFC 5545, 3.1).
  const lines = text.replace(/\r?\n[ \t]/g, '').split(/\r?\n/);
  const kept: string[] = [];
  const unread: string[] = [];
  let event: string[] | null = null;
  for (const line of lines) {
    if (event === null && /^BEGIN:VEVENT\s*$/i.test(line)) event = [];
    if (event === null) {
      kept.push(line);
      continue;
    }
    event.push(line);
    if (!/^END:VEVENT\s*$/i.test(line)) continue;
    if (isRead(event)) kept.push(...event);
    else unread.push(saysOf(event));
    event = null;
  }
  return { text: [...kept, ...(event ?? [])].join('\r\n'), unread };
}

function isRead(lines: readonly string[]): boolean {
  try {
    ICAL.parse(['BEGIN:VCALENDAR', ...lines, 'END:VCALENDAR'].join('\r\n'));
    return true;
  } catch {
    // The library throws its own words, of no one kind; which line it is, is found line by line.
    return false;
  }
}

function saysOf(lines: readonly string[]): string {
  const inner = lines.slice(1, -1);
  const wrong = inner.find((line) => line.trim() !== '' && !/^(?:BEGIN|END):/i.test(line) && !isRead(['BEGIN:VEVENT', line, 'END:VEVENT']));
  const why = wrong === undefined ? 'its lines are not those of an event' : /^RRULE/i.test(wrong) ? `its rule for repeating cannot be read (“${afterName(wrong)}”)` : `a line of it cannot be read (“${wrong.slice(0, 60)}”)`;
  const summary = inner.find((line) => /^SUMMARY[:;]/i.test(line));
  const start = /(\d{4})(\d{2})(\d{2})/.exec(afterName(inner.find((line) => /^DTSTART[:;]/i.test(line)) ?? ''));
  return `${eventName(summary === undefined ? null : unescaped(afterName(summary)), start === null ? null : dayFromIso(`${start[1]}-${start[2]}-${start[3]}`))}: ${why}.`;
}

function afterName(line: string): string {
  return line.slice(line.indexOf(':') + 1).slice(0, 120);
}

/** RFC 5545, 3.3.11. */
function unescaped(text: string): string {
  return text.replace(/\\n/gi, ' ').replace(/\\(.)/g, '$1');
}
