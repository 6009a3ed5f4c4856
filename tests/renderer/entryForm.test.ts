import { describe, expect, test } from 'vitest';
import { columns, entryForms, fields, kinds, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import { refuse } from '#shared/faults.ts';
import { strangeIn } from '#shared/ordinary.ts';
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
  expect(refused('harvest', { gross: '12', tare: '1', unit: 'lb', moisture: '170 %' })).toBe('“170” is above 40, the most that makes sense: honey has some 13 to 23 %, and its refractometers read 12 to 27 %.');
  expect(refused('stores', { weight: 'heavy', unit: 'lb' })).toBe('“heavy” is not a number. Write digits only, as 4.5.');
});

/** A row of each kind that asks for the column, right in all else; figures that limit each other are as large as they may be. */
function around(column: Column): { kind: Kind; cells: Cells } {
  const kind = kinds.find((one) => entryForms[one].must.includes(column) || entryForms[one].may.includes(column));
  if (kind === undefined) throw new Error(`no kind has ${column}`);
  const right: Cells = {
    yard: 'QY', colony: 'QY-01', origin: 'nuc', new_colony: 'QY-02', into: 'QY-03', to_yard: 'LB', what: 'seen', mites: '3', bees: '300', active_ingredient: 'thymol', feed: 'fondant', box: 'deep', count: '1',
    gross: '200000', tare: '0', unit: 'lb', weight: '40', item: 'sugar', from: 'supplier', to: 'shed', quantity: '1',
  };
  const cells: Cells = { date: '2026-05-01', entry: kind };
  for (const must of entryForms[kind].must) cells[must] = right[must] ?? 'x';
  if (column === 'amount' || column === 'gross' || column === 'weight') cells.unit = 'lb';
  if (kind === 'harvest') cells.yard = 'QY';
  if (column === 'mites') cells.bees = '100000';
  if (column === 'bees') cells.mites = '0';
  if (column === 'quantity') cells.item = 'sugar';
  if (column === 'hours') cells.people = '100';
  if (column === 'people') cells.hours = '1';
  if (column === 'price' && kind !== 'install') cells.item = 'sugar';
  return { kind, cells };
}

const numeric = columns.filter((column): column is Exclude<Column, 'date' | 'entry'> => column !== 'date' && column !== 'entry' && ['number', 'money', 'year'].includes(fields[column].type));
const plain = (value: number) => value.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 6 });

describe.each(numeric)('%s', (column) => {
  const { kind, cells } = around(column);
  const file = (typed: string) => readRow({ ...cells, [column]: typed }, 'month-first');
  const form = (typed: string) => readRow(rowOf(kind, { ...cells, [column]: typed }), 'month-first');
  const says = (typed: string, read = file) => {
    const reading = read(typed);
    if (reading.ok) throw new Error(`“${typed}” was taken as ${JSON.stringify(reading.row.values[column])}`);
    expect(reading.trouble.column).toBe(column);
    return reading.trouble.sentence;
  };
  const field = fields[column];
  const limits = field.type === 'number' ? field : field.type === 'money' ? { min: 0, max: 10_000_000, whole: false } : { min: 2016, max: 2026, whole: true };

  test('takes its least and its most, and nothing beyond them', () => {
    for (const read of [file, form]) {
      for (const typed of [limits.min, limits.max]) expect(read(plain(typed)), plain(typed)).toMatchObject({ ok: true });
      if (limits.min > 0) expect(says(plain(limits.min - 1), read)).toMatch(/\.$/);
      const beyond = says(plain(limits.max + 1), read);
      if (field.type !== 'year') expect(beyond).toContain(`${limits.max.toLocaleString('en-US')}, the most that makes sense`);
      expect(says('99999999', read)).toMatch(/\.$/);
      expect(says('99999999999999999999999999', read)).toMatch(/\.$/);
      expect(says('-1', read)).toMatch(/\.$/);
      if (limits.whole === true) expect(says(plain(limits.min + 0.5), read)).toMatch(/\.$/);
    }
  });

  test('says of each way of writing that it does not read how it would be written', () => {
    if (field.type === 'year') return expect(['1e9', '2,025', '２０２５', '20/25', '25'].map((typed) => says(typed)).every((sentence) => sentence.endsWith('is no year. Write four digits, as 2025.'))).toBe(true);
    for (const read of [file, form]) {
      expect(says('1e9', read)).toBe('“1e9” is written in powers of ten. Write it out in digits, as 1200.');
      expect(says('1/2', read)).toBe('“1/2” is a fraction. Write it with a point, as 0.5.');
      expect(says('2 1/2', read)).toBe('“2 1/2” is a fraction. Write it with a point, as 2.5.');
      expect(says('2½', read)).toBe('“2½” is a fraction. Write it with a point, as 2.5.');
      expect(says('１２', read)).toBe('“１２” has digits of another writing. Write it with the digits 0 to 9, as 12.');
      for (const typed of ['1.2.3', 'NaN', 'Infinity', '0x10', 'many', '1 2', '--3', '1/0']) expect(says(typed, read), typed).toMatch(/\.$/);
    }
    expect(says('1,5')).toBe('“1,5” has a decimal comma. Write a point, as 1.5.');
    expect(says('1,000')).toBe('“1,000” has a comma, which can part thousands or decimals. Write 1000, or 1.000.');
    expect(says('1,000,000')).toBe('“1,000,000” has commas between its thousands. Write it without them, as 1000000.');
    expect(says('=1+1')).toContain('spreadsheet formula');
    // By hand the comma is read as it is in this language; what it becomes keeps to the limits.
    const [comma, grouped] = [form('1,5'), form('1,000')];
    if (limits.whole === true || limits.min > 1) expect(comma.ok).toBe(false);
    else expect(comma).toEqual(file('1.5'));
    if (column !== 'moisture') expect(grouped.ok ? grouped : grouped.trouble.sentence).toEqual((({ ...found }) => (found.ok ? found : found.trouble.sentence))(file('1000')));
  });
});

