import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coxModel } from '#core/stats/coxModel.ts';
import { gammaLowerTail, gammaQuantile, gammaUpperTail } from '#core/stats/incompleteGamma.ts';
import { holm } from '#core/stats/holm.ts';
import { logRank, logRankPairs, logRankStratified } from '#core/stats/logRank.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';
import { cholesky, choleskyInverse } from '#core/stats/symmetricMatrix.ts';
import { chiSquareUpperTail, normalTwoSided, studentTTwoSided } from '#core/stats/tailProbabilities.ts';

const row = fc.record({
  entry: fc.integer({ min: 0, max: 30 }),
  length: fc.integer({ min: 1, max: 40 }),
  status: fc.integer({ min: 0, max: 1 }),
  yard: fc.integer({ min: 0, max: 2 }),
  x: fc.integer({ min: 0, max: 5 }),
});
const rows = fc.array(row, { minLength: 2, maxLength: 60 });
type Row = typeof row extends fc.Arbitrary<infer T> ? T : never;
const spansOf = (list: readonly Row[]) => ({
  entry: list.map(({ entry }) => entry),
  exit: list.map(({ entry, length }) => entry + length),
  status: list.map(({ status }) => status),
});

describe('logRank', () => {
  test('observed and expected add up alike, p lies in [0, 1], one stratum changes nothing', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const yards = list.map(({ yard }) => yard);
        const result = logRank(spansOf(list), yards);
        const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
        expect(sum(result.expected)).toBeCloseTo(sum(result.observed), 9);
        for (const line of result.variance) expect(sum(line)).toBeCloseTo(0, 9);
        if (result.p !== null) {
          expect(result.p).toBeGreaterThanOrEqual(0);
          expect(result.p).toBeLessThanOrEqual(1);
        }
        const { chiSquare } = logRankStratified(spansOf(list), yards, yards.map(() => 'all'));
        if (result.chiSquare === null) expect(chiSquare).toBeNull();
        else expect(chiSquare).toBeCloseTo(result.chiSquare, 9);
      }),
    );
  });

  test('two groups: the pair is the whole test; no losses, or one group: nothing to compare', () => {
    const spans = { entry: [0, 0, 0, 0], exit: [3, 5, 7, 9], status: [1, 1, 1, 0] };
    const whole = logRank(spans, ['a', 'b', 'a', 'b']);
    expect(logRankPairs(spans, ['a', 'b', 'a', 'b'])).toMatchObject([{ a: 'a', b: 'b', chiSquare: whole.chiSquare, pHolm: whole.p }]);
    expect(logRank({ ...spans, status: [0, 0, 0, 0] }, ['a', 'b', 'a', 'b'])).toMatchObject({ chiSquare: null, p: null, df: 0 });
    expect(logRank(spans, ['a', 'a', 'a', null])).toMatchObject({ chiSquare: null, n: 3 });
  });
});

describe('coxModel', () => {
  test('a covariate in other units has a coefficient in other units, the same z and likelihood', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const x = list.map((one) => one.x);
        const model = coxModel(spansOf(list), [{ name: 'x', values: x }]);
        const term = model?.terms[0];
        fc.pre(model !== null && term !== undefined && model.converged && !term.diverges);
        const other = coxModel(spansOf(list), [{ name: 'x', values: x.map((value) => 100 + 10 * value) }]);
        expect(other?.terms[0]?.coefficient).toBeCloseTo(term.coefficient / 10, 6);
        expect(other?.loglik).toBeCloseTo(model.loglik, 7);
        expect(model.loglik).toBeGreaterThanOrEqual(model.loglikNull - 1e-9);
      }),
    );
  });

  test('flags a group without a loss, drops what is constant or repeats, leaves out unknown values', () => {
    const spans = { entry: [0, 0, 0, 0, 0, 0, 0], exit: [20, 50, 50, 80, 90, 90, 90], status: [1, 1, 1, 1, 0, 0, 0] };
    const yard = [0, 0, 0, 0, 1, 1, 1];
    expect(coxModel(spans, [{ name: 'yard', values: yard }])?.terms[0]).toMatchObject({ diverges: true });
    const x = [3, 1, 4, 1, 5, 2, null];
    const model = coxModel(spans, [
      { name: 'x', values: x },
      { name: 'same', values: x.map((value) => (value === null ? null : 2 * value + 1)) },
      { name: 'constant', values: [7, 7, 7, 7, 7, 7, 7] },
    ]);
    expect(model).toMatchObject({ n: 6, missing: 1, df: 1, dropped: [{ name: 'same', why: 'follows from others', sameAs: 'x' }, { name: 'constant', why: 'constant', sameAs: null }] });
    expect(coxModel({ ...spans, status: [0, 0, 0, 0, 0, 0, 0] }, [{ name: 'yard', values: yard }])).toBeNull();
  });
});

test('tails: both gamma tails make 1, the quantile goes back, far out they are 0 and not an error', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.2, max: 3000, noNaN: true }), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (shape, p) => {
      const x = gammaQuantile(p, shape);
      expect(gammaLowerTail(x, shape)).toBeCloseTo(p, 9);
      expect(gammaLowerTail(x, shape) + gammaUpperTail(x, shape)).toBeCloseTo(1, 9);
    }),
  );
  expect([gammaUpperTail(1e5, 2), gammaLowerTail(1e5, 2), gammaUpperTail(0, 2), gammaLowerTail(1, 5000)]).toEqual([0, 1, 1, 0]);
  expect(normalTwoSided(60)).toBe(0);
  expect(chiSquareUpperTail(9, 1)).toBeCloseTo(normalTwoSided(3), 13);
  expect(studentTTwoSided(1, 1)).toBeCloseTo(0.5, 13);
});

test('Holm: never below the p-value, never above Bonferroni, order kept', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 }), (pValues) => {
      for (const [at, adjusted] of holm(pValues).entries()) {
        const p = pValues[at] as number;
        expect(adjusted).toBeGreaterThanOrEqual(p);
        expect(adjusted).toBeLessThanOrEqual(Math.min(1, p * pValues.length));
      }
    }),
  );
  expect(holm([0.01, 0.04, 0.03])).toEqual([0.03, 0.06, 0.06]);
});

test('an inverse is one; a singular matrix has none', () => {
  const factor = cholesky([[4, 2], [2, 3]]);
  if (factor === null) throw new Error('this matrix has a factor');
  for (const [i, want] of [0.375, -0.25, -0.25, 0.5].entries()) expect(choleskyInverse(factor).flat()[i]).toBeCloseTo(want, 14);
  expect(cholesky([[1, 2], [2, 4]])).toBeNull();
});

test('partial pooling puts every group between its own mean and the whole, and needs three groups', () => {
  const values = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(fc.array(values, { minLength: 3, maxLength: 8 }), (lists) => {
      const pooling = partialPooling(lists.map((list, at) => ({ group: `yard ${at}`, values: list })));
      fc.pre(pooling !== null);
      for (const { mean, pooled, shrinkage } of pooling.groups) {
        expect(shrinkage).toBeGreaterThanOrEqual(0);
        expect(shrinkage).toBeLessThanOrEqual(1);
        expect(pooled).toBeGreaterThanOrEqual(Math.min(mean, pooling.mu) - 1e-9);
        expect(pooled).toBeLessThanOrEqual(Math.max(mean, pooling.mu) + 1e-9);
      }
    }),
  );
  expect(partialPooling([{ group: 'a', values: [1, 2] }, { group: 'b', values: [3, 4] }])).toBeNull();
});
