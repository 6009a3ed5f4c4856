import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { readClock } from '#electron/keeper/clock.ts';
import { addDays, day, dayFromIso, dayFromTyped, dayInWords, daysBetween, dayNumber, type Day } from '#shared/days.ts';

const anyDay = fc
  .record({ year: fc.integer({ min: 1, max: 9999 }), month: fc.integer({ min: 1, max: 12 }), dayOfMonth: fc.integer({ min: 1, max: 31 }) })
  .map(({ year, month, dayOfMonth }) => Temporal.PlainDate.from({ year, month, day: dayOfMonth }, { overflow: 'constrain' }).toString() as Day);
const recentDay = fc.integer({ min: 0, max: 40_000 }).map((days) => addDays(day('1970-01-01'), days));

describe('a day as text', () => {
  test.each(['2024-02-29', '2000-02-29', '2025-12-31', '0001-01-01'])('%s is one', (text) => expect(dayFromIso(text)).toBe(text));
  test.each(['2023-02-29', '1900-02-29', '2025-04-31', '2025-13-01', '2025-00-10', '2025-01-00', '2025-1-9', '0000-01-01', '2025-01-01T00:00', ' 2025-01-01', ''])(
    '%s is none',
    (text) => expect(dayFromIso(text)).toBeNull(),
  );
  test('text known to be one and is not is a RangeError', () => expect(() => day('2025-02-30')).toThrow(RangeError));

  test('sorts as days do', () => {
    fc.assert(fc.property(anyDay, anyDay, (a, b) => void expect(Math.sign(daysBetween(a, b))).toBe(a < b ? 1 : a > b ? -1 : 0)));
  });
});

describe('a day as typed', () => {
  test.each([
    ['4/19/2025', 'month-first', '2025-04-19'],
    ['19/4/2025', 'day-first', '2025-04-19'],
    ['4/5/2025', 'month-first', '2025-04-05'],
    ['4/5/2025', 'day-first', '2025-05-04'],
    ['19.4.2025', 'month-first', '2025-04-19'],
    ['  2025-04-19 ', 'day-first', '2025-04-19'],
  ] as const)('%s, %s, is %s', (typed, order, found) => expect(dayFromTyped(typed, order)).toBe(found));

  test.each([
    ['19/4/2025', 'month-first'],
    ['4/19/2025', 'day-first'],
    ['29.2.2025', 'day-first'],
    ['4/19/25', 'month-first'],
    ['April 19', 'month-first'],
  ] as const)('%s, %s, is never guessed', (typed, order) => expect(dayFromTyped(typed, order)).toBeNull());
});

describe('counting days', () => {
  // Julian day numbers of the Astronomical Almanac's usual epochs, less 2440587.5 (1970-01-01); from memory.
  test.each([
    ['1970-01-01', 0],
    ['2000-01-01', 10_957],
    ['1858-11-17', -40_587],
  ] as const)('%s is day %d', (text, number) => expect(dayNumber(day(text))).toBe(number));

  test('agrees with Temporal on every day of the calendar', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (a, b) => {
        expect(daysBetween(a, b)).toBe(Temporal.PlainDate.from(a).until(Temporal.PlainDate.from(b), { largestUnit: 'day' }).days);
      }),
    );
  });

  test('adding days and counting them undo each other', () => {
    fc.assert(fc.property(recentDay, fc.integer({ min: -9000, max: 9000 }), (from, days) => void expect(daysBetween(from, addDays(from, days))).toBe(days)));
  });

  test('adding days agrees with Temporal, at the ends of the calendar too, and takes no part of a day', () => {
    fc.assert(fc.property(anyDay, fc.integer({ min: -200_000, max: 200_000 }), (from, days) => void expect(addDays(from, days)).toBe(Temporal.PlainDate.from(from).add({ days }).toString())));
    expect(addDays(day('9999-12-30'), 1)).toBe('9999-12-31');
    expect(addDays(day('0001-01-02'), -1)).toBe('0001-01-01');
    expect(() => addDays(day('2024-02-28'), 0.5)).toThrow(RangeError);
  });

  test('words say the same day', () => {
    expect(dayInWords(day('2025-02-14'))).toBe('14 February 2025');
    fc.assert(fc.property(recentDay, (of) => void expect(dayInWords(of).endsWith(of.slice(0, 4))).toBe(true)));
  });
});

describe('in whatever zone this runs', () => {
  test('the clock is read as the day and time where the person is', () => {
    for (const hour of [0, 1, 2, 3, 12, 23]) {
      expect(readClock(new Date(2026, 2, 29, hour, 5))).toMatchObject({ day: '2026-03-29' });
      expect(readClock(new Date(2026, 10, 1, hour, 5))).toMatchObject({ day: '2026-11-01' });
    }
    expect(readClock(new Date(2026, 0, 9, 7, 3))).toEqual({ day: '2026-01-09', stamp: '2026-01-09 07:03' });
  });

  test('the run is in the zone it was asked to be in', () => {
    const asked = process.env['TZ'];
    if (asked === 'Pacific/Pago_Pago') expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(11 * 60);
    if (asked === 'Pacific/Kiritimati') expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(-14 * 60);
    expect(new Date(2026, 0, 1, 12).getHours()).toBe(12);
  });
});
