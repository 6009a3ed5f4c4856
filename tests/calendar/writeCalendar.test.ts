import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import type { CalendarItem, CalendarState } from '#core/calendar/calendarItem.ts';
import { nextState, sameState, startState } from '#core/calendar/nextState.ts';
import { writeCalendar } from '#core/calendar/writeCalendar.ts';
import { addDays, day, type Day } from '#shared/days.ts';
import { withIcalJs, withNodeIcal, type ReadEvent } from './readers.ts';

const today = day('2026-11-25');
const first = '2026-11-25T21:05:00Z';
const later = '2026-11-26T19:00:00Z';
const visit = (on: string, more: Partial<CalendarItem> = {}): CalendarItem => ({
  kind: 'visit', key: `visit QY ${on}`, line: 'visit QY', first: day(on), last: day(on), time: { from: 17 * 60 + 30, minutes: 95 }, summary: 'Quarry', description: null, location: 'Quarry', ...more,
});
const due = (from: string, until: string): CalendarItem => ({ kind: 'due', key: `due ${from}`, line: null, first: day(from), last: day(until), time: null, summary: 'Look for eggs', description: null, location: null });
const told = (items: readonly CalendarItem[], before: CalendarState = startState('b1'), stamp = first, now: Day = today) => nextState(before, items, now, stamp);
const file = (state: CalendarState) => writeCalendar(state, 'Ossar Valley');
const both = (state: CalendarState): ReadEvent[] => {
  const events = withIcalJs(file(state));
  expect(withNodeIcal(file(state))).toEqual(events);
  return events;
};
const brief = ({ sequence, status, start, end }: ReadEvent) => ({ sequence, status, start, end });

