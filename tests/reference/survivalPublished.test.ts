import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';
import { parseGoldenFile } from '../../build/golden/goldenFile.ts';
import { spansOf } from '../../build/golden/survivalColumns.ts';

// Remission times in weeks of 42 leukaemia patients (Freireich et al. 1963, printed in Gehan 1965, Biometrika
// 52:203-223, and in most textbooks of survival analysis). From memory; reproduced by R.
const sixMp = {
  exit: [6, 6, 6, 7, 10, 13, 16, 22, 23, 6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35],
  relapses: 9,
};
const placebo = { exit: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23], relapses: 21 };

function curveOf({ exit, relapses }: { exit: readonly number[]; relapses: number }): ReturnType<typeof kaplanMeier> {
  return kaplanMeier({ entry: exit.map(() => 0), exit, status: exit.map((_, at) => (at < relapses ? 1 : 0)) });
}

test('6-MP arm: survival and its standard error at every relapse', () => {
  const { table, quantiles, n } = curveOf(sixMp);
  expect(n).toBe(21);
  expect(table.time).toEqual([6, 7, 10, 13, 16, 22, 23]);
  expect(table.survival.map((share) => share.toFixed(4))).toEqual(['0.8571', '0.8067', '0.7529', '0.6902', '0.6275', '0.5378', '0.4482']);
  expect(table.se.map((se) => se?.toFixed(4))).toEqual(['0.0764', '0.0869', '0.0963', '0.1068', '0.1141', '0.1282', '0.1346']);
  expect(quantiles.find(({ p }) => p === 0.5)?.time).toBe(23);
});

test('placebo arm: median 8 weeks', () => {
  expect(curveOf(placebo).quantiles.find(({ p }) => p === 0.5)?.time).toBe(8);
});

// Advanced lung cancer, Loprinzi et al. 1994, J Clin Oncol 12:601-607 (the data set `lung` of R's survival
// package, whose help prints the median). From memory; reproduced by R, limits by the log-log band.
test('lung cancer: median 310 days, 284 to 361', () => {
  const file = parseGoldenFile(readFileSync(new URL('data/golden.json', import.meta.url), 'utf8'));
  const lung = file.datasets['lung'];
  if (lung === undefined) throw new Error('the data set lung is missing');
  const { quantiles } = kaplanMeier(spansOf(lung.columns), { probabilities: [0.5] });
  expect(quantiles).toEqual([{ p: 0.5, time: 310, lowerLogLog: 284, upperLogLog: 361 }]);
});
