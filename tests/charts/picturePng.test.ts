import { expect, test } from 'vitest';
import { pictureScale } from '../../renderer/charts/picturePng.ts';

test('three dots a pixel where that fits, fewer for a long picture, none for one that no canvas holds', () => {
  expect(pictureScale(1200, 3000)).toBe(3);
  // 300 lanes of 28 pixels.
  expect(pictureScale(1200, 8400)).toBe(3);
  const long = pictureScale(1200, 28_000) ?? 0;
  expect(long).toBeGreaterThanOrEqual(1);
  expect(28_000 * long).toBeLessThanOrEqual(32_000);
  expect(pictureScale(1200, 280_000)).toBeNull();
});
