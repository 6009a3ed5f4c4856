import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cumulativeIncidence } from '#core/stats/cumulativeIncidence.ts';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';
import { logRankPairs, logRankPairsStratified } from '#core/stats/logRank.ts';
import { restrictedMeanDifference } from '#core/stats/restrictedMeanDifference.ts';
import { parseGoldenFile } from '../../build/golden/goldenFile.ts';

const colonies = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 60 });
const spansOf = (rows: readonly (readonly [number, number, number])[]) => ({ entry: rows.map(([entry]) => entry), exit: rows.map(([entry, watched]) => entry + watched), cause: rows.map(([, , cause]) => cause) });

describe('cumulative incidence', () => {
  test('all causes and what is still free add up to 1 at every time', () => {
    fc.assert(fc.property(colonies, (rows) => {
      const found = cumulativeIncidence(spansOf(rows), 3);
      found.time.forEach((_, at) => {
        const sum = found.causes.reduce((total, { incidence }) => total + (incidence[at] ?? 0), found.free[at] ?? 0);
        expect(sum).toBeCloseTo(1, 12);
      });
    }));
  });

  test('with one cause it is 1 less the Kaplan-Meier curve, with Greenwood’s error', () => {
    fc.assert(fc.property(colonies, (rows) => {
      const { entry, exit, cause } = spansOf(rows);
      const status = cause.map((one) => (one === 0 ? 0 : 1));
      const { table } = kaplanMeier({ entry, exit, status });
      const [curve] = cumulativeIncidence({ entry, exit, cause: status }, 1).causes;
      table.survival.forEach((alive, at) => expect(curve?.incidence[at]).toBeCloseTo(1 - alive, 12));
      table.se.forEach((se, at) => {
        if (se !== null) expect(curve?.se[at]).toBeCloseTo(se, 9);
      });
    }));
  });

  test('while nobody leaves alive it is the plain share with the binomial error', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 3 })), { minLength: 2, maxLength: 40 }), (rows) => {
      const n = rows.length;
      const found = cumulativeIncidence({ entry: rows.map(() => 0), exit: rows.map(([exit]) => exit), cause: rows.map(([, cause]) => cause) }, 3);
      found.causes.forEach(({ cause, incidence, se }) =>
        found.time.forEach((time, at) => {
          const share = rows.filter(([exit, own]) => own === cause && exit <= time).length / n;
          expect(incidence[at]).toBeCloseTo(share, 12);
          // The last step has nobody left; the sum there leaves out a term that is nought times infinity.
          if ((found.free[at] ?? 0) > 0) expect(se[at]).toBeCloseTo(Math.sqrt((share * (1 - share)) / n), 9);
        }),
      );
    }));
  });

  // Invented colonies of the reference file (180, entering late), fates lost, sold, united; values by R 4.2.2, survival
  // 3.5-3, survfit(Surv(entry, exit, factor(reason)) ~ 1, id = id). Its errors are the infinitesimal jackknife's.
  test('agrees with R’s Aalen-Johansen estimate', () => {
    const { columns } = parseGoldenFile(readFileSync(new URL('../reference/data/golden.json', import.meta.url), 'utf8')).datasets['synMidA'] ?? { columns: {} };
    const numbers = (name: string) => (columns[name] ?? []).map(Number);
    const found = cumulativeIncidence({ entry: numbers('entry'), exit: numbers('exit'), cause: numbers('reason') }, 3);
    for (const [time, shares, errors] of fromR) {
      const at = found.time.findLastIndex((one) => one <= time);
      found.causes.forEach(({ incidence, se }, cause) => {
        expect(incidence[at]).toBeCloseTo(shares[cause] ?? -1, 10);
        expect(Math.abs((se[at] ?? 0) / (errors[cause] ?? 1) - 1)).toBeLessThan(0.06);
      });
    }
  });

  test('spans of no length say nothing, and broken ones are refused', () => {
    expect(cumulativeIncidence({ entry: [5], exit: [5], cause: [1] }, 1)).toMatchObject({ n: 0, time: [] });
    expect(() => cumulativeIncidence({ entry: [0], exit: [5], cause: [2] }, 1)).toThrow('cause 2');
    expect(() => cumulativeIncidence({ entry: [9], exit: [5], cause: [0] }, 1)).toThrow('before entry');
    expect(() => cumulativeIncidence({ entry: [0, 1], exit: [5], cause: [0] }, 1)).toThrow('as many rows');
  });
});

const fromR: readonly (readonly [number, readonly number[], readonly number[]])[] = [
  [100, [0.250663979184403, 0.0175233056185437, 0.025615829478247], [0.039200277, 0.012281088, 0.014597916]],
  [365, [0.508195120180176, 0.0843047517705304, 0.0571357134075863], [0.043279232, 0.022746095, 0.01990348]],
  [700, [0.624716972177351, 0.1134888617854827, 0.0780885093807794], [0.039667504, 0.024777787, 0.021610554]],
];

test('the difference of two restricted means has the root of the summed squares for its error', () => {
  const found = restrictedMeanDifference({ tau: 182, value: 170, se: 3 }, { tau: 182, value: 160, se: 4 });
  expect(found).toMatchObject({ value: 10, se: 5 });
  expect(found.interval.lower).toBeCloseTo(10 - 1.959963984540054 * 5, 12);
  expect(() => restrictedMeanDifference({ tau: 1, value: 1, se: 0 }, { tau: 2, value: 1, se: 0 })).toThrow('cannot be compared');
});

test('pairs within one stratum are the plain pairs', () => {
  fc.assert(fc.property(colonies, (rows) => {
    const { entry, exit, cause } = spansOf(rows);
    const status = cause.map((one) => (one === 1 ? 1 : 0));
    const group = rows.map(([entry, watched]) => `g${(entry + watched) % 3}`);
    const plain = logRankPairs({ entry, exit, status }, group);
    const within = logRankPairsStratified({ entry, exit, status }, group, rows.map(() => 2024));
    expect(within).toEqual(plain);
  }));
});
