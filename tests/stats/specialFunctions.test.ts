import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { incompleteBeta, incompleteBetaInverse } from '#core/stats/incompleteBeta.ts';
import { logBeta } from '#core/stats/logBeta.ts';
import { logGamma } from '#core/stats/logGamma.ts';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';

const shape = fc.double({ min: 0.1, max: 5000, noNaN: true });
const probability = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));

function relativeError(got: number, want: number): number {
  return Math.abs(got - want) / Math.abs(want);
}

describe('logGamma and logBeta', () => {
  test('agree with factorials', () => {
    for (let n = 3; n <= 20; n++) {
      expect(relativeError(logGamma(n + 1), Math.log(factorial(n)))).toBeLessThan(1e-14);
      for (let m = 3; m <= 20; m++) {
        const want = Math.log(factorial(m - 1)) + Math.log(factorial(n - 1)) - Math.log(factorial(n + m - 1));
        expect(relativeError(logBeta(m, n), want)).toBeLessThan(1e-13);
      }
    }
  });

  test('keep their digits for large arguments: B(1, b) = 1/b, B(2, b) = 1/(b (b + 1)), B(1/2, 1/2) = pi', () => {
    for (const b of [0.01, 3, 10, 99, 1e4, 2e6, 1e9]) {
      expect(relativeError(logBeta(1, b), -Math.log(b))).toBeLessThan(1e-13);
      expect(relativeError(logBeta(b, 2), -Math.log(b) - Math.log1p(b))).toBeLessThan(1e-12);
    }
    expect(relativeError(logBeta(0.5, 0.5), Math.log(Math.PI))).toBeLessThan(1e-15);
  });

  test('B(a, b + 1) = B(a, b) b / (a + b), also across the border between the two formulas', () => {
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        const step = logBeta(a, b) + Math.log(b) - Math.log(a + b);
        expect(Math.abs(logBeta(a, b + 1) - step)).toBeLessThan(1e-11 * (1 + Math.abs(step)));
      }),
    );
  });

  test('refuse what has no logarithm', () => {
    for (const x of [0, -1, Number.NaN]) expect(() => logGamma(x)).toThrow(RangeError);
  });
});

describe('incompleteBeta', () => {
  test('closed forms: I_x(1, b) = 1 - (1-x)^b, I_x(a, 1) = x^a, I_x(1/2, 1/2) = 2/pi asin sqrt x', () => {
    fc.assert(
      fc.property(probability, shape, (x, a) => {
        expect(incompleteBeta(x, 1, a)).toBeCloseTo(-Math.expm1(a * Math.log1p(-x)), 11);
        expect(incompleteBeta(x, a, 1)).toBeCloseTo(x ** a, 11);
        expect(incompleteBeta(x, 0.5, 0.5)).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(x)), 11);
      }),
    );
  });

  test('mirrors: I_x(a, b) = 1 - I_(1-x)(b, a)', () => {
    fc.assert(
      fc.property(probability, shape, shape, (x, a, b) => {
        expect(incompleteBeta(x, a, b)).toBeCloseTo(1 - incompleteBeta(1 - x, b, a), 10);
      }),
    );
  });

  test('its inverse takes it back', () => {
    fc.assert(
      fc.property(probability, shape, shape, (p, a, b) => {
        const x = incompleteBetaInverse(p, a, b);
        // Beyond this the next double is a different probability: no x can do better.
        fc.pre(x > 1e-300 && x < 1 - 1e-9);
        expect(relativeError(incompleteBeta(x, a, b), p)).toBeLessThan(1e-8);
      }),
    );
  });

  test('ends and refusals', () => {
    expect(incompleteBeta(-1, 2, 3)).toBe(0);
    expect(incompleteBeta(1, 2, 3)).toBe(1);
    expect(incompleteBetaInverse(0, 2, 3)).toBe(0);
    expect(incompleteBetaInverse(1, 2, 3)).toBe(1);
    expect(() => incompleteBetaInverse(1.1, 2, 3)).toThrow(RangeError);
    expect(() => incompleteBeta(0.5, 0, 3)).toThrow(RangeError);
  });
});

describe('studentTQuantile', () => {
  test('closed forms for 1 and 2 degrees of freedom', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (p) => {
        expect(studentTQuantile(p, 1)).toBeCloseTo(Math.tan(Math.PI * (p - 0.5)), 7);
        const closed = (2 * p - 1) * Math.sqrt(2 / (4 * p * (1 - p)));
        expect(studentTQuantile(p, 2)).toBeCloseTo(closed, 9);
      }),
    );
  });

  test('antisymmetric, rising with p, and near the normal quantile for many degrees of freedom', () => {
    fc.assert(
      fc.property(probability, fc.double({ min: 0.5, max: 1000, noNaN: true }), (p, df) => {
        fc.pre(p !== 0.5);
        const t = studentTQuantile(p, df);
        expect(Math.abs(studentTQuantile(1 - p, df) + t)).toBeLessThan(1e-7 * (1 + Math.abs(t)));
        expect(studentTQuantile(Math.min(1 - 1e-7, p + 1e-4), df)).toBeGreaterThan(t);
      }),
    );
    expect(studentTQuantile(0.5, 3)).toBe(0);
    expect(studentTQuantile(0.975, 1e7)).toBeCloseTo(1.959964, 5);
  });

  test('refuses probabilities and degrees of freedom that make no sense', () => {
    expect(() => studentTQuantile(1, 3)).toThrow(RangeError);
    expect(() => studentTQuantile(0.975, 0)).toThrow(RangeError);
  });
});
