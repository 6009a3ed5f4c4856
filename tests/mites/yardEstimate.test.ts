import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { daysUntil, grownRate, miteProjection } from '#core/mites/miteProjection.ts';
import { miteRate } from '#core/mites/miteRate.ts';
import { judgeMites, mitePhaseOn, miteThresholdsOn } from '#core/mites/miteThresholds.ts';
import { yardEstimate } from '#core/mites/yardEstimate.ts';

const none = new Map<string, number | string>();
const some = (count: number, bees = 300) => ({ colony: `c${count}`, mites: count, bees });

test('few washes say so, and no wash is no rate of 0', () => {
  expect(yardEstimate([], 14, 3, none)).toEqual({ washed: 0, rate: null, basis: 'none', few: false, above: null, hot: [], more: 8 });
  expect(yardEstimate([], 5, 3, none).more).toBe(5);
  expect(yardEstimate([some(6)], 14, 3, none)).toMatchObject({ washed: 1, basis: 'one colony', few: true, above: null, more: 7 });
  expect(yardEstimate([some(6), some(7)], 14, 3, none)).toMatchObject({ basis: 'colonies', few: true, more: 6 });
  expect(() => yardEstimate([some(1), some(2)], 1, 3, none)).toThrow(RangeError);
});

test('never more colonies than are left, none once the whole yard was washed', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(30), { minLength: 0, maxLength: 15 }), fc.nat(15), (counts, rest) => {
      const found = yardEstimate(counts.map((count) => some(count)), counts.length + rest, 3, none);
      expect(found.more).toBeGreaterThanOrEqual(0);
      expect(found.more).toBeLessThanOrEqual(rest);
      if (found.rate !== null) expect(found.rate.limits.upper).toBeGreaterThan(found.rate.limits.lower);
      if (found.above !== null) expect(found.above >= 0 && found.above <= 1).toBe(true);
    }),
  );
});

test('a hotter yard is likelier above the threshold; a colony is called hot by the house’s own sureness', () => {
  const above = (counts: readonly number[]) => yardEstimate(counts.map((count) => some(count)), null, 3, none).above!;
  expect(above([4, 5, 6, 5])).toBeLessThan(above([9, 10, 11, 10]));
  const washes = [some(11), some(3), some(2), some(4)];
  expect(yardEstimate(washes, null, 3, none).hot).toHaveLength(0);
  expect(yardEstimate(washes, null, 3, new Map([['mites.sure', 0.7]])).hot).toHaveLength(1);
});

test('the way to the threshold: earliest before expected before latest; what is not told is not named', () => {
  const count = (mites: number) => miteProjection(miteRate({ mites, bees: 300 }), day('2026-06-01'), 3, none);
  const { earliest, expected, latest, reached } = count(4);
  expect(reached).toBe(false);
  expect(earliest! < expected! && expected! < latest!).toBe(true);
  expect(count(9)).toMatchObject({ reached: true, expected: '2026-06-01', earliest: '2026-06-01' });
  // Nothing found: the upper limit still grows, the rate itself and the lower limit have nothing to grow from.
  expect(count(0)).toMatchObject({ reached: false, expected: null, latest: null });
  expect(count(0).earliest).not.toBeNull();
  expect(miteProjection(miteRate({ mites: 4, bees: 300 }), day('2026-06-01'), 3, new Map([['mites.growth', 0]]))).toMatchObject({ expected: null, latest: null });
  expect(miteProjection(miteRate({ mites: 4, bees: 300 }), day('2026-06-01'), 3, new Map([['mites.growth', 0.001]])).expected).toBeNull();
});

test('growing for the days until the threshold gives the threshold', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 2.9, noNaN: true }), fc.double({ min: 0.005, max: 0.1, noNaN: true }), (rate, growth) => {
      expect(grownRate(rate, daysUntil(rate, 3, growth)!, growth)).toBeCloseTo(3, 9);
    }),
  );
});

test('phases follow the house’s borders, whatever order they stand in over the year', () => {
  const south = new Map([['mites.begins.dormant', '12-15'], ['mites.begins.increase', '01-20']]);
  expect(['2026-01-05', '2026-01-20', '2026-12-14', '2026-12-15'].map((on) => mitePhaseOn(day(on), true, south))).toEqual(['dormantBrood', 'increase', 'decrease', 'dormantBrood']);
  const other = new Map([['mites.begins.increase', '09-01'], ['mites.begins.peak', '12-01'], ['mites.begins.decrease', '02-01'], ['mites.begins.dormant', '05-01']]);
  expect(['2026-01-05', '2026-03-05', '2026-07-05', '2026-10-05'].map((on) => mitePhaseOn(day(on), false, other))).toEqual(['peak', 'decrease', 'dormantBroodless', 'increase']);
  const thresholds = miteThresholdsOn(day('2026-09-01'), true, new Map([['mites.treat.decrease', 2.5]]));
  expect([1.9, 2, 2.4, 2.5].map((rate) => judgeMites(rate, thresholds))).toEqual(['low', 'watch', 'watch', 'act']);
});
