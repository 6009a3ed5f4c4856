import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import { periodDays, seasonName, seasonOf, type Borders } from '#shared/seasons.ts';

const monthDay = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([month, dayOfMonth]) => `${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`);
const borders: fc.Arbitrary<Borders> = fc
  .record({ seasonStart: monthDay, winterStart: monthDay })
  .filter(({ seasonStart, winterStart }) => seasonStart !== winterStart);
const anyDay = fc.integer({ min: 0, max: 40_000 }).map((days) => addDays(day('1970-01-01'), days));

describe('a season', () => {
  test.each([
    ['2025-04-01', 2025], ['2025-03-31', 2024], ['2026-01-01', 2025], ['2026-03-31', 2025], ['2025-12-31', 2025],
  ] as const)('%s belongs to %d', (of, season) => expect(seasonOf(day(of))).toBe(season));

  test('is called by both its years', () => expect([seasonName(2025), seasonName(1999)]).toEqual(['2025–26', '1999–00']));

  test('of the usual borders: summer from 1 April, winter from 1 October', () => {
    expect(periodDays(2025, 'summer')).toEqual({ from: '2025-04-01', until: '2025-10-01' });
    expect(periodDays(2025, 'winter')).toEqual({ from: '2025-10-01', until: '2026-04-01' });
    expect(periodDays(2025, 'year')).toEqual({ from: '2025-04-01', until: '2026-04-01' });
  });

  test('whatever the borders: every day is in the year of its season, and summer and winter fill it without a gap', () => {
    fc.assert(
      fc.property(anyDay, borders, (of, where) => {
        const season = seasonOf(of, where);
        const [year, summer, winter] = (['year', 'summer', 'winter'] as const).map((period) => periodDays(season, period, where));
        expect(of >= year!.from && of < year!.until).toBe(true);
        expect([summer!.from, summer!.until, winter!.until]).toEqual([year!.from, winter!.from, year!.until]);
        expect(summer!.until > summer!.from && winter!.until > winter!.from).toBe(true);
      }),
    );
  });
});
