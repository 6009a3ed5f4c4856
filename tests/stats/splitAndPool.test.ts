import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaPriorByMoments } from '#core/stats/betaPriorByMoments.ts';
import { coxModel } from '#core/stats/coxModel.ts';
import { noticeableDifference, powerOfTwoRates } from '#core/stats/noticeableDifference.ts';
import { pooledRates } from '#core/stats/pooledRates.ts';
import { splitSpans } from '#core/stats/splitSpans.ts';

describe('rows cut where a value becomes known', () => {
  const span = { entry: [0], exit: [100], status: [1] };

  test('each piece carries what was last known as it began', () => {
    const pieces = splitSpans(span, [[{ time: 40, value: 3 }, { time: -20, value: 1 }, { time: 70, value: 5 }]]);
    expect(pieces).toEqual({ entry: [0, 40, 70], exit: [40, 70, 100], status: [0, 0, 1], row: [0, 0, 0], value: [1, 3, 5] });
  });

  test('a count of the day of the loss or after it is never used', () => {
    expect(splitSpans(span, [[{ time: 100, value: 9 }, { time: 130, value: 9 }]])).toEqual({ entry: [0], exit: [100], status: [1], row: [0], value: [null] });
  });

  test('pieces add up to the span, one loss in the last, and no value is older than a later known one', () => {
    const value = fc.record({ time: fc.integer({ min: -50, max: 150 }), value: fc.double({ min: 0, max: 20, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(value, { maxLength: 8 }), fc.integer({ min: 1, max: 120 }), (values, exit) => {
        const pieces = splitSpans({ entry: [0], exit: [exit], status: [1] }, [values]);
        expect(pieces.exit.at(-1)).toBe(exit);
        expect(pieces.entry[0]).toBe(0);
        expect(pieces.status.reduce((sum, one) => sum + one, 0)).toBe(1);
        for (const [at, from] of pieces.entry.entries()) {
          if (at > 0) expect(from).toBe(pieces.exit[at - 1]);
          const known = values.filter(({ time }) => time <= from);
          if (known.length === 0) expect(pieces.value[at]).toBeNull();
          else expect(known.some((one) => one.value === pieces.value[at] && one.time === Math.max(...known.map(({ time }) => time)))).toBe(true);
        }
      }),
    );
  });
});

describe('Cox covariates that say nothing of their own', () => {
  const exit = [5, 8, 12, 20, 22, 30, 31, 40];
  const spans = { entry: exit.map(() => 0), exit, status: [1, 0, 1, 1, 0, 1, 0, 1] };
  const mites = [4, 1, 3, 5, 2, 1, 6, 2];

  test('one that says the same as another is named with it; a constant one is named as constant', () => {
    const model = coxModel(spans, [{ name: 'mites', values: mites }, { name: 'tenths', values: mites.map((one) => one / 10) }, { name: 'one', values: exit.map(() => 1) }]);
    expect(model?.dropped).toEqual([{ name: 'tenths', why: 'follows from others', sameAs: 'mites' }, { name: 'one', why: 'constant', sameAs: null }]);
  });

  test('a group without a loss: the coefficient is said to run off, the others stand', () => {
    const model = coxModel(spans, [{ name: 'treated', values: [0, 1, 0, 0, 1, 0, 1, 0] }, { name: 'mites', values: mites }]);
    expect(model?.terms.find(({ name }) => name === 'treated')?.diverges).toBe(true);
    expect(model?.terms.find(({ name }) => name === 'mites')?.diverges).toBe(false);
  });
});

describe('pooled loss rates', () => {
  const yards = [{ lost: 5, atRisk: 15 }, { lost: 5, atRisk: 27 }, { lost: 5, atRisk: 9 }, { lost: 10, atRisk: 44 }, { lost: 1, atRisk: 7 }];

  test('with one expected rate it is the beta prior by moments and its posterior', () => {
    const p = 26 / 102;
    const prior = betaPriorByMoments(yards);
    const pooled = pooledRates(yards.map((yard) => ({ ...yard, expected: p })));
    expect(pooled?.rho).toBeCloseTo(prior?.rho ?? NaN, 12);
    for (const [at, { lost, atRisk }] of yards.entries()) {
      const { alpha, beta } = prior ?? { alpha: NaN, beta: NaN };
      expect(pooled?.units[at]?.pooled).toBeCloseTo((alpha + lost) / (alpha + beta + atRisk), 12);
    }
  });

  test('each lies between its own rate and what is expected, inside its limits; fewer than three are not pooled', () => {
    const unit = fc.integer({ min: 0, max: 40 }).chain((atRisk) => fc.record({ atRisk: fc.constant(atRisk), lost: fc.integer({ min: 0, max: atRisk }), expected: fc.double({ min: 0.05, max: 0.95, noNaN: true }) }));
    fc.assert(
      fc.property(fc.array(unit, { maxLength: 8 }), (units) => {
        const pooled = pooledRates(units);
        if (units.filter(({ atRisk }) => atRisk > 0).length < 3) expect(pooled).toBeNull();
        for (const [at, one] of (pooled?.units ?? []).entries()) {
          if (one === null) continue;
          const { lost, atRisk, expected } = units[at] ?? { lost: 0, atRisk: 0, expected: 0 };
          const [low, high] = [Math.min(lost / atRisk, expected), Math.max(lost / atRisk, expected)];
          // A handful keeps half a colony between the expectation and all or none.
          const room = atRisk < 20 ? 0.5 / (atRisk + 1) : 0;
          expect(one.pooled).toBeGreaterThanOrEqual(low - room - 1e-9);
          expect(one.pooled).toBeLessThanOrEqual(high + room + 1e-9);
          expect(one.limits.lower).toBeLessThan(one.limits.upper);
        }
      }),
    );
  });

  test('nothing lost, everything lost: nothing to judge a spread by', () => {
    expect(pooledRates(yards.map(({ atRisk }) => ({ atRisk, lost: 0, expected: 0 })))).toBeNull();
    expect(pooledRates(yards.map(({ atRisk }) => ({ atRisk, lost: atRisk, expected: 1 })))).toBeNull();
  });
});

test('the smallest difference that would be noticed is noticed four times in five; with few colonies there is none', () => {
  for (const [total, rate] of [[60, 0.3], [200, 0.2], [1000, 0.05]] as const) {
    const difference = noticeableDifference(total, rate) ?? NaN;
    expect(powerOfTwoRates(total / 2, rate + difference / 2, rate - difference / 2)).toBeCloseTo(0.8, 6);
  }
  expect(noticeableDifference(5, 0.4)).toBeNull();
  expect(noticeableDifference(100, 0)).toBeNull();
});
