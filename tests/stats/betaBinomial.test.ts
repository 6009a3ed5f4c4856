import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaBinomial } from '#core/stats/betaBinomial.ts';
import { betaPriorByMoments, betaPriorFromExpectedRate } from '#core/stats/betaPriorByMoments.ts';
import { binomialCdf } from '#core/stats/binomialCdf.ts';
import { compensatedSum } from '#core/stats/compensatedSum.ts';
import { discreteQuantile } from '#core/stats/discreteQuantile.ts';
import { incompleteBeta } from '#core/stats/incompleteBeta.ts';
import { logBeta } from '#core/stats/logBeta.ts';
import { logGamma } from '#core/stats/logGamma.ts';

const n = fc.integer({ min: 0, max: 2000 });
const shape = fc.double({ min: 0.05, max: 500, noNaN: true });

describe('betaBinomial', () => {
  test('sums to 1, its distribution function rises to 1, and its moments are those of the formula', () => {
    fc.assert(
      fc.property(n, shape, shape, (size, alpha, beta) => {
        const { pmf, cdf, mean, variance } = betaBinomial(size, alpha, beta);
        expect(pmf).toHaveLength(size + 1);
        expect(pmf.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 11);
        expect(cdf.at(-1)).toBeCloseTo(1, 12);
        for (let k = 1; k <= size; k++) expect(cdf[k]).toBeGreaterThanOrEqual(cdf[k - 1] as number);
        const first = pmf.reduce((sum, p, k) => sum + p * k, 0);
        const second = pmf.reduce((sum, p, k) => sum + p * (k - mean) ** 2, 0);
        expect(first).toBeCloseTo(mean, 6);
        expect(Math.abs(second - variance)).toBeLessThan(1e-8 * (1 + variance));
      }),
    );
  });

  test('agrees with the formula in beta functions', () => {
    fc.assert(
      fc.property(n, shape, shape, (size, alpha, beta) => {
        const { pmf } = betaBinomial(size, alpha, beta);
        for (const k of [0, Math.floor(size / 3), size]) {
          const logChoose = logGamma(size + 1) - logGamma(k + 1) - logGamma(size - k + 1);
          const want = Math.exp(logChoose + logBeta(k + alpha, size - k + beta) - logBeta(alpha, beta));
          expect(Math.abs((pmf[k] as number) - want)).toBeLessThan(1e-9 * want + 1e-300);
        }
      }),
    );
  });

  test('is uniform for alpha = beta = 1, and mirrors when they change places', () => {
    for (const p of betaBinomial(99, 1, 1).pmf) expect(p).toBeCloseTo(0.01, 14);
    const one = betaBinomial(30, 2.5, 7).pmf;
    const other = betaBinomial(30, 7, 2.5).pmf.toReversed();
    for (const [k, p] of one.entries()) expect(other[k]).toBeCloseTo(p, 14);
  });

  test('no colonies, and what it refuses', () => {
    expect(betaBinomial(0, 2, 3)).toMatchObject({ pmf: [1], cdf: [1], mean: 0, variance: 0 });
    for (const [size, alpha, beta] of [[-1, 1, 1], [1.5, 1, 1], [3, 0, 1], [3, 1, Number.NaN]] as const) {
      expect(() => betaBinomial(size, alpha, beta)).toThrow(RangeError);
    }
  });
});

describe('discreteQuantile', () => {
  test('is the smallest count whose distribution function reaches u', () => {
    fc.assert(
      fc.property(n, shape, shape, fc.double({ min: 0, max: 1, noNaN: true }), (size, alpha, beta, u) => {
        const { cdf } = betaBinomial(size, alpha, beta);
        const k = discreteQuantile(cdf, u);
        expect(cdf[k]).toBeGreaterThanOrEqual(u - 1e-12);
        if (k > 0) expect(cdf[k - 1]).toBeLessThan(u);
      }),
    );
  });

  test('undoes the distribution function', () => {
    const { cdf } = betaBinomial(40, 3, 9);
    for (let k = 0; k < 25; k++) expect(discreteQuantile(cdf, cdf[k] as number)).toBe(k);
  });

  test('a tie falls on the reached side: 0.3 of ten equal steps is the third', () => {
    expect(discreteQuantile(betaBinomial(9, 1, 1).cdf, 0.3)).toBe(2);
    expect(() => discreteQuantile([], 0.5)).toThrow(RangeError);
    expect(() => discreteQuantile([1], 1.5)).toThrow(RangeError);
  });
});

