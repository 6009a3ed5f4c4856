import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clopperPearsonInterval } from '#core/stats/clopperPearsonInterval.ts';
import { incompleteBeta } from '#core/stats/incompleteBeta.ts';
import type { Interval } from '#core/stats/interval.ts';
import { proportion } from '#core/stats/proportion.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';

const counts = fc.integer({ min: 1, max: 5000 }).chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));

function limits(interval: Interval | null): Interval {
  if (interval === null) throw new Error('an interval was expected');
  return interval;
}

describe.each([
  ['Wilson', wilsonInterval],
  ['Clopper-Pearson', clopperPearsonInterval],
])('%s interval', (_, intervalOf) => {
  test('holds the rate and stays within 0 and 1', () => {
    fc.assert(
      fc.property(counts, ([count, of]) => {
        const { lower, upper } = limits(intervalOf(count, of));
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(upper).toBeLessThanOrEqual(1);
        expect(lower).toBeLessThanOrEqual(count / of);
        expect(upper).toBeGreaterThanOrEqual(count / of);
        expect(upper).toBeGreaterThan(lower);
      }),
    );
  });

  test('mirrors when lost and alive change places', () => {
    fc.assert(
      fc.property(counts, ([count, of]) => {
        const lost = limits(intervalOf(count, of));
        const alive = limits(intervalOf(of - count, of));
        expect(lost.lower).toBeCloseTo(1 - alive.upper, 10);
        expect(lost.upper).toBeCloseTo(1 - alive.lower, 10);
      }),
    );
  });

  test('narrows when the same rate comes from more colonies', () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 2, max: 10 }), ([count, of], times) => {
        const few = limits(intervalOf(count, of));
        const many = limits(intervalOf(count * times, of * times));
        expect(many.upper - many.lower).toBeLessThan(few.upper - few.lower);
      }),
    );
  });

  test('nothing lost starts at exactly 0, everything lost ends at exactly 1, nothing at risk has no interval', () => {
    expect(limits(intervalOf(0, 7)).lower).toBe(0);
    expect(limits(intervalOf(7, 7)).upper).toBe(1);
    expect(limits(intervalOf(0, 1)).upper).toBeLessThan(1);
    expect(limits(intervalOf(1, 1)).lower).toBeGreaterThan(0);
    expect(intervalOf(0, 0)).toBeNull();
  });

  test.each([
    [3, 2],
    [-1, 4],
    [1.5, 4],
    [Number.NaN, 4],
    [1, Infinity],
  ])('refuses %d of %d', (count, of) => {
    expect(() => intervalOf(count, of)).toThrow(RangeError);
  });
});

test('Clopper-Pearson limits leave 2.5 % of the binomial distribution on each side', () => {
  fc.assert(
    fc.property(counts, ([count, of]) => {
      const { lower, upper } = limits(clopperPearsonInterval(count, of));
      // P(X >= count) at the lower limit and P(X <= count) at the upper one.
      if (count > 0) expect(incompleteBeta(lower, count, of - count + 1)).toBeCloseTo(0.025, 9);
      if (count < of) expect(1 - incompleteBeta(upper, count + 1, of - count)).toBeCloseTo(0.025, 9);
    }),
  );
});

test('Wilson limits are the rates from which the observed one lies just z standard errors away', () => {
  fc.assert(
    fc.property(counts, ([count, of]) => {
      fc.pre(count > 0 && count < of);
      const { lower, upper } = limits(wilsonInterval(count, of));
      for (const limit of [lower, upper]) {
        const distance = Math.abs(count / of - limit) / Math.sqrt((limit * (1 - limit)) / of);
        expect(distance).toBeCloseTo(1.959963984540054, 6);
      }
    }),
  );
});

test('a proportion of nothing is unknown, not 0', () => {
  expect(proportion(0, 0)).toEqual({ count: 0, of: 0, rate: null, wilson: null, clopperPearson: null });
});
