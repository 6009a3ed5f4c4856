import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { standingRows, type DemoOperation } from '#core/demo/demoOperation.ts';
import { ossarSeed } from '#core/demo/ossarPlan.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { enterActByAct, misplacedActs, repeatedRows, stockShortages } from './operationChecks.ts';

const operation = ossarValley();
const rows = standingRows(operation);

function fingerprint(of: DemoOperation): string {
  return createHash('sha256').update(JSON.stringify(of)).digest('hex');
}

describe('the Ossar Valley book', () => {
  test('is the same to the byte for the same seed, and another one for another seed', () => {
    expect(fingerprint(ossarValley(ossarSeed))).toBe(fingerprint(operation));
    // Every machine makes this book. The number changes only when the generator is meant to tell another story.
    expect(fingerprint(operation)).toBe('1e16b4e5f8c323207d18f530bc272561d450b34b20d2a0b49350e51df0effe74');
    expect(fingerprint(ossarValley(ossarSeed + 1))).not.toBe(fingerprint(operation));
  });

  test('has some nine thousand rows, ends on its last day and is made in under a second', () => {
    expect(rows.length).toBeGreaterThan(8000);
    expect(rows.length).toBeLessThan(14_000);
    expect(operation.lastDay).toBe('2026-11-25');
    expect(operation.acts.at(-1)?.at.slice(0, 10)).toBe('2026-11-25');
    expect(rows.reduce((first, row) => ((row.date ?? '') < first ? (row.date ?? '') : first), '9')).toMatch(/^2021-04-/);
    // The best of three: what else the machine does is not the generator's time.
    const times = [1, 2, 3].map(() => {
      const started = performance.now();
      ossarValley(ossarSeed);
      return performance.now() - started;
    });
    expect(Math.min(...times)).toBeLessThan(1000);
  });

  test('can be entered act by act: nothing contradicts the record at any time', () => {
    expect(enterActByAct(operation).faults).toEqual([]);
  });

  test('can be entered as one file: nothing contradicts the record, no row is twice there', () => {
    const { faults } = enterActByAct({ ...operation, acts: [{ at: '2026-11-25 21:00', title: 'all', rows }] });
    expect(faults).toEqual([]);
    expect(repeatedRows(rows)).toEqual([]);
  });

  test('was entered in rising time, and nothing before it happened', () => {
    expect(misplacedActs(operation)).toEqual([]);
  });

  test('never takes more equipment from a place than is there', () => {
    expect(stockShortages(rows)).toEqual([]);
  });

  test('begins every yard with an install, so that the file alone can make the book', () => {
    const known = new Set<string>();
    const unknown: string[] = [];
    for (const row of rows.toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : (a.date ?? '') > (b.date ?? '') ? 1 : 0))) {
      if (row.entry === 'install') known.add(row.yard ?? '');
      for (const place of [row.yard, row.to_yard, row.from, row.to]) {
        if (place !== undefined && !['shed', 'supplier', 'scrap'].includes(place) && !known.has(place)) unknown.push(`${row.date} ${row.entry} ${place}`);
      }
    }
    expect(unknown).toEqual([]);
    expect([...known].sort()).toEqual(operation.yards.map((yard) => yard.code).sort());
  });

  test('keeps each act within what the desk takes at once', () => {
    expect(Math.max(...operation.acts.map((act) => ('rows' in act ? act.rows.length : 1)))).toBeLessThanOrEqual(2000);
    expect(Math.min(...operation.acts.map((act) => ('rows' in act ? act.rows.length : 1)))).toBeGreaterThan(0);
  });

  test.each([1, 2, 77, 1234, 99_999])('stands under every rule for seed %i too', (seed) => {
    const other = ossarValley(seed);
    const standing = standingRows(other);
    expect(enterActByAct(other).faults).toEqual([]);
    expect(repeatedRows(standing)).toEqual([]);
    expect(stockShortages(standing)).toEqual([]);
    expect(misplacedActs(other)).toEqual([]);
  });
});
