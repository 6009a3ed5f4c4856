import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cropPerColony } from '#core/honey/cropPerColony.ts';
import { honeyDensity, honeyMass, honeyVolume, poundsPerGallon } from '#core/honey/honeyDensity.ts';
import { indexOfWater, waterFromReading, waterOfIndex } from '#core/honey/moisture.ts';
import { blendTo, drying, massAtStandard, massAtWater, waterOfBlend } from '#core/honey/waterBalance.ts';
import type { Grams } from '#shared/brands.ts';

const mass = fc.double({ min: 1, max: 1e6, noNaN: true }).map((grams) => grams as Grams);
const percent = fc.double({ min: 13, max: 25, noNaN: true });

test('index and water undo each other, and a warmer reading of the same index is drier honey', () => {
  fc.assert(fc.property(percent, (water) => void expect(waterOfIndex(indexOfWater(water))).toBeCloseTo(water, 9)));
  const at = (celsius: number) => waterFromReading(1.49, celsius);
  const [cold, warm] = [at(15), at(25)];
  if (!cold.ok || !warm.ok) throw new Error('refused');
  expect(warm.value).toBeLessThan(cold.value);
});

test('what cannot be a reading of honey is refused, and the sentence says what would mend it', () => {
  for (const [reading, celsius, field] of [[18.6, 20, 'reading'], [1.333, 20, 'reading'], [Number.NaN, 20, 'reading'], [1.6, 20, 'reading'], [1.49, 70, 'celsius'], [1.49, Number.NaN, 'celsius']] as const) {
    const answer = waterFromReading(reading, celsius);
    expect(answer).toMatchObject({ ok: false, field });
    expect(answer.ok ? '' : answer.mend).toMatch(/\.$/);
  }
  // The first and the last row of the table count.
  expect([waterFromReading(1.5044, 20).ok, waterFromReading(1.4741, 20).ok, waterFromReading(1.4736, 20).ok]).toEqual([true, true, false]);
});

test('drying and weighing at another water leave what is not water as it is', () => {
  fc.assert(
    fc.property(mass, percent, percent, (grams, from, to) => {
      const other = massAtWater({ mass: grams, water: from }, to);
      expect((other * (100 - to)) / (grams * (100 - from))).toBeCloseTo(1, 9);
      const answer = drying({ mass: grams, water: from }, to);
      expect(answer.ok).toBe(to < from);
      if (answer.ok) expect(answer.value.left + answer.value.removed).toBeCloseTo(grams, 6);
    }),
  );
});

test('a crop weighed wet counts for less at the standard water, which is the house rule’s', () => {
  const lot = { mass: 1000 as Grams, water: 20 };
  expect(massAtStandard(lot, new Map())).toBeCloseTo(963.855, 3);
  expect(massAtStandard(lot, new Map([['honey.water.standard', 20]]))).toBeCloseTo(1000, 9);
});

test('a blend has the water that was aimed at, whatever the lots', () => {
  fc.assert(
    fc.property(mass, fc.tuple(percent, percent, percent), (grams, waters) => {
      const [dry, target, wet] = waters.toSorted((a, b) => a - b) as [number, number, number];
      fc.pre(target - dry > 1e-3 && wet - target > 1e-3);
      const lot = { mass: grams, water: wet };
      const answer = blendTo(lot, dry, target);
      if (!answer.ok) throw new Error(answer.sentence);
      expect(waterOfBlend([lot, { mass: answer.value.dry, water: dry }])).toBeCloseTo(target, 6);
    }),
  );
  expect(blendTo({ mass: 1000 as Grams, water: 17.819976443 }, 17.40004719, 17)).toMatchObject({ sentence: 'No blend of 17.4 % and 17.82 % has 17 % water.', mend: 'Name a target between 17.4 and 17.82 %.' });
  expect(blendTo({ mass: 1000 as Grams, water: 17 }, 18, 17.5)).toMatchObject({ ok: false, field: 'dryWater' });
  expect(waterOfBlend([])).toBeNull();
});

test('wetter honey is lighter; outside the table there is no density', () => {
  for (let water = 13; water < 20.95; water += 0.05) expect(honeyDensity(water + 0.05)!).toBeLessThan(honeyDensity(water)!);
  for (const water of [12.9, 21.1, Number.NaN]) expect([honeyDensity(water), poundsPerGallon(water), honeyMass(1000 as never, water), honeyVolume(1000 as Grams, water)]).toEqual([null, null, null, null]);
  expect(honeyVolume(honeyMass(5000 as never, 18.3)!, 18.3)).toBeCloseTo(5000, 6);
});

test('no colony harvested is no crop of 0', () => {
  expect(cropPerColony(0, 0)).toBeNull();
  expect(cropPerColony(0, 3)).toBe(0);
  expect(() => cropPerColony(10, -1)).toThrow(RangeError);
});
