import { expect, test } from 'vitest';
import { columns, entryForms, kinds, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import { refuse } from '#shared/faults.ts';
import { readRow } from '#core/journal/readRow.ts';
import { cellsAsKind, columnsOf, freshCells, nextCells, rowOf, unitsOf } from '../../renderer/parts/entryColumns.ts';
import { readDraft, refusalsOf } from '../../renderer/parts/entryRefusals.ts';

test.each(kinds)('%s: every needed column is asked for first, none twice, the note last', (kind) => {
  const asked = columnsOf(kind);
  expect(asked.slice(0, entryForms[kind].must.length)).toEqual(entryForms[kind].must);
  expect(new Set(asked).size).toBe(asked.length);
  expect(asked).toContain('note');
  if (kind !== 'note') expect(asked.at(-1)).toBe('note');
  const allowed: readonly Column[] = [...entryForms[kind].must, ...entryForms[kind].may, 'note'];
  for (const column of asked) expect(allowed).toContain(column);
});

test('only what the kind knows is sent', () => {
  const everything = Object.fromEntries(columns.map((column) => [column, 'x']));
  const row = rowOf('loss', { ...everything, date: '2026-02-11', note: '  ' });
  expect(row).toEqual({ date: '2026-02-11', entry: 'loss', colony: 'x', cause: 'x' });
});

test('the next record keeps where and when, not which', () => {
  expect(freshCells('harvest', 'kg')).toEqual({ unit: 'kg' });
  const typed = { date: '2026-04-24', yard: 'LB', colony: 'LB-01', origin: 'package', price: '174', note: 'calm' };
  expect(nextCells('install', typed, 'lb')).toEqual({ date: '2026-04-24', yard: 'LB', origin: 'package' });
});

test('the unit of a feed does not stay when a weight is asked for, nor the other way round', () => {
  const fed = { date: '2026-11-25', amount: '2', unit: 'gal' };
  expect(cellsAsKind('stores', 'feed', fed, 'lb')).toEqual({ date: '2026-11-25', amount: '2', unit: 'lb' });
  expect(cellsAsKind('feed', 'stores', { weight: '45', unit: 'lb' }, 'lb')).toEqual({ weight: '45' });
  expect(cellsAsKind('harvest', 'stores', { weight: '45', unit: 'kg' }, 'lb')).toEqual({ weight: '45', unit: 'kg' });
  expect(cellsAsKind('stores', 'note', cellsAsKind('note', 'feed', fed, 'kg'), 'kg')).toMatchObject({ unit: 'kg' });
  expect([unitsOf('stores'), unitsOf('harvest'), unitsOf('feed')]).toEqual([['lb', 'kg'], ['lb', 'kg'], ['gal', 'l', 'lb', 'kg']]);
});

test('each refusal stands at its field, with the colony where there are several', () => {
  const rows = [{ colony: 'LB-01' }, { colony: 'LB-02' }];
  const fault = refuse('refused', 'Nothing was entered.', {
    rows: [
      { line: 0, column: 'colony', value: 'LB-01', sentence: 'It is alive already.' },
      { line: 1, column: 'colony', value: 'LB-02', sentence: 'It is alive already.' },
      { line: 1, column: 'date', value: '', sentence: 'Later than today.' },
    ],
  });
  const found = refusalsOf(fault, rows, 'install');
  expect(found.byColumn).toEqual({ colony: 'It is alive already.', date: 'LB-02: Later than today.' });
  expect(found.rest).toBeUndefined();
  expect(found.first).toBe('colony');
  // What is wrong with all of them is said once.
  const each = { column: 'date', value: '', sentence: 'Later than today.' } as const;
  expect(refusalsOf(refuse('refused', 'Nothing was entered.', { rows: [{ line: 0, ...each }, { line: 1, ...each }] }), rows, 'install').byColumn).toEqual({ date: 'Later than today.' });
});

test('a refusal that names no field of the form, or no row at all, is still said', () => {
  const elsewhere = refuse('refused', 'Nothing was entered.', { rows: [{ line: 0, column: 'yard', value: 'LB', sentence: 'It stands elsewhere.' }] });
  expect(refusalsOf(elsewhere, [{ colony: 'LB-01' }], 'loss').rest?.sentence).toBe('It stands elsewhere.');
  const whole = refuse('disk-full', 'The disk is full.');
  expect(refusalsOf(whole, [{}], 'loss').rest).toBe(whole);
});

test('a kept draft comes back; a damaged one does not', () => {
  expect(readDraft('{"kind":"loss","cells":{"date":"2026-02-11","cause":"mites","colour":"pink","bees":7}}')).toEqual({
    kind: 'loss',
    cells: { date: '2026-02-11', cause: 'mites' },
  });
  for (const body of ['', '{', 'null', '{"kind":"dance","cells":{}}', '{"kind":"loss","cells":null}', '[]']) expect(readDraft(body), body).toBeNull();
});

test('a number is sent as the desk reads it: decimal comma, thousands, its own unit left away, another one turned into it', () => {
  const sent = (kind: Kind, cells: Cells) => {
    const { date: _date, entry: _entry, colony: _colony, ...rest } = rowOf(kind, { date: '2026-02-11', colony: 'A', ...cells });
    return rest;
  };
  expect(sent('inspection', { frames_bees: '8,5', frames_brood: '4 frames' })).toEqual({ frames_bees: '8.5', frames_brood: '4' });
  expect(sent('mites', { mites: '9 mites', bees: '300 bees' })).toEqual({ mites: '9', bees: '300' });
  // A weight alone brings its unit; several are turned into the one that is chosen (1 kg is 1000/453.59237 lb: exact).
  expect(sent('stores', { weight: '45 kg', unit: 'lb' })).toEqual({ weight: '45', unit: 'kg' });
  expect(sent('harvest', { gross: '45.359237 kg', tare: '10', unit: 'lb', moisture: '17,5 %' })).toEqual({ gross: '100', tare: '10', unit: 'lb', moisture: '17.5' });
  expect(sent('feed', { feed: 'syrup 2:1', amount: '2 gal' })).toEqual({ feed: 'syrup 2:1', amount: '2', unit: 'gal' });
  expect(sent('install', { yard: 'LB', origin: 'nuc', price: '$1,174.50' })).toEqual({ yard: 'LB', origin: 'nuc', price: '1174.5' });
  expect(sent('work', { hours: '90 min', miles: '12 mi' })).toEqual({ hours: '1.5', miles: '12' });
  // What is no number, and what is of another kind, goes as typed and is refused for what it is.
  expect(sent('stores', { weight: 'heavy', unit: 'lb' })).toEqual({ weight: 'heavy', unit: 'lb' });
  expect(sent('harvest', { gross: '12 gal', tare: '1', unit: 'lb' })).toEqual({ gross: '12 gal', tare: '1', unit: 'lb' });
  const refused = (kind: Kind, cells: Cells) => {
    const read = readRow(rowOf(kind, { date: '2026-02-11', colony: 'A', ...cells }), 'month-first');
    return read.ok ? null : read.trouble.sentence;
  };
  expect(refused('harvest', { gross: '12 gal', tare: '1', unit: 'lb' })).toBe('“12 gal” has a unit with it. Write the figure alone, in the unit beside it.');
  expect(refused('harvest', { gross: '12', tare: '1', unit: 'lb', moisture: '17 lb' })).toBe('“17 lb” has a unit with it. Write the figure alone, in per cent.');
  expect(refused('harvest', { gross: '12', tare: '1', unit: 'lb', moisture: '170 %' })).toBe('“170” is above 100, the most that makes sense.');
  expect(refused('stores', { weight: 'heavy', unit: 'lb' })).toBe('“heavy” is not a number. Write digits only, as 4.5.');
});
