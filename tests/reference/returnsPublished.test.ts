import { expect, test } from 'vitest';
import { cropPerColony } from '#core/honey/cropPerColony.ts';
import { perUnit } from '#core/returns/returnsTable.ts';

/*
 * USDA NASS, Honey (all read): 2014 and 2015 bakingbusiness.com/articles/29858; 2018 and 2019 bakingbusiness.com/articles/50622; 2021 and
 * 2022 bakingbusiness.com/articles/58699. Thousand colonies, pounds a colony, thousand pounds.
 */
const published = [
  [2014, 2740, 65.1, 178_270],
  [2015, 2660, 58.9, 156_544],
  [2018, 2828, 54.5, 154_008],
  [2019, 2812, 55.8, 156_922],
  [2021, 2697, 47.0, 126_744],
  [2022, 2667, 47.0, 125_331],
] as const;

test('production over colonies is the published yield', () => {
  for (const [year, colonies, crop, production] of published) {
    // Both are printed rounded, the colonies to a thousand: a tenth of a per cent.
    expect(Math.abs((perUnit(production, colonies) ?? 0) / crop - 1), String(year)).toBeLessThan(0.001);
    expect(cropPerColony(production, colonies)).toBe(perUnit(production, colonies));
  }
});

// Price a pound: 2.65 (2021, revised) and 2.96 (2022), bakingbusiness.com/articles/58699 (read). Value: 371 million for 2022 (from memory); production times price.
test('value over production is the published price', () => {
  const [production, price] = [125_331_000, 2.96];
  expect(production * price).toBeCloseTo(370_979_760, 0);
  expect(perUnit(371_000_000, production)).toBeCloseTo(price, 2);
  expect(perUnit(126_744_000 * 2.65, 126_744_000)).toBeCloseTo(2.65, 12);
});
