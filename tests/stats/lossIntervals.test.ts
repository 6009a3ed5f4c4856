import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averageLoss } from '#core/stats/averageLoss.ts';
import { intervalAcrossUnits } from '#core/stats/intervalAcrossUnits.ts';
import { quasiBinomialInterval } from '#core/stats/quasiBinomialInterval.ts';

const unit = fc
  .integer({ min: 0, max: 200 })
  .chain((atRisk) => fc.record({ atRisk: fc.constant(atRisk), lost: fc.integer({ min: 0, max: atRisk }) }));
const units = fc.array(unit, { maxLength: 12 });
const rateOf = (list: readonly { atRisk: number; lost: number }[]): number =>
  list.reduce((sum, one) => sum + one.lost, 0) / list.reduce((sum, one) => sum + one.atRisk, 0);

describe('quasiBinomialInterval', () => {
  test('holds the total rate, t is wider than z, and a floor never narrows', () => {
    fc.assert(
      fc.property(units, (list) => {
        const quasi = quasiBinomialInterval(list);
        fc.pre(quasi.defined);
        const rate = rateOf(list);
        for (const interval of [quasi.ciT, quasi.ciZ, quasi.ciTDispersionFloor1, quasi.ciZDispersionFloor1]) {
          expect(interval.lower).toBeLessThanOrEqual(rate + 1e-12);
          expect(interval.upper).toBeGreaterThanOrEqual(rate - 1e-12);
          expect(interval.lower).toBeGreaterThanOrEqual(0);
          expect(interval.upper).toBeLessThanOrEqual(1);
        }
        expect(quasi.ciT.lower).toBeLessThanOrEqual(quasi.ciZ.lower);
        expect(quasi.ciTDispersionFloor1.upper).toBeGreaterThanOrEqual(quasi.ciT.upper);
        if (quasi.dispersion >= 1) expect(quasi.ciTDispersionFloor1).toEqual(quasi.ciT);
      }),
    );
  });

  test('neither the order of the yards nor a yard without colonies matters', () => {
    fc.assert(
      fc.property(units, (list) => {
        const some = quasiBinomialInterval(list);
        const other = quasiBinomialInterval([{ atRisk: 0, lost: 0 }, ...list.toReversed()]);
        if (!some.defined || !other.defined) {
          expect(other).toEqual(some);
          return;
        }
        expect(other.units).toBe(some.units);
        expect(other.ciT.lower).toBeCloseTo(some.ciT.lower, 12);
        expect(other.ciT.upper).toBeCloseTo(some.ciT.upper, 12);
      }),
    );
  });

  test('says why it is undefined', () => {
    expect(quasiBinomialInterval([])).toEqual({ defined: false, reason: 'dispersion needs at least 2 units' });
    expect(quasiBinomialInterval([{ atRisk: 9, lost: 3 }])).toEqual({
      defined: false,
      reason: 'dispersion needs at least 2 units',
    });
    const none = [{ atRisk: 9, lost: 0 }, { atRisk: 4, lost: 0 }];
    const all = [{ atRisk: 9, lost: 9 }, { atRisk: 4, lost: 4 }];
    for (const list of [none, all]) {
      expect(quasiBinomialInterval(list)).toEqual({ defined: false, reason: 'total loss is 0 or 1, logit not finite' });
    }
    expect(() => quasiBinomialInterval([{ atRisk: 3, lost: 4 }])).toThrow(RangeError);
  });
});

describe('intervalAcrossUnits', () => {
  test('chooses by the number of yards and by what was lost', () => {
    const yard = { atRisk: 10, lost: 3 };
    expect(intervalAcrossUnits([])).toEqual({ method: 'none', because: 'nothing at risk', interval: null });
    expect(intervalAcrossUnits([yard])).toMatchObject({ method: 'wilson', because: 'one unit' });
    expect(intervalAcrossUnits([yard, { atRisk: 0, lost: 0 }, yard])).toMatchObject({ method: 'wilson', because: 'two units' });
    expect(intervalAcrossUnits([yard, yard, yard])).toMatchObject({ method: 'quasi-binomial', because: 'units differ' });
    expect(intervalAcrossUnits([{ atRisk: 5, lost: 0 }, { atRisk: 6, lost: 0 }])).toMatchObject({
      method: 'clopper-pearson',
      because: 'none or all lost',
      interval: { lower: 0 },
    });
  });

  test('always holds the total rate', () => {
    fc.assert(
      fc.property(units, (list) => {
        const { interval } = intervalAcrossUnits(list);
        fc.pre(interval !== null);
        expect(interval.lower).toBeLessThanOrEqual(rateOf(list));
        expect(interval.upper).toBeGreaterThanOrEqual(rateOf(list));
      }),
    );
  });

  test('yards that differ by more than chance give a wider interval than yards that do not', () => {
    const width = (list: readonly { atRisk: number; lost: number }[]): number => {
      const { interval } = intervalAcrossUnits(list);
      return interval === null ? Number.NaN : interval.upper - interval.lower;
    };
    const alike = [5, 5, 5, 5].map((lost) => ({ atRisk: 20, lost }));
    const apart = [0, 1, 9, 10].map((lost) => ({ atRisk: 20, lost }));
    expect(width(apart)).toBeGreaterThan(width(alike));
  });
});

describe('averageLoss', () => {
  test('lies between the smallest and the largest rate, as does the median', () => {
    fc.assert(
      fc.property(units, (list) => {
        const { mean, median, smallest, largest, ciT } = averageLoss(list);
        fc.pre(mean !== null && median !== null && smallest !== null && largest !== null);
        for (const middle of [mean, median]) {
          expect(middle).toBeGreaterThanOrEqual(smallest - 1e-12);
          expect(middle).toBeLessThanOrEqual(largest + 1e-12);
        }
        if (ciT !== null) {
          expect(ciT.lower).toBeGreaterThanOrEqual(0);
          expect(ciT.upper).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('does not care how large a yard is, only how it fared', () => {
    const small = averageLoss([{ atRisk: 10, lost: 5 }, { atRisk: 10, lost: 1 }]);
    const large = averageLoss([{ atRisk: 1000, lost: 500 }, { atRisk: 10, lost: 1 }]);
    expect(large.mean).toBe(small.mean);
    expect(large.sd).toBe(small.sd);
  });

  test('one yard has a value and no interval; no yard has neither', () => {
    expect(averageLoss([{ atRisk: 4, lost: 1 }])).toMatchObject({ units: 1, mean: 0.25, sd: null, se: null, ciT: null, ciZ: null });
    expect(averageLoss([{ atRisk: 0, lost: 0 }])).toMatchObject({ units: 0, mean: null, median: null, smallest: null });
  });
});
