import { describe, expect, test } from 'vitest';
import { nassPercent } from '#core/losses/nassPercent.ts';

// USDA NASS, Honey Bee Colonies, United States, operations with 5 or more colonies, release of 2 August 2021
// (tables of colonies, maximum, lost, added and renovated; notes 1 to 4). US rows have no maximum.

describe('US rows: per cent of the first-day count', () => {
  test.each([
    ['Jan-Mar 2020', 2_876_100, 415_110, '14', 153_390, '5'],
    ['Apr-Jun 2020', 2_972_000, 300_990, '10', 626_870, '21'],
    ['Jul-Sep 2020', 3_175_330, 411_490, '13', 381_620, '12'],
    ['Oct-Dec 2020', 3_135_340, 484_920, '15', 128_990, '4'],
  ])('%s', (_, firstDay, lost, percentLost, renovated, percentRenovated) => {
    const base = { firstDay, maximum: null };
    expect(nassPercent(lost, base).text).toBe(percentLost);
    expect(nassPercent(renovated, base).text).toBe(percentRenovated);
  });

  // The same table of an earlier release; the year is not on the page and was told from its numbers.
  test('April to June, 2,665,880 colonies', () => {
    expect(nassPercent(355_270, { firstDay: 2_665_880, maximum: null })).toEqual({ value: 13, text: '13' });
  });
});

describe('state rows: per cent of the maximum', () => {
  test.each([
    ['California Jan-Mar 2020', 1_350_000, 1_710_000, 230_000, '13', 66_000, '4'],
    ['Louisiana Jan-Mar 2020', 44_000, 48_000, 4_800, '10', 20_000, '42'],
    ['Missouri Jan-Mar 2020', 8_500, 8_500, 5_500, '65', 0, '-'],
    ['Maine Apr-Jun 2020', 1_600, 22_000, 700, '3', 110, '1'],
    ['North Dakota Apr-Jun 2020', 67_000, 415_000, 20_000, '5', 38_000, '9'],
    ['Mississippi Jul-Sep 2020', 26_000, 29_000, 1_600, '6', 130, '(Z)'],
  ])('%s', (_, firstDay, maximum, lost, percentLost, renovated, percentRenovated) => {
    expect(nassPercent(lost, { firstDay, maximum }).text).toBe(percentLost);
    expect(nassPercent(renovated, { firstDay, maximum }).text).toBe(percentRenovated);
  });

  test('Louisiana renovated on the first-day count would print 45, not 42', () => {
    expect(nassPercent(20_000, { firstDay: 44_000, maximum: null }).value).toBe(45);
  });
});

// Signs of the same tables: "-" zero, (Z) less than half the unit, (X) not applicable.
test('signs stand for no value', () => {
  expect(nassPercent(0, { firstDay: 100, maximum: null })).toEqual({ value: null, text: '-' });
  expect(nassPercent(4, { firstDay: 1000, maximum: null })).toEqual({ value: null, text: '(Z)' });
  expect(nassPercent(5, { firstDay: 1000, maximum: null })).toEqual({ value: 1, text: '1' });
  expect(nassPercent(0, { firstDay: 0, maximum: null })).toEqual({ value: null, text: '(X)' });
  expect(() => nassPercent(-1, { firstDay: 10, maximum: null })).toThrow(RangeError);
});
