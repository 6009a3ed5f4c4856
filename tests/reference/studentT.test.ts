import { expect, test } from 'vitest';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';

// Student's t, 0.975 quantiles as every printed table has them (for one: Pearson and Hartley, Biometrika
// Tables for Statisticians, table 12). From memory.
test.each([
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [9, 2.262],
  [10, 2.228],
  [20, 2.086],
  [30, 2.042],
  [60, 2.0],
  [120, 1.98],
])('%d degrees of freedom', (df, want) => {
  expect(Number(studentTQuantile(0.975, df).toFixed(3))).toBe(want);
});
