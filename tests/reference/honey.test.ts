import { describe, expect, test } from 'vitest';
import { cropPerColony } from '#core/honey/cropPerColony.ts';
import { honeyDensity, honeyMass, honeyVolume, poundsPerGallon } from '#core/honey/honeyDensity.ts';
import { indexAt20, indexOfWater, waterFromReading, waterOfIndex } from '#core/honey/moisture.ts';
import { blendTo, waterOfBlend } from '#core/honey/waterBalance.ts';
import { gradeByWater, judgeWater } from '#core/honey/waterLimits.ts';
import { gramsFrom, massIn, millilitresFrom, volumeIn } from '#shared/units.ts';
import { nassHoney } from '#core/honey/yields/nassHoney.ts';
import { printedIndices } from './data/honeyIndices.ts';

const water = (reading: number, celsius: number) => {
  const answer = waterFromReading(reading, celsius);
  return answer.ok ? answer.value : null;
};
const pounds = (amount: number) => gramsFrom(amount, 'lb');

describe('refractive index and water', () => {
  // Equation of Wedmore 1955 on Chataway's data (from memory) against the printed table.
  test.each(printedIndices)('%f %% water is an index of %f (%s)', (percent, index) => {
    expect(Math.abs(indexOfWater(percent) - index)).toBeLessThan(0.0001);
    expect(Math.abs(waterOfIndex(index) - percent)).toBeLessThan(0.05);
  });
  test('61 rows, 36 of them read', () => {
    expect(printedIndices).toHaveLength(61);
    expect(printedIndices.filter(([, , confidence]) => confidence === 'read')).toHaveLength(36);
  });
  // 1.4900 is the limit of the US grades A and B; arithmetic on the equation.
  test.each([[1.4915, 18.0], [1.49, 18.59], [1.4865, 19.98]])('%f at 20 degrees is %f %%', (reading, percent) => expect(water(reading, 20)).toBeCloseTo(percent, 2));
  // Worked example of 123foodscience.com (read): 1.4820 at 32 degrees is 1.48476; it takes the next row of the table and prints 20.8.
  test('1.4820 at 32 degrees', () => {
    expect(indexAt20(1.482, 32)).toBeCloseTo(1.48476, 8);
    expect(water(1.482, 32)).toBeCloseTo(20.67, 2);
    expect(Math.abs(water(1.482, 32)! - 20.8)).toBeLessThan(0.15);
  });
  // 0.00023 for each degree (chemsecret.org, read); arithmetic.
  test.each([[1.495, 25, 16.18], [1.49, 15, 19.05]])('%f at %i degrees is %f %%', (reading, celsius, percent) => expect(water(reading, celsius)).toBeCloseTo(percent, 2));
});

describe('density', () => {
  // White 1975 in Krell 1996, FAO Bulletin 124 (from memory); products with 0.99821 and 8.3454 (arithmetic).
  test.each([
    [13, 1.4431, 12.04], [14, 1.4378, 12.0], [15, 1.4324, 11.95], [16, 1.4269, 11.91], [17, 1.4212, 11.86],
    [18, 1.4146, 11.81], [19, 1.4076, 11.75], [20, 1.4002, 11.69], [21, 1.3925, 11.62],
  ])('at %i %% water %f kg in a litre, %f lb in a gallon', (percent, kilograms, weight) => {
    expect(Math.abs(honeyDensity(percent)! - kilograms)).toBeLessThan(0.00006);
    expect(Math.abs(poundsPerGallon(percent)! - weight)).toBeLessThan(0.006);
  });
  // An article on the density of honey gives 11.6343 to 12.0571 lb in a US gallon as its range (proquest.com, density of honey, read).
  test('the table lies within the published range of densities', () => {
    for (const percent of [14, 15, 16, 17, 18, 19, 20]) {
      expect(poundsPerGallon(percent)!).toBeGreaterThan(11.6343);
      expect(poundsPerGallon(percent)!).toBeLessThan(12.0571);
    }
  });
  // Arithmetic on the table; the working rule of 12 lb a gallon would say 60 lb for the first.
  test('5 gallons at 18 % and 100 lb at 17 %', () => {
    expect(massIn(honeyMass(millilitresFrom(5, 'gal'), 18)!, 'lb')).toBeCloseTo(59.0, 1);
    expect(volumeIn(honeyVolume(pounds(100), 17)!, 'gal')).toBeCloseTo(8.43, 2);
  });
});

