import { describe, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { standingRows } from '#core/demo/demoOperation.ts';
import { largeOperation, largeOperationRows } from '#core/demo/largeOperation.ts';
import { tinyYard } from '#core/demo/tinyYard.ts';
import { enterActByAct, misplacedActs, repeatedRows, stockShortages } from './operationChecks.ts';
import { RecordChecker } from './recordChecker.ts';

describe('the tiny yard', () => {
  const tiny = tinyYard();
  const rows = standingRows(tiny);

  test('is one yard with five colonies and one season, of which two were lost in winter', () => {
    const { faults, checker } = enterActByAct(tiny);
    expect(faults).toEqual([]);
    expect(tiny.yards).toHaveLength(1);
    expect(checker.lives().map(({ label, end, how }) => ({ label, end, how }))).toEqual([
      { label: 'H-1', end: null, how: 'alive' },
      { label: 'H-2', end: '2026-03-07', how: 'lost' },
      { label: 'H-3', end: '2026-01-17', how: 'lost' },
      { label: 'H-4', end: null, how: 'alive' },
      { label: 'H-5', end: null, how: 'alive' },
    ]);
  });

  test('is in order: rising acts, no repeats, no empty shed, dates within the season', () => {
    expect(misplacedActs(tiny)).toEqual([]);
    expect(repeatedRows(rows)).toEqual([]);
    expect(stockShortages(rows)).toEqual([]);
    expect(rows.every((row) => (row.date ?? '') >= '2025-04-01' && (row.date ?? '') <= '2026-03-31')).toBe(true);
  });
});

describe('an operation of any size', () => {
  test('stands under every rule, rising in date, with about twelve rows a place and season', () => {
    const small = largeOperation({ seed: 5, colonies: 230, seasons: 4 });
    const rows = standingRows(small);
    expect(enterActByAct(small).faults).toEqual([]);
    expect(misplacedActs(small)).toEqual([]);
    expect(repeatedRows(rows)).toEqual([]);
    expect(rows.every((row, place) => place === 0 || (rows[place - 1]?.date ?? '') <= (row.date ?? ''))).toBe(true);
    expect(rows.length / (230 * 4)).toBeGreaterThan(11);
    expect(rows.length / (230 * 4)).toBeLessThan(13);
  });

  test('is the same for the same seed, whole or row by row, and as long as asked', () => {
    const size = { seed: 9, colonies: 60, seasons: 2 };
    expect([...largeOperationRows(size)]).toEqual(standingRows(largeOperation(size)));
    expect([...largeOperationRows({ ...size, seed: 10 })]).not.toEqual([...largeOperationRows(size)]);
    const checker = new RecordChecker();
    checker.enter([...largeOperationRows({ seed: 9, colonies: 61, seasons: 1 })]);
    expect(new Set(checker.lives().map((life) => life.label)).size).toBe(61);
  });

  test('gives 1.2 million rows for 10,000 colonies and 10 seasons without holding them', () => {
    let count = 0;
    let last: Cells = {};
    for (const row of largeOperationRows({ seed: 1, colonies: 10_000, seasons: 10 })) {
      count += 1;
      last = row;
    }
    expect(count).toBeGreaterThan(1_150_000);
    expect(count).toBeLessThan(1_250_000);
    expect(last.date).toMatch(/^2026-0[23]-/);
  });
});
