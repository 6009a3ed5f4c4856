import { describe, expect, test } from 'vitest';
import { storesInCombs, storesInHive } from '#core/stores/storesNow.ts';
import { combsFor, storesVerdict, winterTarget } from '#core/stores/storesVerdict.ts';
import { storesAtMost, syrupFor, syrupOfSugar, syrupOfVolume } from '#core/stores/syrup.ts';
import { gramsFrom, massIn, millilitresFrom, volumeIn } from '#shared/units.ts';

const none = new Map<string, number | string>();
const lb = (amount: number) => gramsFrom(amount, 'lb');
const gallon = millilitresFrom(1, 'gal');

// Moeller 1977, USDA-ARS Production Research Report 169: 90 lb in October in the north (read); a survey of dozens of sources gives
// about 40 in the south and 60 in the middle (honeybeesuite.com, read).
test('targets by place', () => expect((['south', 'middle', 'north'] as const).map((place) => massIn(winterTarget(place, none), 'lb'))).toEqual([40, 60, 90]));

// 6 to 8 lb in a deep comb (biologyinsights.com, read-weak), about 7 lb from a gallon of 2:1 (from memory), 7.38 lb sugar in it (arithmetic).
test('8 deep combs in the north: 34 lb short, 5 gallons of heavy syrup, 36.9 lb sugar', () => {
  const found = storesInCombs({ deep: 8, medium: 0, shallow: 0 }, none);
  expect(massIn(found, 'lb')).toBe(56);
  const verdict = storesVerdict(found, 'north', none);
  expect([verdict.say, massIn(verdict.amount, 'lb')]).toEqual(['feed', 34]);
  const feed = syrupFor(verdict.amount, 'heavy', 'gal', none);
  expect(volumeIn(feed.exact, 'gal')).toBeCloseTo(4.857, 3);
  expect(volumeIn(feed.volume, 'gal')).toBe(5);
  expect(massIn(feed.sugar, 'lb')).toBeCloseTo(36.9, 1);
});

// Arithmetic on the figures of combs.
test('targets in combs: 60 lb at 6, 90 lb at 7, 40 lb at 4', () => {
  expect(combsFor(lb(60), 'deep', new Map([['stores.frame.deep', 6]]))).toBeCloseTo(10, 9);
  expect(combsFor(lb(90), 'deep', none)).toBeCloseTo(12.86, 2);
  expect(combsFor(lb(40), 'medium', none)).toBeCloseTo(10, 9);
});

// Densities of sucrose solutions at 20 degrees, 1.2296 at 50 % and 1.327 kg/L at 66.7 % (standard tables, from memory); the rest arithmetic.
describe('a gallon of syrup', () => {
  test.each([['light', 10.26, 5.13, 6.26], ['heavy', 11.07, 7.38, 9.0]] as const)('%s: %f lb, %f lb sugar, at most %f lb stores', (mix, mass, sugar, stores) => {
    const syrup = syrupOfVolume(gallon, mix);
    expect(massIn(syrup.mass, 'lb')).toBeCloseTo(mass, 2);
    expect(massIn(syrup.sugar, 'lb')).toBeCloseTo(sugar, 2);
    expect(massIn(storesAtMost(gallon, mix), 'lb')).toBeCloseTo(stores, 2);
  });
  // With a fifth of the sugar spent on handling 5.0 and 7.2 lb are left: what the rule of 7 lb says (arithmetic).
  test('the pounds from a gallon are what is left after handling', () => {
    expect(massIn(storesAtMost(gallon, 'light'), 'lb') * 0.8).toBeCloseTo(5.0, 1);
    expect(massIn(storesAtMost(gallon, 'heavy'), 'lb') * 0.8).toBeCloseTo(7.2, 1);
  });
  // About 10 lb a gallon of 1:1 (cowetabeekeepers.org, read).
  test('1:1 weighs about 10 lb', () => expect(Math.round(massIn(syrupOfVolume(gallon, 'light').mass, 'lb'))).toBe(10));
});

// Two parts white sugar to one of water by weight (Moeller 1977, read); the volume is arithmetic.
test('25 lb sugar and 12.5 lb water make 3.39 gallons', () => {
  const syrup = syrupOfSugar(lb(25), 'heavy');
  expect(massIn(syrup.water, 'lb')).toBeCloseTo(12.5, 6);
  expect(massIn(syrup.mass, 'lb')).toBeCloseTo(37.5, 6);
  expect(volumeIn(syrup.volume, 'gal')).toBeCloseTo(3.39, 2);
});
// A newsletter mixes 50 lb sugar with 3 gal water and says about 6 gal (k4vb.com, read-weak); its own weights give 6.8 (arithmetic).
test('50 lb sugar in 3 gallons of water is nearly 2:1 and makes near 6.8 gallons', () => expect(volumeIn(syrupOfSugar(lb(50), 'heavy').volume, 'gal')).toBeCloseTo(6.8, 1));

// Arithmetic; the empty weight is what was weighed, not a fact of the trade.
test('a hive of 135 lb with 65 lb of empty parts holds 60 lb', () => {
  const answer = storesInHive(lb(135), lb(65), none);
  expect(answer.ok && massIn(answer.value, 'lb')).toBe(60);
});