test('binomialCdf agrees with the incomplete beta function', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1500 }), fc.double({ min: 0, max: 1, noNaN: true }), (trials, p) => {
      const cdf = binomialCdf(trials, p);
      for (const k of [0, Math.floor(trials / 2), trials - 1]) {
        expect(cdf[k]).toBeCloseTo(incompleteBeta(1 - p, trials - k, k + 1), 10);
      }
      expect(cdf.at(-1)).toBe(1);
    }),
  );
  expect(binomialCdf(2, 0)).toEqual([1, 1, 1]);
  expect(binomialCdf(2, 1)).toEqual([0, 0, 1]);
  expect(() => binomialCdf(-1, 0.5)).toThrow(RangeError);
  expect(() => binomialCdf(2, 1.1)).toThrow(RangeError);
});

test('compensatedSum keeps what plain addition loses', () => {
  expect(compensatedSum([1, 1e100, 1, -1e100]).at(-1)).toBe(2);
  expect(compensatedSum([])).toEqual([]);
});

describe('betaPriorByMoments', () => {
  const winter = fc
    .integer({ min: 0, max: 300 })
    .chain((atRisk) => fc.record({ atRisk: fc.constant(atRisk), lost: fc.integer({ min: 0, max: atRisk }) }));

  test('gives positive shapes with the pooled rate as their mean, rho within its bounds', () => {
    fc.assert(
      fc.property(fc.array(winter, { maxLength: 8 }), (winters) => {
        const prior = betaPriorByMoments(winters);
        fc.pre(prior !== null);
        const N = winters.reduce((sum, one) => sum + one.atRisk, 0);
        const Y = winters.reduce((sum, one) => sum + one.lost, 0);
        expect(prior.alpha).toBeGreaterThan(0);
        expect(prior.beta).toBeGreaterThan(0);
        expect(prior.alpha / (prior.alpha + prior.beta)).toBeCloseTo(prior.p, 12);
        expect(prior.rho).toBeCloseTo(1 / (1 + prior.M), 12);
        if (prior.seasons > 1) {
          expect(prior.rho).toBeGreaterThanOrEqual(1 / (1 + N));
          expect(prior.rho).toBeLessThanOrEqual(0.5);
          if (Y > 0 && Y < N) expect(prior.p).toBe(Y / N);
        }
      }),
    );
  });

  test('knows its edges', () => {
    expect(betaPriorByMoments([])).toBeNull();
    expect(betaPriorByMoments([{ atRisk: 0, lost: 0 }])).toBeNull();
    expect(betaPriorByMoments([{ atRisk: 30, lost: 6 }])).toMatchObject({ rule: 'default-concentration', M: 8, p: 6.5 / 31 });
    expect(betaPriorByMoments([{ atRisk: 30, lost: 0 }, { atRisk: 9, lost: 0 }])).toMatchObject({ rule: 'floor', p: 0.5 / 40, rho: 1 / 40 });
    expect(betaPriorByMoments([{ atRisk: 30, lost: 0 }, { atRisk: 30, lost: 30 }])).toMatchObject({ rule: 'ceiling', rho: 0.5, M: 1 });
    expect(betaPriorByMoments([{ atRisk: 1, lost: 0 }, { atRisk: 1, lost: 1 }])).toMatchObject({ rule: 'floor', rhoRaw: null });
    expect(betaPriorFromExpectedRate(0.25)).toMatchObject({ seasons: 0, rule: 'expected-rate', alpha: 2, beta: 6 });
    expect(() => betaPriorFromExpectedRate(0)).toThrow(RangeError);
    expect(() => betaPriorByMoments([{ atRisk: 2, lost: 3 }])).toThrow(RangeError);
  });
});
