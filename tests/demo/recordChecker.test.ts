import { describe, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { repeatedRows, stockShortages } from './operationChecks.ts';
import { RecordChecker } from './recordChecker.ts';

const hived: Cells = { date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'QY-01', origin: 'package' };
const other: Cells = { ...hived, colony: 'QY-02' };
const lost: Cells = { date: '2025-01-10', entry: 'loss', yard: 'QY', colony: 'QY-01', cause: 'mites' };

/** The demo tests rest on this checker, so it is shown here that it does find each kind of fault. */
describe('the checker of rows', () => {
  test.each<[string, Cells[], RegExp]>([
    ['a label alive twice', [hived, { ...hived, date: '2024-05-01' }], /label is alive/],
    ['a split into a living label', [hived, other, { date: '2024-06-01', entry: 'split', yard: 'QY', colony: 'QY-01', new_colony: 'QY-02' }], /label is alive/],
    ['a look after death', [hived, lost, { date: '2025-01-11', entry: 'inspection', yard: 'QY', colony: 'QY-01' }], /not alive/],
    ['a look before the start, entered later', [hived, { date: '2024-04-19', entry: 'inspection', yard: 'QY', colony: 'QY-01' }], /not alive/],
    ['an end twice', [hived, lost, { ...lost, date: '2025-02-01', cause: 'cold' }], /not alive/],
    ['a combine into a dead colony', [hived, other, lost, { date: '2025-02-01', entry: 'combine', yard: 'QY', colony: 'QY-02', into: 'QY-01' }], /not alive/],
    ['a combine into itself', [hived, { date: '2024-09-01', entry: 'combine', yard: 'QY', colony: 'QY-01', into: 'QY-01' }], /itself/],
    ['more supers off than on', [hived, { date: '2024-07-01', entry: 'supers on', yard: 'QY', colony: 'QY-01', box: 'medium', count: '1' }, { date: '2024-08-01', entry: 'supers off', yard: 'QY', colony: 'QY-01', box: 'medium', count: '2' }], /more off/],
    ['a colony in another yard', [hived, { date: '2024-07-01', entry: 'inspection', yard: 'KF', colony: 'QY-01' }], /stands in QY/],
    ['a cell that the kind has not', [{ ...hived, mites: '3' }], /not for this kind/],
    ['a missing cell', [{ date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'QY-01' }], /origin is missing/],
    ['a number below zero', [hived, { date: '2024-08-20', entry: 'mites', yard: 'QY', colony: 'QY-01', mites: '-1', bees: '300' }], /mites reads/],
    ['an unknown cause', [hived, { ...lost, cause: 'boredom' }], /cause reads/],
    ['a bad date', [{ ...hived, date: '2024-02-30' }], /bad date/],
  ])('finds %s', (_what, rows, fault) => {
    expect(new RecordChecker().enter(rows).join('\n')).toMatch(fault);
  });

  test('lets a label be used again after its colony ended, and an end be struck and dated anew', () => {
    const checker = new RecordChecker();
    expect(checker.enter([hived, lost, { ...hived, date: '2025-04-26' }])).toEqual([]);
    expect(checker.strike(lost)).not.toEqual([]);
    expect(checker.enter([{ ...lost, cause: 'cold' }])).toEqual([]);
    expect(checker.lives().map(({ start, end, how }) => ({ start, end, how }))).toEqual([
      { start: '2024-04-20', end: '2025-01-10', how: 'lost' },
      { start: '2025-04-26', end: null, how: 'alive' },
    ]);
  });

  test('finds rows that repeat and a shed that would be empty', () => {
    expect(repeatedRows([hived, other, { ...hived }])).toHaveLength(1);
    const out: Cells = { date: '2024-04-20', entry: 'stock', item: 'deep box', quantity: '2', from: 'shed', to: 'QY' };
    expect(stockShortages([{ ...out, from: 'supplier', to: 'shed', quantity: '1' }, out])).toEqual(['2024-04-20: shed deep box at -1']);
  });
});
