import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { temperShown, lineTraits, linesYield } from '#core/lineage/lineTraits.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import { hived, recorded } from '../losses/recorded.ts';

const rowsOf = (values: readonly (readonly [string, number, number])[]) => values.map(([key, season, lb]) => ({ key, season, lb }));

test('the years are evened out: a line that was only weighed in a good year is not the better for it', () => {
  // Two lines, alike in every season; A weighed mostly in the good one, B mostly in the poor one.
  const rows = rowsOf([['A', 2024, 100], ['A', 2024, 100], ['A', 2024, 100], ['B', 2024, 100], ['A', 2025, 40], ['B', 2025, 40], ['B', 2025, 40], ['B', 2025, 40]]);
  const { lines, all } = linesYield(rows);
  expect(lines.get('A')?.lb).toBeCloseTo(70, 9);
  expect(lines.get('B')?.lb).toBeCloseTo(70, 9);
  expect(all).toMatchObject({ n: 8, lb: 70 });
});

test('with two lines each has its own t interval; a season of one line alone compares nothing', () => {
  const { lines } = linesYield(rowsOf([['A', 2024, 50], ['A', 2024, 70], ['B', 2024, 30], ['B', 2024, 50], ['A', 2025, 200], ['A', 2025, 300]]));
  const own = meanInterval([50, 70]);
  expect(lines.get('A')).toEqual({ n: 2, lb: 60, interval: [Math.max(0, own.limits?.lower ?? 0), own.limits?.upper], pooled: false });
  expect(linesYield(rowsOf([['A', 2024, 50], ['A', 2025, 70]]))).toMatchObject({ lines: new Map(), all: { n: 2, lb: 60 } });
  expect(linesYield([])).toEqual({ lines: new Map(), all: { n: 0, lb: null, interval: null, pooled: false } });
});

test('pooled means lie between a line and the whole, and the same pounds in every year leave no difference', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom('A', 'B', 'C', 'D'), fc.integer({ min: 2020, max: 2025 }), fc.integer({ min: 0, max: 150 })), { minLength: 1, maxLength: 60 }), fc.integer({ min: 1, max: 500 }), (values, more) => {
      const rows = rowsOf(values);
      const { lines, all } = linesYield(rows);
      expect([...lines.values()].reduce((sum, { n }) => sum + n, 0)).toBeLessThanOrEqual(all.n);
      for (const { lb, interval } of lines.values()) {
        expect(Number.isFinite(lb)).toBe(true);
        if (interval !== null && lb !== null && lb >= 0) expect(interval[0] <= lb + 1e-9 && lb <= interval[1] + 1e-9).toBe(true);
      }
      // A better year for everybody changes no order of lines.
      const year = rows[0]?.season;
      const better = linesYield(rows.map((row) => (row.season === year ? { ...row, lb: row.lb + more } : row)));
      const moved = [...lines].map(([key, { lb }]) => (better.lines.get(key)?.lb ?? 0) - (lb ?? 0));
      for (const by of moved) expect(by).toBeCloseTo(moved[0] ?? 0, 6);
    }),
  );
});

test('temper counts colonies, swarming seasons of colonies', () => {
  const look = (date: string, colony: string, temper: string): Cells => ({ date, entry: 'inspection', colony, temper });
  const { states } = recorded([
    hived('2024-05-01', 'A'), hived('2024-05-01', 'B'), look('2024-06-01', 'A', '1'), look('2024-06-01', 'B', '4'), look('2024-07-01', 'A', '3'), hived('2024-11-01', 'C'),
    { date: '2025-05-20', entry: 'queen', colony: 'A', what: 'swarmed' },
  ]);
  const { lines, all } = lineTraits(states, (state) => (state.label === 'C' ? 'late' : 'early'), defaultBorders, day('2025-09-01'));
  expect(lines.get('early')?.temper).toMatchObject({ n: 2, mean: 3, interval: [1, 5] });
  // Values that are all the same tell no range.
  expect([temperShown([1, 1]), temperShown([1]), temperShown([1, 2]).interval]).toEqual([{ n: 2, mean: 1, interval: null }, { n: 1, mean: 1, interval: null }, [1, 5]]);
  // A and B in the summers of 2024 and 2025.
  expect(lines.get('early')?.swarming).toMatchObject({ count: 1, of: 4 });
  expect(lines.get('late')?.swarming).toMatchObject({ count: 0, of: 1 });
  expect(lines.get('late')?.temper).toEqual({ n: 0, mean: null, interval: null });
  expect(all.swarming).toMatchObject({ count: 1, of: 5 });
});
