import fc from 'fast-check';
import { expect, test } from 'vitest';
import { additiveFit, type TwoWayRow } from '#core/stats/additiveFit.ts';

// Snedecor and Cochran, Statistical Methods, randomized blocks: soybean seeds that failed of 100, five treatments in five
// replications; sums of squares 83.84 and 86.56, F 3.87 (from memory; the same by arithmetic on the values).
test('five treatments in five blocks', () => {
  const values = { check: [8, 10, 12, 13, 11], arasan: [2, 6, 7, 11, 5], spergon: [4, 10, 9, 8, 10], semesan: [3, 5, 9, 10, 6], fermate: [9, 7, 5, 5, 3] };
  const fit = additiveFit(Object.entries(values).flatMap(([group, own]) => own.map((value, at) => ({ group, block: String(at), value }))));
  expect(fit.test).toMatchObject({ df1: 4, df2: 16 });
  expect(fit.test?.F).toBeCloseTo(83.84 / 4 / (86.56 / 16), 9);
  expect(fit.test?.F).toBeCloseTo(3.87, 2);
  expect(fit.test?.p).toBeGreaterThan(0.01);
  expect(fit.test?.p).toBeLessThan(0.05);
});

const cell = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 4 }), fc.double({ min: -50, max: 50, noNaN: true }));
const rowsOf = (cells: readonly [number, number, number][]): TwoWayRow[] => cells.map(([group, block, value]) => ({ group: `g${group}`, block: `b${block}`, value }));
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

test('the residuals add to nought in every group and every block, which is what least squares means; no row is lost', () => {
  fc.assert(
    fc.property(fc.array(cell, { maxLength: 60 }), (cells) => {
      const rows = rowsOf(cells);
      const fit = additiveFit(rows);
      expect(fit.rows.length + fit.left.length).toBe(rows.length);
      const means = new Map([...Map.groupBy(fit.rows, ({ row }) => row.group)].map(([group, own]) => [group, mean(own.map(({ value }) => value))]));
      const residuals = fit.rows.map(({ row, value }) => ({ row, rest: value - (means.get(row.group) ?? NaN) }));
      for (const by of ['group', 'block'] as const) for (const own of Map.groupBy(residuals, ({ row }) => row[by]).values()) expect(Math.abs(own.reduce((sum, { rest }) => sum + rest, 0))).toBeLessThan(1e-6);
      if (fit.rows.length > 0) expect(mean(fit.rows.map(({ value }) => value))).toBeCloseTo(mean(fit.rows.map(({ row }) => row.value)), 6);
    }),
  );
});

test('a good or a bad year changes nothing of how groups compare', () => {
  fc.assert(
    fc.property(fc.array(cell, { minLength: 2, maxLength: 60 }), fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 5, maxLength: 5 }), (cells, shifts) => {
      const gaps = (fit: ReturnType<typeof additiveFit>) => {
        const means = [...Map.groupBy(fit.rows, ({ row }) => row.group)].map(([group, own]): [string, number] => [group, mean(own.map(({ value }) => value))]);
        const base = means[0]?.[1] ?? 0;
        return new Map(means.map(([group, value]) => [group, value - base]));
      };
      const plain = gaps(additiveFit(rowsOf(cells)));
      const shifted = gaps(additiveFit(rowsOf(cells.map(([group, block, value]) => [group, block, value + (shifts[block] ?? 0)]))));
      for (const [group, gap] of plain) expect(shifted.get(group)).toBeCloseTo(gap, 5);
    }),
  );
});

test('a year with one group alone, and years that no group ties together, are left out', () => {
  const fit = additiveFit([
    { group: 'a', block: '2021', value: 10 }, { group: 'b', block: '2021', value: 20 }, { group: 'a', block: '2022', value: 12 }, { group: 'b', block: '2022', value: 22 },
    { group: 'a', block: '2023', value: 99 }, { group: 'c', block: '2020', value: 5 }, { group: 'd', block: '2020', value: 6 },
  ]);
  expect(fit.left.map(({ block }) => block).toSorted()).toEqual(['2020', '2020', '2023']);
  expect(fit.test).toBeNull();
});

// R 4.2.2, anova(lm(v ~ b + g)) and coef of it on these thirteen values, two of a cell and six cells empty.
test('with cells missing, as a reference library has it', () => {
  const [groups, blocks] = ['aaabbccccabdd', '1231223344414'];
  const fit = additiveFit([41, 52, 30, 60, 66, 38, 25, 29, 47, 50, 71, 33, 44].map((value, at) => ({ group: groups[at] ?? '', block: blocks[at] ?? '', value })));
  expect(fit.test).toMatchObject({ df1: 3, df2: 6 });
  expect(fit.test?.F).toBeCloseTo(46.47785, 5);
  expect(fit.test?.p).toBeCloseTo(0.00015121, 8);
  const effect = (block: string) => (fit.blocks.get(block) ?? NaN) - (fit.blocks.get('1') ?? NaN);
  for (const [block, want] of [['2', 6.7634194831], ['3', -8.90258449304], ['4', 10.7972166998]] as const) expect(effect(block)).toBeCloseTo(want, 9);
});
