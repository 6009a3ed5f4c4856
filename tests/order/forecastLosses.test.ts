import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cheapestPurchase,
  coloniesToBuy,
  forecastLosses,
  hivesNeeded,
  lossQuantile,
  purchase,
  splitsToMake,
  survivorRange,
} from '#core/order/forecastLosses.ts';
import { betaPriorFromExpectedRate } from '#core/stats/betaPriorByMoments.ts';

const forecast = fc
  .record({
    rate: fc.double({ min: 0.02, max: 0.9, noNaN: true }),
    concentration: fc.double({ min: 1, max: 300, noNaN: true }),
    wintering: fc.integer({ min: 0, max: 150 }),
  })
  .map(({ rate, concentration, wintering }) => forecastLosses(betaPriorFromExpectedRate(rate, concentration), wintering));
const target = fc.integer({ min: 0, max: 180 });
const confidence = fc.double({ min: 0.05, max: 0.99, noNaN: true });

describe('coloniesToBuy', () => {
  test('is the smallest purchase that keeps the probability of a shortfall down', () => {
    fc.assert(
      fc.property(forecast, target, confidence, (next, aim, sure) => {
        const buy = coloniesToBuy(next, aim, sure);
        expect(buy.probabilityShort).toBeLessThanOrEqual(1 - sure + 1e-11);
        if (buy.colonies > 0) expect(purchase(next, aim, buy.colonies - 1).probabilityShort).toBeGreaterThan(1 - sure);
      }),
    );
  });

  test('never falls when the target or the confidence rises', () => {
    fc.assert(
      fc.property(forecast, target, confidence, (next, aim, sure) => {
        const { colonies } = coloniesToBuy(next, aim, sure);
        expect(coloniesToBuy(next, aim + 1, sure).colonies).toBeGreaterThanOrEqual(colonies);
        expect(coloniesToBuy(next, aim, (1 + sure) / 2).colonies).toBeGreaterThanOrEqual(colonies);
      }),
    );
  });

  test('what is short less what is left is the target less the expected colonies', () => {
    fc.assert(
      fc.property(forecast, target, fc.integer({ min: 0, max: 60 }), (next, aim, bought) => {
        const { expectedShort, expectedLeft, probabilityShort } = purchase(next, aim, bought);
        expect(expectedShort - expectedLeft).toBeCloseTo(aim - (next.wintering - next.losses.mean + bought), 7);
        expect(probabilityShort).toBeGreaterThanOrEqual(0);
        expect(probabilityShort).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('with no colony left the whole target is bought; a target of 0 needs none', () => {
    const none = forecastLosses(betaPriorFromExpectedRate(0.3), 0);
    expect(coloniesToBuy(none, 12, 0.9)).toEqual({ colonies: 12, probabilityShort: 0, expectedShort: 0, expectedLeft: 0 });
    expect(coloniesToBuy(forecastLosses(betaPriorFromExpectedRate(0.3), 20), 0, 0.99).colonies).toBe(0);
  });

  test('refuses a broken target or confidence', () => {
    const next = forecastLosses(betaPriorFromExpectedRate(0.3), 20);
    expect(() => coloniesToBuy(next, 2.5, 0.9)).toThrow(RangeError);
    expect(() => coloniesToBuy(next, -1, 0.9)).toThrow(RangeError);
    for (const sure of [0, 1, Number.NaN]) expect(() => coloniesToBuy(next, 20, sure)).toThrow(RangeError);
  });
});

test('the cheapest purchase costs no more than one colony fewer or more', () => {
  const cost = fc.double({ min: 1, max: 500, noNaN: true });
  fc.assert(
    fc.property(forecast, target, cost, cost, (next, aim, under, over) => {
      const best = cheapestPurchase(next, aim, under, over);
      const costOf = (colonies: number): number => {
        const { expectedShort, expectedLeft } = purchase(next, aim, colonies);
        return under * expectedShort + over * expectedLeft;
      };
      expect(best.expectedCost).toBeCloseTo(costOf(best.colonies), 7);
      for (const other of [best.colonies - 1, best.colonies + 1]) {
        if (other >= 0) expect(best.expectedCost).toBeLessThanOrEqual(costOf(other) + 1e-7);
      }
    }),
  );
  expect(() => cheapestPurchase(forecastLosses(betaPriorFromExpectedRate(0.3), 20), 20, 0, 1)).toThrow(RangeError);
});

describe('survivorRange', () => {
  test('holds at least its share, and its mean lies within the colonies wintered', () => {
    fc.assert(
      fc.property(forecast, fc.double({ min: 0.1, max: 0.98, noNaN: true }), (next, share) => {
        const { low, high, mean } = survivorRange(next, share);
        const { pmf } = next.losses;
        const held = pmf.reduce((sum, p, lost) => (next.wintering - lost >= low && next.wintering - lost <= high ? sum + p : sum), 0);
        expect(held).toBeGreaterThanOrEqual(share - 1e-11);
        expect(low).toBeLessThanOrEqual(high);
        expect(mean).toBeGreaterThanOrEqual(0);
        expect(mean).toBeLessThanOrEqual(next.wintering);
      }),
    );
  });

  test('hives are held ready for the colonies that may well live and for those to come', () => {
    const next = forecastLosses(betaPriorFromExpectedRate(0.25, 20), 40);
    expect(hivesNeeded(next, 0)).toBe(40);
    expect(hivesNeeded(next, 30)).toBe(70 - lossQuantile(next, 0.1));
  });
});

describe('splitsToMake', () => {
  const takeRate = fc.double({ min: 0.3, max: 1, noNaN: true });

  test('splits that always take equal a purchase; splits that may fail need at least as many', () => {
    fc.assert(
      fc.property(forecast, target, confidence, takeRate, (next, aim, sure, rate) => {
        const bought = coloniesToBuy(next, aim, sure);
        const certain = splitsToMake(next, aim, sure, 1);
        expect(certain.splits).toBe(bought.colonies);
        expect(certain.probabilityShort).toBeCloseTo(bought.probabilityShort, 10);
        const unsure = splitsToMake(next, aim, sure, rate);
        expect(unsure.splits).toBeGreaterThanOrEqual(bought.colonies);
        expect(unsure.probabilityShort).toBeLessThanOrEqual(1 - sure + 1e-11);
      }),
    );
  });

  test('a cap on splits per colony never helps, and says so when it stands in the way', () => {
    fc.assert(
      fc.property(forecast, target, confidence, takeRate, (next, aim, sure, rate) => {
        const free = splitsToMake(next, aim, sure, rate);
        const capped = splitsToMake(next, aim, sure, rate, 1);
        if (capped.splits === null) expect(capped.probabilityShort).toBeGreaterThan(1 - sure);
        else expect(capped.splits).toBeGreaterThanOrEqual(free.splits as number);
      }),
    );
    const few = forecastLosses(betaPriorFromExpectedRate(0.3), 5);
    const hopeless = splitsToMake(few, 40, 0.9, 0.8, 1);
    expect(hopeless.splits).toBeNull();
    expect(hopeless.probabilityShort).toBeCloseTo(1, 12);
  });

  test('splits that never take are no plan', () => {
    const next = forecastLosses(betaPriorFromExpectedRate(0.3), 20);
    expect(splitsToMake(next, 20, 0.9, 0).splits).toBeNull();
    expect(splitsToMake(next, 0, 0.9, 0)).toEqual({ splits: 0, probabilityShort: 0 });
    expect(() => splitsToMake(next, 20, 0.9, 1.2)).toThrow(RangeError);
    expect(() => splitsToMake(next, 20, 0.9, 0.8, -1)).toThrow(RangeError);
  });
});
