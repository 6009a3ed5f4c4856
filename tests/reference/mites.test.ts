import { describe, expect, test } from 'vitest';
import { day, daysBetween } from '#shared/days.ts';
import { beesInHalfCups, chanceOfNone, daysUntil, grownRate, miteProjection, withBrood } from '#core/mites/miteProjection.ts';
import { miteRate } from '#core/mites/miteRate.ts';
import { judgeMites, miteThresholdsOn } from '#core/mites/miteThresholds.ts';
import { yardEstimate } from '#core/mites/yardEstimate.ts';

const none = new Map<string, number | string>();

// Arithmetic: mites in 100 bees = 100 x mites / bees.
test('rates of a wash; of no bees there is none', () => {
  expect([[9, 300], [6, 300], [7, 280]].map(([mites, bees]) => miteRate({ mites: mites!, bees: bees! }).per100)).toEqual([3, 2, 2.5]);
  expect(() => miteRate({ mites: 3, bees: 0 })).toThrow(RangeError);
});

// Half a US cup holds 300 bees (beekept.org, read-weak) or 400 (Mississippi State University Extension, read).
test('9 mites in half a cup are 3.0 or 2.25 in 100, and the verdict at a threshold of 3 differs', () => {
  const rate = (rules: ReadonlyMap<string, number | string>) => miteRate({ mites: 9, bees: beesInHalfCups(1, rules) }).per100;
  const [fewer, more] = [rate(none), rate(new Map([['mites.halfCup', 400]]))];
  expect([fewer, more]).toEqual([3, 2.25]);
  const thresholds = miteThresholdsOn(day('2026-07-01'), true, none);
  expect([judgeMites(fewer, thresholds), judgeMites(more, thresholds)]).toEqual(['act', 'watch']);
});

// Oliver 2020 (scientificbeekeeping.com, read) prints 36 % for 100 bees; 300 bees by arithmetic.
test('chance of finding none at 1 in 100', () => {
  expect(chanceOfNone(1, 100)).toBeCloseTo(0.366, 3);
  expect(chanceOfNone(1, 300)).toBeCloseTo(0.049, 3);
});

describe('growth', () => {
  // 0.021 a day, doubling in 33 days (credited to Oliver, read-weak; Martin 1998, from memory); the days are arithmetic.
  test('1.0 on 1 April doubles in 33 days, reaches 3 after 52.3 days, and is 6.6 after 90', () => {
    expect(grownRate(1, 33, 0.021)).toBeCloseTo(2.0, 2);
    expect(daysUntil(1, 3, 0.021)).toBeCloseTo(52.3, 1);
    expect(grownRate(1, 90, 0.021)).toBeCloseTo(6.62, 2);
    const projected = miteProjection(miteRate({ mites: 3, bees: 300 }), day('2026-04-01'), 3, none);
    expect(daysBetween(day('2026-04-01'), projected.expected!)).toBe(53);
  });
  // Lee et al. 2010, J. Econ. Entomol. 103:1039-1050 (read): mites in all are double those on grown bees.
  test('2.5 on grown bees are 5.0 with brood', () => expect(withBrood(2.5, none)).toBe(5));
});

// Reference values computed with R 4.2.2 (quasi-Poisson fit and exact Poisson limits).
describe('a yard', () => {
  const washes = (mites: readonly number[], bees: readonly number[]) => mites.map((count, at) => ({ colony: at, mites: count, bees: bees[at] ?? 300 }));
  test('eight colonies of 300 bees', () => {
    const found = yardEstimate(washes([3, 9, 0, 12, 4, 7, 2, 15], []), null, 2, none);
    expect(found.rate?.per100).toBeCloseTo(2.1667, 4);
    expect(found.rate?.limits.lower).toBeCloseTo(1.1086, 4);
    expect(found.rate?.limits.upper).toBeCloseTo(4.2346, 4);
    expect(found).toMatchObject({ basis: 'colonies', few: false, more: 3 });
    expect(found.hot.map(({ colony }) => colony)).toEqual([7, 3, 1]);
    expect(found.hot[0]?.above).toBeCloseTo(0.99915, 5);
  });
  test('unequal samples of 5 among 20 colonies', () => {
    const found = yardEstimate(washes([1, 0, 6, 2, 22], [280, 310, 300, 250, 330]), 20, 3, none);
    expect(found.above).toBeCloseTo(0.2989134, 6);
    expect(found.more).toBe(12 - 5);
    expect(found.hot.map(({ colony }) => colony)).toEqual([4]);
  });
  test('no mite in three washes: the upper limit alone', () => {
    const found = yardEstimate(washes([0, 0, 0], []), null, 1, none);
    expect(found.rate?.per100).toBe(0);
    expect(found.rate?.limits.upper).toBeCloseTo(0.40988, 5);
    // 8 colonies whatever the yard's size (Lee et al. 2010, read).
    expect(found).toMatchObject({ basis: 'no mite', few: true, more: 5 });
  });
});

// USDA-ARS Tucson (gilroybeekeepers.org, read): 3 in any season; bands by season of the Honey Bee Health Coalition, 2016 to 2018 (from memory).
test('thresholds by phase', () => {
  const at = (on: string, brood: boolean) => {
    const { phase, watch, treat } = miteThresholdsOn(day(on), brood, none);
    return [phase, watch, treat];
  };
  expect(at('2026-01-10', true)).toEqual(['dormantBrood', 1, 2]);
  expect(at('2026-12-01', false)).toEqual(['dormantBroodless', 1, 3]);
  expect(at('2026-04-20', true)).toEqual(['increase', 1, 3]);
  expect(at('2026-06-15', true)).toEqual(['peak', 2, 3]);
  expect(at('2026-08-01', true)).toEqual(['decrease', 2, 3]);
});
