import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { columnsOf, parseGoldenFile, type GoldenCase } from '../../build/golden/goldenFile.ts';
import { compare } from '../../build/golden/compare.ts';
import { goldenMethods } from '../../build/golden/methods.ts';
import { failed, runCases } from '../../build/golden/runCases.ts';

// Values computed with R 4.2.2, survival 3.5-3, MASS 7.3-58.2 on published and on generated data, at the
// tolerances printed with them: 1e-9 for closed forms, 1e-7 for quantiles, whole numbers exactly.
const file = parseGoldenFile(readFileSync(new URL('data/golden.json', import.meta.url), 'utf8'));
const covered = file.cases.filter((one) => goldenMethods.has(one.method));

/** The points at which a forecast is asked for its quantiles and probabilities stand among its expected values. */
const QUESTION = /^\.quantiles\.\d+\.p$|^\.pmfAt\.k\.\d+$/;
/** Where a diverging coefficient stood when R gave up: the file itself calls it informative only. */
const INFORMATIVE = '.coefAtStopInR';

test('the file has cases of every method that must be covered', () => {
  const methods = new Set(covered.map((one) => one.method));
  expect(['km', 'kmBy', 'proportion', 'lossRate', 'betaBinomial', 'forecast'].filter((method) => !methods.has(method))).toEqual([]);
});

describe.each(covered.map((one) => [one.id, one] as const))('%s', (_, one) => {
  test('agrees in every field', () => {
    const { results } = runCases({ ...file, cases: [one] }, goldenMethods);
    expect(results).toEqual([{ id: one.id, method: one.method, mismatches: [], threw: null }]);
  });

  test('any number changed, or any field added, is noticed', () => {
    const method = goldenMethods.get(one.method);
    if (method === undefined) throw new Error('no such method');
    const got = method.compute(one.input, columnsOf(file, one));
    const altered = alterations(one.expected).filter(({ path }) => path !== INFORMATIVE && (one.method !== 'forecast' || !QUESTION.test(path)));
    expect(altered.length).toBeGreaterThan(0);
    for (const { path, expected } of altered) {
      expect({ path, noticed: noticed(() => compare(got, expected, method.tolerance).length) }).toEqual({ path, noticed: true });
    }
  });
});

test('a case that cannot be computed has failed', () => {
  const broken: GoldenCase = { id: 'broken', method: 'km', dataset: 'no such set', input: {}, expected: {} };
  const { results } = runCases({ ...file, cases: [broken] }, goldenMethods);
  expect(results.map(failed)).toEqual([true]);
});

test('methods without an adapter are counted apart, and a selection leaves the rest alone', () => {
  const unknown: GoldenCase = { id: 'x', method: 'unheard of', input: {}, expected: {} };
  const cases = [unknown, unknown, ...covered];
  expect(runCases({ ...file, cases }, goldenMethods).notCovered).toEqual(new Map([['unheard of', 2]]));
  const only = runCases({ ...file, cases }, goldenMethods, new Set(['proportion']));
  expect(only.notCovered.size).toBe(0);
  expect(new Set(only.results.map((result) => result.method))).toEqual(new Set(['proportion']));
});

/** A wrong expectation may also make an adapter that looks at it stumble; that counts as noticed. */
function noticed(mismatches: () => number): boolean {
  try {
    return mismatches() > 0;
  } catch {
    return true;
  }
}

/** Where lists are long, the first, the middle and the last element stand for all. */
function sampled(length: number): readonly number[] {
  return length <= 4 ? Array.from({ length }, (_, at) => at) : [0, length >> 1, length - 1];
}

/** The expected value with one leaf changed, or one unknown field added, at a time. */
function alterations(value: unknown, path = ''): readonly { path: string; expected: unknown }[] {
  if (Array.isArray(value)) {
    const longer = { path: `${path}.length`, expected: [...value, null] };
    return [
      longer,
      ...sampled(value.length).flatMap((at) =>
        alterations(value[at], `${path}.${at}`).map(({ path: where, expected }) => ({ path: where, expected: value.with(at, expected) })),
      ),
    ];
  }
  if (typeof value === 'object' && value !== null) {
    return [
      { path: `${path}.unheardOf`, expected: { ...value, unheardOf: 1 } },
      ...Object.entries(value).flatMap(([key, part]) =>
        alterations(part, `${path}.${key}`).map(({ path: where, expected }) => ({ path: where, expected: { ...value, [key]: expected } })),
      ),
    ];
  }
  return [{ path, expected: changed(value) }];
}

function changed(value: unknown): unknown {
  if (typeof value === 'number') return value * 1.000001 + (Number.isInteger(value) ? 1 : 1e-11);
  return value === null ? 1 : null;
}