test('what is possible and unlikely is asked about, not refused', () => {
  const asked = (cells: Cells) => strangeIn({ date: '2026-05-01', ...cells }).map(({ column }) => column);
  expect(asked({ mites: '70', bees: '300' })).toEqual(['mites']);
  expect(asked({ mites: '3', bees: '3000' })).toEqual(['bees']);
  expect(asked({ mites: '301', bees: '300' })).toEqual([]);
  expect(asked({ colony: 'QY-01', gross: '600', tare: '20', unit: 'lb' })).toEqual(['gross']);
  expect(asked({ yard: 'QY', gross: '600', tare: '20', unit: 'lb' })).toEqual([]);
  expect(asked({ amount: '21', unit: 'kg' })).toEqual([]);
  expect(asked({ amount: '23', unit: 'kg' })).toEqual(['amount']);
  expect(asked({ queen_year: '2021' })).toEqual([]);
  expect(asked({ queen_year: '2020' })).toEqual(['queen_year']);
  expect(asked({ hours: '17', people: '13', miles: '301', count: '6', frames_bees: '21', frames_brood: '11', frames_stores: '21', weight: '151', unit: 'lb', price: '20001', quantity: '5001' })).toEqual([
    'frames_bees', 'frames_brood', 'frames_stores', 'count', 'weight', 'hours', 'people', 'miles', 'price', 'quantity',
  ]);
  // What is impossible is refused, not asked about.
  expect(asked({ moisture: '60', frames_bees: '101', bees: '200000', people: '101' })).toEqual([]);
  expect(asked({ quantity: '0', note: 'counted 4, the book had 4' })).toEqual([]);
});

test('the water of honey: asked about above the standard, refused above what honey can have', () => {
  const water = (moisture: string) => {
    const row: Cells = { date: '2026-07-20', entry: 'harvest', yard: 'QY', gross: '60', tare: '10', unit: 'lb', moisture };
    const read = readRow(row, 'month-first');
    return read.ok ? (strangeIn(row)[0]?.sentence ?? 'taken') : read.trouble.sentence;
  };
  expect(water('60')).toBe('“60” is above 40, the most that makes sense: honey has some 13 to 23 %, and its refractometers read 12 to 27 %.');
  expect(water('0')).toBe('“0” is below 10, the least that makes sense: honey has some 13 to 23 %, and its refractometers read 12 to 27 %.');
  expect(water('20')).toBe('taken');
  expect(water('22.5')).toBe('22.5\u00a0% water is above the standard: 20\u00a0% by the Codex; heather honey may have 23\u00a0%.');
  expect(water('25')).toBe('25\u00a0% water is far above the standard: 20\u00a0% by the Codex, 23\u00a0% for heather honey. It is likely to ferment.');
  expect(water('13.9')).toBe('13.9\u00a0% water is very dry for honey.');
});

test('more hours than the day has, a queen above every age, and more mites than bees are refused with what is wrong', () => {
  const sentence = (row: Cells) => {
    const read = readRow({ date: '2026-05-01', ...row }, 'month-first');
    return read.ok ? null : read.trouble.sentence;
  };
  expect(sentence({ entry: 'work', hours: '999' })).toBe('999 hours are more than a day has for one person. Enter each day by itself, or say how many people worked.');
  expect(sentence({ entry: 'work', hours: '49', people: '2' })).toBe('49 hours are more than a day has for 2 people. Enter each day by itself.');
  expect(sentence({ entry: 'work', hours: '48', people: '2' })).toBeNull();
  expect(sentence({ entry: 'requeen', colony: 'A', queen_year: '2015' })).toBe('A queen that hatched in 2015 would be 11 years old on 1 May 2026; none lives above 10. Check the year or the date.');
  expect(sentence({ entry: 'mites', colony: 'A', mites: '301', bees: '300' })).toContain('301 mites in a sample of 300 bees');
});
