import { describe, expect, test } from 'vitest';
import { SeededRandom } from '#core/demo/seededRandom.ts';

const draws = (seed: number, count: number) => {
  const random = new SeededRandom(seed);
  return Array.from({ length: count }, () => random.next());
};

describe('the seeded source of chance', () => {
  test('repeats itself for a seed and differs between neighbouring seeds', () => {
    expect(draws(42, 50)).toEqual(draws(42, 50));
    expect(draws(42, 5)).not.toEqual(draws(43, 5));
    expect(Math.abs((draws(1, 1)[0] ?? 0) - (draws(2, 1)[0] ?? 0))).toBeGreaterThan(1e-6);
  });

  test('spreads evenly: ten bins of 100,000 draws within four standard errors', () => {
    const bins = Array.from({ length: 10 }, () => 0);
    for (const draw of draws(7, 100_000)) {
      expect(draw >= 0 && draw < 1).toBe(true);
      bins[Math.floor(draw * 10)] = (bins[Math.floor(draw * 10)] ?? 0) + 1;
    }
    for (const bin of bins) expect(Math.abs(bin - 10_000)).toBeLessThan(4 * Math.sqrt(100_000 * 0.1 * 0.9));
  });

  test('draws whole numbers from both ends, normals with their mean and spread, binomials with theirs', () => {
    const random = new SeededRandom(3);
    const whole = Array.from({ length: 2000 }, () => random.whole(2, 5));
    expect(new Set(whole)).toEqual(new Set([2, 3, 4, 5]));
    const normal = Array.from({ length: 20_000 }, () => random.normal(10, 2));
    const mean = normal.reduce((sum, value) => sum + value, 0) / normal.length;
    expect(mean).toBeCloseTo(10, 1);
    expect(Math.sqrt(normal.reduce((sum, value) => sum + (value - mean) ** 2, 0) / normal.length)).toBeCloseTo(2, 1);
    const wins = Array.from({ length: 2000 }, () => random.binomial(300, 0.03));
    expect(wins.reduce((sum, value) => sum + value, 0) / wins.length).toBeCloseTo(9, 0);
  });

  test('shuffles without losing any, and says so when there is nothing to pick', () => {
    const random = new SeededRandom(11);
    const mixed = random.shuffled([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(mixed.toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(mixed).not.toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(() => random.pick([])).toThrow(RangeError);
  });
});
