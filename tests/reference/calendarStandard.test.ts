import { describe, expect, test } from 'vitest';
import { readBusy } from '#core/calendar/readBusy.ts';
import { nextState, startState } from '#core/calendar/nextState.ts';
import { writeCalendar } from '#core/calendar/writeCalendar.ts';
import { day } from '#shared/days.ts';

/*
 * Examples of RFC 5545 (September 2009): section 3.8.5.3 for repeating events, 3.6.5 for the zone that they stand in,
 * 3.3.11 for escaped text, 3.1 for folded lines, 3.6.1 for days. From memory; the section stands beside each.
 */
const newYork = [
  'BEGIN:VTIMEZONE', 'TZID:America/New_York',
  'BEGIN:STANDARD', 'DTSTART:19671029T020000', 'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10', 'TZOFFSETFROM:-0400', 'TZOFFSETTO:-0500', 'TZNAME:EST', 'END:STANDARD',
  'BEGIN:DAYLIGHT', 'DTSTART:19870405T020000', 'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=4', 'TZOFFSETFROM:-0500', 'TZOFFSETTO:-0400', 'TZNAME:EDT', 'END:DAYLIGHT',
  'END:VTIMEZONE',
];
const expand = (start: string, rule: string, more: string[] = [], until = '1998-12-31', zone = 'America/New_York') => {
  const text = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:x', ...newYork, 'BEGIN:VEVENT', 'UID:1', `DTSTART;TZID=America/New_York:${start}`, 'DURATION:PT1H', rule, ...more, 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');
  const answer = readBusy(text, 'x.ics', day('1997-01-01'), day(until), zone);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.value.spans.map((span) => `${span.day} ${(span.from ?? 0) / 60}`);
};
const at9 = (...days: string[]) => days.map((one) => `${one} 9`);

describe('RFC 5545, 3.8.5.3: repeating events', () => {
  test('daily for ten times', () => {
    expect(expand('19970902T090000', 'RRULE:FREQ=DAILY;COUNT=10')).toEqual(at9('1997-09-02', '1997-09-03', '1997-09-04', '1997-09-05', '1997-09-06', '1997-09-07', '1997-09-08', '1997-09-09', '1997-09-10', '1997-09-11'));
  });
  test('every ten days, five times', () => {
    expect(expand('19970902T090000', 'RRULE:FREQ=DAILY;INTERVAL=10;COUNT=5')).toEqual(at9('1997-09-02', '1997-09-12', '1997-09-22', '1997-10-02', '1997-10-12'));
  });
  test('weekly on Tuesday and Thursday for five weeks', () => {
    expect(expand('19970902T090000', 'RRULE:FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH')).toEqual(at9('1997-09-02', '1997-09-04', '1997-09-09', '1997-09-11', '1997-09-16', '1997-09-18', '1997-09-23', '1997-09-25', '1997-09-30', '1997-10-02'));
  });
  test('monthly on the first Friday, ten times', () => {
    expect(expand('19970905T090000', 'RRULE:FREQ=MONTHLY;COUNT=10;BYDAY=1FR')).toEqual(at9('1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05', '1998-01-02', '1998-02-06', '1998-03-06', '1998-04-03', '1998-05-01', '1998-06-05'));
  });
  test('every Friday the 13th, without the first of its days', () => {
    expect(expand('19970902T090000', 'RRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', ['EXDATE;TZID=America/New_York:19970902T090000'])).toEqual(at9('1998-02-13', '1998-03-13', '1998-11-13'));
  });
  test('the week of a rule begins where WKST says', () => {
    expect(expand('19970805T090000', 'RRULE:FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO')).toEqual(at9('1997-08-05', '1997-08-10', '1997-08-19', '1997-08-24'));
    expect(expand('19970805T090000', 'RRULE:FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU')).toEqual(at9('1997-08-05', '1997-08-17', '1997-08-19', '1997-08-31'));
  });
  test('9 o’clock in New York is 14 o’clock in UTC in winter and 13 in summer', () => {
    expect(expand('19971025T090000', 'RRULE:FREQ=DAILY;COUNT=3', [], '1998-12-31', 'UTC')).toEqual(['1997-10-25 13', '1997-10-26 14', '1997-10-27 14']);
  });
});

const written = (summary: string, description: string) =>
  writeCalendar(
    nextState(startState('b'), [{ kind: 'due', key: 'k', line: null, first: day('2007-06-28'), last: day('2007-07-08'), time: null, summary, description, location: null }], day('2007-01-01'), '2007-04-23T12:34:32Z'),
    'x',
  );

describe('RFC 5545: what is written', () => {
  test('3.3.11: escaped text', () => {
    expect(written('x', 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toContain(String.raw`DESCRIPTION:Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`);
    expect(written('a; b, c \\ d', 'x')).toContain(String.raw`SUMMARY:a\; b\, c \\ d`);
  });
  test('3.1: a long line is cut into lines of at most 75 octets that begin with a space, and unfolds to itself', () => {
    const long = 'This is a long description that exists on a long line, with an é at any place é é é é é é é é é é é é é é é é é é é é.';
    const lines = written('x', long).split('\r\n');
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(lines.join('\r\n').replaceAll('\r\n ', '')).toContain(`DESCRIPTION:${long.replaceAll(',', '\\,')}`);
  });
  test('3.6.1: the event from 28 June to 8 July 2007 ends, not included, on the 9th', () => {
    expect(written('A festival', 'x')).toMatch(/DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n/);
  });
});
