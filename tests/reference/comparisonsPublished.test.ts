import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chiSquareTable } from '#core/stats/chiSquareTable.ts';
import { coxModel } from '#core/stats/coxModel.ts';
import { fisherExactTable } from '#core/stats/fisherExactTable.ts';
import { fisherExactTwoByTwo } from '#core/stats/fisherExactTwoByTwo.ts';
import { additiveFit } from '#core/stats/additiveFit.ts';
import { groupedValues } from '#core/stats/groupedValues.ts';
import { logRank } from '#core/stats/logRank.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';
import { poissonInterval } from '#core/stats/poissonInterval.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import { parseGoldenFile, type Columns } from '../../build/golden/goldenFile.ts';
import { column, numbers, spansOf } from '../../build/golden/survivalColumns.ts';

const file = parseGoldenFile(readFileSync(new URL('data/golden.json', import.meta.url), 'utf8'));

function dataset(name: string): Columns {
  const found = file.datasets[name];
  if (found === undefined) throw new Error(`the data set ${name} is missing`);
  return found.columns;
}

// Leukaemia remissions (Freireich et al. 1963, in Gehan 1965, Biometrika 52:203-223). From memory; agrees with R.
describe('leukaemia', () => {
  test('log-rank 16.79, p = 4.2e-5; 9 relapses against 19.25 expected, 21 against 10.75', () => {
    const columns = dataset('leukaemia');
    const result = logRank(spansOf(columns), column(columns, 'group'));
    expect(result.groups).toEqual(['6-MP', 'control']);
    expect(result.observed).toEqual([9, 21]);
    expect(result.expected.map((value) => value.toFixed(2))).toEqual(['19.25', '10.75']);
    expect(result.chiSquare?.toFixed(2)).toBe('16.79');
    expect(result.p?.toExponential(1)).toBe('4.2e-5');
  });

  test('Cox with Efron ties: -1.572125, error 0.412397, log-likelihood -93.18427 to -85.00842', () => {
    const columns = dataset('leukaemiaCox');
    const model = coxModel(spansOf(columns), [{ name: 'trt6mp', values: numbers(columns, 'trt6mp') }]);
    expect(model?.terms[0]?.coefficient.toFixed(6)).toBe('-1.572125');
    expect(model?.terms[0]?.se.toFixed(6)).toBe('0.412397');
    expect([model?.loglikNull.toFixed(5), model?.loglik.toFixed(5)]).toEqual(['-93.18427', '-85.00842']);
  });
});

describe('tables', () => {
  // Fisher's tea tasting; convictions of twins; job satisfaction (Agresti): as in the help of R's fisher.test,
  // from memory. The conditional odds ratio of the twins is that of the table with its rows exchanged.
  test('tea tasting p = .4857, twins p = .0005367 and odds ratio .04694, job satisfaction p = .7827', () => {
    expect(fisherExactTwoByTwo({ a: 3, b: 1, c: 1, d: 3 }).p.toFixed(4)).toBe('0.4857');
    const twins = fisherExactTwoByTwo({ a: 2, b: 15, c: 10, d: 3 });
    expect([twins.p.toFixed(7), twins.oddsRatio?.toFixed(5)]).toEqual(['0.0005367', '0.04694']);
    const jobs = [[1, 2, 1, 0], [3, 3, 6, 1], [10, 10, 14, 9], [6, 7, 12, 11]];
    expect(fisherExactTable(jobs)?.toFixed(4)).toBe('0.7827');
  });

  // Newcombe 1998, Statistics in Medicine 17:873-890, method 10. From memory; agrees with R.
  test.each([
    [{ a: 56, b: 14, c: 48, d: 32 }, '0.0524', '0.3339'],
    [{ a: 9, b: 1, c: 3, d: 7 }, '0.1705', '0.8090'],
  ])('difference of rates %o', (table, lower, upper) => {
    const limits = riskDifference(table)?.newcombe;
    expect([limits?.lower.toFixed(4), limits?.upper.toFixed(4)]).toEqual([lower, upper]);
  });

  test('the general exact test agrees with the one for 2x2, and turns with the table', () => {
    for (const { a, b, c, d } of [{ a: 3, b: 1, c: 1, d: 3 }, { a: 12, b: 5, c: 4, d: 9 }, { a: 0, b: 6, c: 5, d: 2 }]) {
      expect(fisherExactTable([[a, b], [c, d]])).toBeCloseTo(fisherExactTwoByTwo({ a, b, c, d }).p, 11);
    }
    const table = [[3, 1, 0, 2], [5, 2, 4, 1], [1, 0, 2, 6]];
    const turned = [0, 1, 2, 3].map((j) => table.map((row) => row[j] ?? 0));
    expect(fisherExactTable(turned)).toBeCloseTo(fisherExactTable(table) ?? Number.NaN, 11);
    expect(fisherExactTable(table, 10)).toBeNull();
    expect(chiSquareTable([[3, 0], [5, 0]])).toBeNull();
  });
});

// Poisson limits after Garwood 1936, Biometrika 28:437-442, as in printed tables. From memory; agrees with R.
test.each([
  [0, '0.000', '3.689'],
  [5, '1.623', '11.668'],
  [10, '4.795', '18.390'],
])('Poisson count %d', (count, lower, upper) => {
  const limits = poissonInterval(count);
  expect([limits.lower.toFixed(3), limits.upper.toFixed(3)]).toEqual([lower, upper]);
});

// Dyestuff (Davies and Goldsmith 1972, Statistical Methods in Research and Production). From memory; agrees with R.
test('Dyestuff: within 2451.25, between 1764.05, mean 1527.5', () => {
  const input = file.cases.find((one) => one.id === 'yield/dyestuff')?.input as { yield: number[]; group: string[] };
  const pooling = partialPooling(groupedValues(input.yield, input.group));
  expect(pooling?.components.msWithin).toBeCloseTo(2451.25, 9);
  expect(pooling?.tau2).toBeCloseTo(1764.05, 9);
  expect(pooling?.mu).toBeCloseTo(1527.5, 9);
});

// R 4.2.2: sigma(lm(v ~ b + g)) on thirteen values, two of a cell and six cells empty; three of the four blocks’ effects are spent.
test('pooled after blocks were evened out, the spread within is that of the two-way fit', () => {
  const [groups, blocks] = ['aaabbccccabdd', '1231223344414'];
  const fit = additiveFit([41, 52, 30, 60, 66, 38, 25, 29, 47, 50, 71, 33, 44].map((value, at) => ({ group: groups[at] ?? '', block: blocks[at] ?? '', value })));
  const evened = groupedValues(fit.rows.map(({ value }) => value), fit.rows.map(({ row }) => row.group));
  expect(Math.sqrt(partialPooling(evened, fit.blocks.size - 1)?.components.msWithin ?? NaN)).toBeCloseTo(2.92075591403, 9);
  expect(partialPooling(evened, 9)).toBeNull();
});