// Pearson square, a standard of blending (arithmetic).
test('120 lb at 20 % with honey of 17 % to reach 18 %: 240 lb of it, 360 lb in all', () => {
  const wet = { mass: pounds(120), water: 20 };
  const answer = blendTo(wet, 17, 18);
  if (!answer.ok) throw new Error(answer.sentence);
  expect(massIn(answer.value.dry, 'lb')).toBeCloseTo(240, 6);
  expect(massIn(answer.value.blend, 'lb')).toBeCloseTo(360, 6);
  expect(waterOfBlend([wet, { mass: answer.value.dry, water: 17 }])).toBeCloseTo(18, 10);
  for (const target of [17, 16.9, 20, 20.1, Number.NaN]) expect(blendTo(wet, 17, target)).toMatchObject({ ok: false, field: 'target' });
});

// Directive 2001/110/EC, Annex II, and USDA grades of 1985 (read); Codex CXS 12-1981 (from memory); Food Standards Code (read-weak).
test('limits of water by place', () => {
  const none = new Map<string, number | string>();
  expect([judgeWater(20, 'eu', none).within, judgeWater(20.1, 'eu', none).within, judgeWater(23, 'euHeather', none).within, judgeWater(24, 'euBaker', none).within, judgeWater(24, 'euBakerHeather', none).within]).toEqual([true, false, true, false, true]);
  expect([18.6, 18.7, 20, 20.1].map((percent) => gradeByWater(percent, none))).toEqual(['A or B', 'C', 'C', 'substandard']);
  expect([judgeWater(20.5, 'codex', none).within, judgeWater(20.5, 'anz', none).within]).toEqual([false, true]);
  expect([judgeWater(17, 'eu', none).keeps, judgeWater(17.1, 'eu', none).keeps]).toEqual([true, false]);
  expect(judgeWater(18, 'eu', new Map([['honey.water.eu', 17.5]]))).toMatchObject({ limit: 17.5, within: false });
});

// USDA NASS, Honey: crop, colonies that made honey, and lb a colony as printed (bakingbusiness.com/articles/29858, 50622 and 58699;
// the printed figures for 2011 and 2024 are rounded too far to be held against each other). Read.
test.each([
  [2014, 178_270, 2740, 65.1], [2015, 156_544, 2660, 58.9], [2018, 154_008, 2828, 54.5],
  [2019, 156_922, 2812, 55.8], [2021, 126_744, 2697, 47.0], [2022, 125_331, 2667, 47.0],
])('crop of a colony in %i', (_, thousandPounds, thousandColonies, printed) => {
  expect(Math.abs(cropPerColony(thousandPounds * 1000, thousandColonies * 1000)! - printed) / printed).toBeLessThan(0.001);
});

describe('honey of the United States as USDA NASS printed it', () => {
  // Colonies times pounds a colony is the production; 0.1 % where it was printed to the thousand, half a million pounds where the page rounds.
  test.each(nassHoney.filter(({ production }) => production !== null))('$year: colonies times pounds a colony', ({ colonies, perColony, production, rounded }) => {
    const apart = Math.abs(colonies * perColony - (production ?? NaN));
    expect(apart).toBeLessThanOrEqual(rounded ? 500 : 0.001 * (production ?? 0));
  });
  // The production of 2011 stood on no page that was read: 2,491 thousand colonies and 59.6 lb are 148.46 million lb (arithmetic).
  test('2011 by arithmetic', () => {
    const found = nassHoney.find(({ year }) => year === 2011);
    expect(Math.abs((found?.colonies ?? NaN) * (found?.perColony ?? NaN) - 148_400)).toBeLessThan(0.001 * 148_400);
  });
  // Operations with fewer than 5 colonies, 2015: 23 thousand colonies, 31.3 lb a colony, 720 thousand lb (kipdf.com, reprint of
  // NASS, 22 March 2016; read). The colonies are printed to the thousand, so by 2 %.
  test('small operations of 2015, by the book’s own crop of a colony', () => {
    expect(Math.abs(cropPerColony(720_000, 23_000)! - 31.3) / 31.3).toBeLessThan(0.02);
  });
  test('ten years, each once, each with where it was read', () => {
    expect(new Set(nassHoney.map(({ year }) => year)).size).toBe(10);
    expect(nassHoney.every(({ source }) => source.startsWith('USDA NASS'))).toBe(true);
  });
});
