import { describe, expect, test } from 'vitest';
import { startState, nextState } from '#core/calendar/nextState.ts';
import { readBusy, type BusyCalendar } from '#core/calendar/readBusy.ts';
import { writeCalendar } from '#core/calendar/writeCalendar.ts';
import { day } from '#shared/days.ts';

const file = (...events: string[]) => ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Elsewhere//EN', 'X-WR-CALNAME:Day job', ...events, 'END:VCALENDAR', ''].join('\r\n');
const event = (uid: string, ...lines: string[]) => ['BEGIN:VEVENT', `UID:${uid}`, 'DTSTAMP:20260101T000000Z', ...lines, 'END:VEVENT'].join('\r\n');
const read = (text: string, zone = 'America/New_York'): BusyCalendar => {
  const answer = readBusy(text, 'job.ics', day('2026-01-01'), day('2026-12-31'), zone);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.value;
};
const spans = (text: string, zone?: string) => read(text, zone).spans.map(({ day: on, from, until, what }) => [on, from === null ? 'all day' : `${from / 60}-${(until ?? 0) / 60}`, what]);

describe('the taken time of a calendar', () => {
  test('an all-day event takes its days and not the one after, wherever it is read', () => {
    const text = file(event('a', 'DTSTART;VALUE=DATE:20260706', 'DTEND;VALUE=DATE:20260709', 'SUMMARY:Fair'));
    for (const zone of ['Pacific/Pago_Pago', 'UTC', 'Pacific/Kiritimati']) {
      expect(spans(text, zone)).toEqual([['2026-07-06', 'all day', 'Fair'], ['2026-07-07', 'all day', 'Fair'], ['2026-07-08', 'all day', 'Fair']]);
    }
  });

  test('times in UTC are turned to where the person is, across midnight and the change of the clocks', () => {
    const text = file(event('a', 'DTSTART:20260310T223000Z', 'DTEND:20260311T003000Z', 'SUMMARY:Late shift'), event('b', 'DTSTART:20260301T223000Z', 'DURATION:PT1H', 'SUMMARY:Call'));
    expect(spans(text)).toEqual([['2026-03-01', '17.5-18.5', 'Call'], ['2026-03-10', '18.5-20.5', 'Late shift']]);
    expect(spans(text, 'Europe/Berlin')).toEqual([['2026-03-01', '23.5-24', 'Call'], ['2026-03-02', '0-0.5', 'Call'], ['2026-03-10', '23.5-24', 'Late shift'], ['2026-03-11', '0-1.5', 'Late shift']]);
  });

  test('floating times stay as they are; a named zone is looked up; one that nobody knows is taken as here', () => {
    const text = file(
      event('a', 'DTSTART:20260310T180000', 'DTEND:20260310T190000', 'SUMMARY:Choir'),
      event('b', 'DTSTART;TZID=Europe/Berlin:20260311T180000', 'DTEND;TZID=Europe/Berlin:20260311T190000', 'SUMMARY:Abroad'),
      event('c', 'DTSTART;TZID=Somewhere:20260312T180000', 'DTEND;TZID=Somewhere:20260312T190000', 'SUMMARY:Odd'),
    );
    expect(spans(text)).toEqual([['2026-03-10', '18-19', 'Choir'], ['2026-03-11', '13-14', 'Abroad'], ['2026-03-12', '18-19', 'Odd']]);
  });

  test('a repeating event stands on each of its days, without those taken out, and moved ones where they were moved', () => {
    const text = file(
      event('a', 'DTSTART:20260105T170000', 'DTEND:20260105T210000', 'RRULE:FREQ=WEEKLY;BYDAY=MO;COUNT=6', 'EXDATE:20260119T170000', 'SUMMARY:Evening shift'),
      event('a', 'RECURRENCE-ID:20260126T170000', 'DTSTART:20260128T180000', 'DTEND:20260128T190000', 'SUMMARY:Moved shift'),
      event('a', 'RECURRENCE-ID:20260202T170000', 'DTSTART:20260202T170000', 'DTEND:20260202T210000', 'STATUS:CANCELLED', 'SUMMARY:No shift'),
    );
    expect(spans(text)).toEqual([['2026-01-05', '17-21', 'Evening shift'], ['2026-01-12', '17-21', 'Evening shift'], ['2026-01-28', '18-19', 'Moved shift'], ['2026-02-09', '17-21', 'Evening shift']]);
    expect(read(text)).toMatchObject({ events: 4, free: 1, name: 'Day job' });
  });

  test('one that began long ago and never ends is asked only for the days in question', () => {
    const found = read(file(event('a', 'DTSTART;VALUE=DATE:20010101', 'RRULE:FREQ=YEARLY', 'SUMMARY:New year'), event('b', 'DTSTART:20100104T080000', 'DTEND:20100104T160000', 'RRULE:FREQ=DAILY;BYDAY=MO,TU,WE,TH,FR', 'SUMMARY:Work')));
    expect(found.spans.filter(({ what }) => what === 'New year').map(({ day: on }) => on)).toEqual(['2026-01-01']);
    expect(found.spans.filter(({ what }) => what === 'Work')).toHaveLength(261);
  });

  test('cancelled events and those shown as free take nothing', () => {
    const text = file(event('a', 'DTSTART;VALUE=DATE:20260706', 'TRANSP:TRANSPARENT', 'SUMMARY:Birthday'), event('b', 'DTSTART;VALUE=DATE:20260707', 'STATUS:CANCELLED', 'SUMMARY:Off'));
    expect(read(text)).toMatchObject({ spans: [], events: 0, free: 2 });
  });

  test.each([
    ['no beginning', ['SUMMARY:Shift'], '“Shift”: it has no beginning.'],
    ['a beginning in words', ['SUMMARY:Shift', 'DTSTART:hello'], '“Shift”: its beginning is no day or time that there is (“hello”).'],
    ['an empty beginning', ['DTSTART:'], 'An event without a name: its beginning is no day or time that there is.'],
    ['a day that no month has', ['SUMMARY:Shift', 'DTSTART;VALUE=DATE:20260230'], '“Shift”: its beginning is no day or time that there is (“20260230”).'],
    ['an hour that no day has', ['SUMMARY:Shift', 'DTSTART:20260301T250000'], '“Shift” on 1 March 2026: its beginning is no day or time that there is (“20260301T250000”).'],
    ['two beginnings', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'DTSTART:20260302T100000'], '“Shift” on 1 March 2026: it has two beginnings.'],
    ['an end in words', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'DTEND:soon'], '“Shift” on 1 March 2026: its end is no day or time that there is (“soon”).'],
    ['an end before its beginning', ['DTSTART:20260301T100000', 'DTEND:20260301T090000'], 'An event without a name on 1 March 2026: it ends before it begins.'],
    ['a length in words', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'DURATION:long'], '“Shift” on 1 March 2026: how long it takes cannot be read (“long”).'],
    ['a length below nothing', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'DURATION:-PT1H'], '“Shift” on 1 March 2026: how long it takes cannot be read (“-PT1H”).'],
    ['a rule that nobody knows', ['SUMMARY:Night\\, shift', 'DTSTART;TZID=Europe/Berlin:20260301T100000', 'RRULE:FREQ=SOMETIMES'], '“Night, shift” on 1 March 2026: its rule for repeating cannot be read (“FREQ=SOMETIMES”).'],
    ['a rule without how often', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'RRULE:BYDAY=MO'], '“Shift” on 1 March 2026: its rule for repeating cannot be read.'],
    ['a rule until a day in words', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'RRULE:FREQ=WEEKLY;UNTIL=never'], '“Shift” on 1 March 2026: its rule for repeating cannot be read.'],
    ['a left out day in words', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'RRULE:FREQ=WEEKLY', 'EXDATE:whenever'], '“Shift” on 1 March 2026: a day that it leaves out is no day or time that there is (“whenever”).'],
    ['a line that is none', ['SUMMARY:Shift', 'DTSTART:20260301T100000', 'DTEND:20260301T110000', 'nothing'], '“Shift” on 1 March 2026: a line of it cannot be read (“nothing”).'],
    ['repeats without end', ['SUMMARY:Tick', 'DTSTART:19900301T100000', 'RRULE:FREQ=SECONDLY'], '“Tick” on 1 March 1990: it repeats so often that it is read only up to 1 March 1990.'],
  ])('an event with %s is named in words of ours, and the others are read', (_, lines, says) => {
    const found = read(file(event('a', ...lines), event('b', 'DTSTART;VALUE=DATE:20260707', 'SUMMARY:Fair')));
    expect(found.unread).toEqual([says]);
    expect(found.spans.map(({ what }) => what)).toEqual(['Fair']);
  });

  test('a changed repeat that cannot be read leaves its series as it was; two events of one name both count, an older revision does not', () => {
    const series = event('a', 'DTSTART:20260105T170000', 'DTEND:20260105T210000', 'RRULE:FREQ=WEEKLY;COUNT=2', 'SUMMARY:Shift');
    const broken = read(file(series, event('a', 'RECURRENCE-ID:sometime', 'DTSTART:20260114T170000', 'DTEND:20260114T180000', 'SUMMARY:Moved shift')));
    expect(broken.unread).toEqual(['“Moved shift” on 14 January 2026: the day of the series that it stands for is no day or time that there is (“sometime”).']);
    expect(broken.spans.map(({ day: on }) => on)).toEqual(['2026-01-05', '2026-01-12']);
    const twice = (...more: string[]) => spans(file(event('a', 'DTSTART;VALUE=DATE:20260706', 'SUMMARY:Fair'), event('a', 'DTSTART;VALUE=DATE:20260710', 'SUMMARY:Other fair', ...more))).map(([on]) => on);
    expect([twice(), twice('SEQUENCE:2')]).toEqual([['2026-07-06', '2026-07-10'], ['2026-07-10']]);
  });

  test('what has no length takes no time, and is counted', () => {
    expect(read(file(event('a', 'DTSTART:20260301T100000', 'SUMMARY:Reminder'), event('b', 'DTSTART:20250301T100000', 'SUMMARY:Long ago')))).toMatchObject({ spans: [], events: 0, free: 1, unread: [] });
  });

  test.each(['', 'hello', 'date,entry\n2026-01-01,note', 'BEGIN:VCALENDAR\r\nBEGIN:VEVENT', 'BEGIN:VTODO\r\nEND:VTODO', '\u0000\u0001'])('%j is refused with a sentence', (text) => {
    expect(readBusy(text, 'x.ics', day('2026-01-01'), day('2026-12-31'), 'UTC')).toMatchObject({ ok: false, code: 'file-unreadable', sentence: 'x.ics cannot be read as a calendar.' });
  });

  test('our own calendar is not taken for a busy one', () => {
    const own = writeCalendar(nextState(startState('b'), [], day('2026-01-01'), '2026-01-01T00:00:00Z'), 'Ours');
    expect(readBusy(own, 'ours.ics', day('2026-01-01'), day('2026-12-31'), 'UTC')).toMatchObject({ ok: false, code: 'refused' });
  });
});
