import { expect, test } from 'vitest';
import { clopperPearsonInterval } from '#core/stats/clopperPearsonInterval.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';

// Newcombe 1998, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17:857-872,
// table of examples, methods 3 (score) and 5 (exact). From memory; agrees with R to the four digits printed.
test.each([
  [81, 263, [0.2553, 0.3662], [0.2527, 0.3676]],
  [15, 148, [0.0624, 0.1605], [0.0578, 0.1617]],
  [0, 20, [0, 0.1611], [0, 0.1684]],
  [1, 29, [0.0061, 0.1718], [0.0009, 0.1776]],
] as const)('%d of %d', (count, of, wilson, exact) => {
  const rounded = (interval: { lower: number; upper: number } | null): readonly number[] =>
    interval === null ? [] : [interval.lower, interval.upper].map((limit) => Number(limit.toFixed(4)));
  expect(rounded(wilsonInterval(count, of))).toEqual(wilson);
  expect(rounded(clopperPearsonInterval(count, of))).toEqual(exact);
});