describe('the calendar file, read back by two readers', () => {
  test('all-day events begin and end on their days in every zone; times are where the person is', () => {
    const events = both(told([visit('2026-12-31', { time: { from: 23 * 60, minutes: 90 } }), due('2026-03-29', '2026-03-29'), due('2026-12-30', '2027-01-02')]));
    expect(events.map(brief)).toEqual([
      { sequence: 0, status: 'CONFIRMED', start: '2026-12-31 23:00', end: '2027-01-01 00:30' },
      { sequence: 0, status: 'CONFIRMED', start: '2026-03-29', end: '2026-03-30' },
      { sequence: 0, status: 'CONFIRMED', start: '2026-12-30', end: '2027-01-03' },
    ]);
    expect(events.map(({ allDay }) => allDay)).toEqual([false, true, true]);
  });

  test('any day is the day that both readers find', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 40 }), (at, long) => {
        const from = addDays(day('1990-01-01'), at);
        const [event] = both(told([{ ...due('2026-01-01', '2026-01-01'), first: from, last: addDays(from, long) }]));
        expect([event?.start, event?.end]).toEqual([from, addDays(from, long + 1)]);
      }),
      { numRuns: 60 },
    );
  });

  test('any text comes back as it was, in lines of at most 75 octets', () => {
    const text = fc.string({ unit: 'binary', maxLength: 300 }).map((one) => one.toWellFormed().replace(/[^\P{Cc}\n]/gu, '').replace(/[\u2028\u2029\uFEFF]/g, '').trim()).filter((one) => one !== '');
    fc.assert(
      fc.property(text, text, fc.stringMatching(/^[,;\\:"nN ]{1,120}$/), (summary, description, marks) => {
        const written = file(told([visit('2026-12-01', { summary, description, location: `x${marks}x` })]));
        for (const line of written.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(written.endsWith('END:VCALENDAR\r\n')).toBe(true);
        expect(written.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        const [event] = withIcalJs(written);
        expect(event).toMatchObject({ summary, description, location: `x${marks}x` });
        expect(withNodeIcal(written)).toHaveLength(1);
      }),
      { numRuns: 200 },
    );
  });

  test('both readers agree on ordinary text with every mark that is escaped', () => {
    const [event] = both(told([visit('2026-12-01', { summary: 'Quarry; larch, oak \\ pine', description: 'one\ntwo: "three"\n\nfour’s – ünï 🐝', location: 'Gate, left; past the mill' })]));
    expect(event).toMatchObject({ summary: 'Quarry; larch, oak \\ pine', description: 'one\ntwo: "three"\n\nfour’s – ünï 🐝', location: 'Gate, left; past the mill' });
  });

  test('no text can end its line and begin another', () => {
    const events = withIcalJs(file(told([visit('2026-12-01', { summary: 'a\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:evil\u0000', location: '\uD83D' })])));
    expect(events).toHaveLength(1);
    expect(events[0]?.summary).toBe('a\nEND:VEVENT\nBEGIN:VEVENT\nUID:evil');
  });
});

// RFC 5545, 3.4 and 3.6: a calendar holds one component at least.
test('with nothing to tell it is still a whole calendar, without events to both readers', () => {
  const empty = file(startState('b1'));
  expect(both(startState('b1'))).toEqual([]);
  const components = new ICAL.Component(ICAL.parse(empty) as ConstructorParameters<typeof ICAL.Component>[0]).getAllSubcomponents().map(({ name }) => name);
  expect(components).toEqual(['vtimezone']);
  expect(empty.split('\r\n').every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
  expect(empty).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\n[^]*END:VTIMEZONE\r\nEND:VCALENDAR\r\n$/);
  // As soon as there is something, it stands there without it.
  expect(file(told([visit('2026-12-01')]))).not.toContain('VTIMEZONE');
});

describe('a second file', () => {
  test('is the same to the letter where nothing changed', () => {
    const one = told([visit('2026-12-01'), due('2026-12-03', '2026-12-05')]);
    const two = told([visit('2026-12-01'), due('2026-12-03', '2026-12-05')], one, later);
    expect(sameState(one, two)).toBe(true);
    expect(file(two)).toBe(file(one));
  });

  test('updates what moved under its name instead of telling it twice', () => {
    const one = told([visit('2026-12-01'), visit('2026-12-08')]);
    const two = told([visit('2026-12-01', { time: null }), visit('2026-12-09')], one, later);
    const [before, after] = [both(one), both(two)];
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after.map(brief)).toEqual([
      { sequence: 1, status: 'CONFIRMED', start: '2026-12-01', end: '2026-12-02' },
      { sequence: 1, status: 'CONFIRMED', start: '2026-12-09 17:30', end: '2026-12-09 19:05' },
    ]);
    expect(file(two)).toContain('LAST-MODIFIED:20261126T190000Z');
    expect(file(two)).toContain('CREATED:20261125T210500Z');
  });

  test('cancels what is no longer to be done, and brings it back under the same name', () => {
    const one = told([visit('2026-12-01'), due('2026-12-03', '2026-12-05')]);
    const two = told([visit('2026-12-01')], one, later);
    expect(both(two).map(({ sequence, status }) => [sequence, status])).toEqual([[0, 'CONFIRMED'], [1, 'CANCELLED']]);
    const still = told([visit('2026-12-01')], two, '2026-11-27T07:00:00Z');
    expect(sameState(two, still)).toBe(true);
    const three = told([visit('2026-12-01'), due('2026-12-03', '2026-12-05')], still, '2026-11-28T07:00:00Z');
    expect(both(three).map(({ sequence, status }) => [sequence, status])).toEqual([[0, 'CONFIRMED'], [2, 'CONFIRMED']]);
    expect(both(three).map(({ uid }) => uid)).toEqual(both(one).map(({ uid }) => uid));
  });

  test('leaves what is over as it was, and after two months no longer tells it', () => {
    const one = told([visit('2026-11-26')]);
    const after = told([], one, later, day('2026-11-27'));
    expect(both(after).map(({ sequence, status }) => [sequence, status])).toEqual([[0, 'CONFIRMED']]);
    expect(told([], after, later, day('2027-01-26')).events).toEqual([]);
  });

  test('never uses a name again, whatever comes and goes', () => {
    const days = fc.uniqueArray(fc.integer({ min: -10, max: 90 }), { maxLength: 8 });
    fc.assert(
      fc.property(fc.array(days, { minLength: 1, maxLength: 12 }), (steps) => {
        let state = startState('b1');
        const latest = new Map<string, number>();
        steps.forEach((offsets, at) => {
          const now = addDays(today, at * 9);
          const items = offsets.map((offset) => visit(addDays(now, offset)));
          const next = nextState(state, items, now, `2027-01-01T00:00:${String(at).padStart(2, '0')}Z`);
          expect(new Set(next.events.map(({ uid }) => uid)).size).toBe(next.events.length);
          // Each thing asked for is told exactly once, and what is told beside is cancelled or over.
          const live = next.events.filter(({ cancelled }) => !cancelled);
          for (const item of items) expect(live.filter((event) => event.item === item || event.item.key === item.key)).toHaveLength(1);
          for (const event of live) expect(items.some(({ key }) => key === event.item.key) || event.item.last < now).toBe(true);
          for (const { uid, sequence } of next.events) {
            expect(sequence).toBeGreaterThanOrEqual(latest.get(uid) ?? 0);
            latest.set(uid, sequence);
          }
          state = next;
        });
      }),
    );
  });
});
