import { expect, test } from 'vitest';
import { addingCaution, liftingCaution, liftingIndex, offTheHive, recommendedWeight } from '#core/stores/lifting.ts';

const best = { horizontal: 10, vertical: 30, distance: 10, angle: 0, frequency: 1, coupling: 1 };

// Waters et al. 1994, NIOSH 94-110 (rev. 2021), as given by ccohs.ca/oshanswers/ergonomics/niosh (read): 51 lb, HM = 10/H, VM = 1 - 0.0075 |V - 30|,
// DM = 0.82 + 1.8/D in inches; the index of a load is the load over the limit (read). The weights of boxes are from general articles, read-weak.
test('16 inches out, 30 high, 20 inches of way: 29.0 lb; a deep of 85 lb is 2.93 times that, a medium of 55 lb 1.90', () => {
  const limit = recommendedWeight(offTheHive);
  expect(offTheHive).toEqual({ ...best, horizontal: 16, distance: 20 });
  expect(limit).toBeCloseTo(29.0, 1);
  expect(liftingIndex(85, limit)).toBeCloseTo(2.93, 2);
  expect(liftingIndex(55, limit)).toBeCloseTo(1.9, 2);
});
test('at best the load constant, 51 lb; a shorter way or reach gives no more', () => {
  expect(recommendedWeight(best)).toBe(51);
  expect(recommendedWeight({ ...best, horizontal: 5, distance: 4 })).toBe(51);
});
// AM = 1 - 0.0032 A, from memory.
test('height and twist take off', () => {
  expect(recommendedWeight({ ...best, vertical: 50 })).toBeCloseTo(51 * 0.85, 9);
  expect(recommendedWeight({ ...best, vertical: 10 })).toBeCloseTo(51 * 0.85, 9);
  expect(recommendedWeight({ ...best, angle: 45 })).toBeCloseTo(51 * 0.856, 9);
});
test('the cautions say what the equation says', () => {
  for (const caution of [liftingCaution(), addingCaution()]) expect(caution).toContain('no more than 29 lb: they are 1.9 and 2.9 times that');
});
