import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyMapping } from '#core/exchange/mapping/applyMapping.ts';
import { guessMapping } from '#core/exchange/mapping/guessMapping.ts';
import { openQuestions } from '#core/exchange/mapping/openQuestions.ts';
import { orderOfDays, readDay } from '#core/exchange/mapping/readDays.ts';
import { readDelimited } from '#core/exchange/mapping/readDelimited.ts';
import { decimalOf, plainNumber, splitUnit, unitInHeader } from '#core/exchange/mapping/readNumbers.ts';
import { savedFor, withSaved } from '#core/exchange/mapping/savedMappings.ts';
import { findHeader, type RawSheet, type Sheet } from '#core/exchange/mapping/sheet.ts';
import { headerWords } from '#core/exchange/mapping/synonyms.ts';
import { leftOut, type SheetMapping } from '#shared/contract/sheets.ts';
import { amountUnits, columns, kinds } from '#shared/entryForms.ts';
import { dayFirst, unitsInHeaders } from './threeSheets.ts';

function sheetOf(text: string): Sheet {
  const raw = readDelimited(Buffer.from(text), 'sheet.csv');
  if (!raw.ok) throw new Error(raw.sentence);
  const found = findHeader(raw.value, 'sheet.csv');
  if (!found.ok) throw new Error(found.sentence);
  return found.value;
}

const text = (typed: string) => ({ type: 'text', text: typed }) as const;
const becomes = (mapping: SheetMapping) => mapping.columns.map((column) => column.becomes);

test('a sheet with semicolons, days day first and decimal commas is read by its own signs', () => {
  const sheet = sheetOf(dayFirst);
  const mapping = guessMapping(sheet, ['sheet.csv']);
  expect(mapping.kind).toBe('inspection');
  expect(becomes(mapping)).toEqual(['date', 'colony', 'frames_bees', 'frames_brood', 'frames_stores', 'queen_seen', 'note']);
  expect(mapping).toMatchObject({ dateOrder: 'day-first', decimal: 'comma', fixed: {} });
  expect(openQuestions(sheet, mapping)).toEqual([]);
  const { rows, aside } = applyMapping(sheet, mapping);
  expect(rows).toEqual([
    { line: 2, cells: { date: '2026-05-02', entry: 'inspection', colony: 'LB-01', frames_bees: '8.5', frames_brood: '4.5', frames_stores: '1.25', queen_seen: 'yes', note: 'ruhig' } },
    { line: 3, cells: { date: '2026-05-17', entry: 'inspection', colony: 'LB-02', frames_bees: '6.0', frames_brood: '3.5', frames_stores: '2', queen_seen: 'no', note: 'stark; Raum geben' } },
    { line: 4, cells: { date: '2026-05-17', entry: 'inspection', colony: 'LB-01', frames_bees: '9.5', frames_brood: '5' } },
  ]);
  expect(aside).toEqual([{ line: 5, column: 'Datum', value: '31/06/2026', sentence: '“31/06/2026” is no day of the calendar with the day first. Mend it in the sheet.' }]);
});

test('frames of bees in any wording are never taken for the bees of a sample', () => {
  for (const header of ['Bees (frames)', 'Bees, frames', 'Frames (bees)', 'Bees in seams']) {
    const sheet = sheetOf(`Checked;Hive;${header};Varroa\n13/4/2026;N-1;6;3\n14/4/2026;N-2;5,5;2\n`);
    for (const kind of [null, ...kinds] as const) expect(becomes(guessMapping(sheet, ['sheet.csv'], kind))[2]).not.toBe('bees');
    expect(becomes(guessMapping(sheet, ['sheet.csv'], 'inspection')).slice(0, 2)).toEqual(['date', 'colony']);
  }
  expect(becomes(guessMapping(sheetOf('Checked;Hive;Bees (frames)\n13/4/2026;N-1;6\n'), ['sheet.csv'], 'inspection'))).toEqual(['date', 'colony', 'frames_bees']);
  expect(becomes(guessMapping(sheetOf('Date;Hive;Mites;Bees\n13/4/2026;N-1;6;300\n'), ['sheet.csv']))).toEqual(['date', 'colony', 'mites', 'bees']);
});

test('units come from the headers, a second one in the row is converted, and what is open is asked', () => {
  const sheet = sheetOf(unitsInHeaders);
  const mapping = guessMapping(sheet, ['honey.csv']);
  expect(mapping.kind).toBe('harvest');
  expect(becomes(mapping)).toEqual(['date', 'yard', 'gross', 'tare', 'moisture', 'lot', null]);
  expect(mapping.columns.map(({ unit }) => unit)).toEqual([null, null, 'kg', 'lb', null, null, null]);
  expect(openQuestions(sheet, mapping).map(({ about, header }) => [about, header])).toEqual([['column', 'Sold to'], ['dates', null]]);
  const decided: SheetMapping = { ...mapping, dateOrder: 'month-first', columns: mapping.columns.map((column) => (column.becomes === null ? { ...column, becomes: leftOut } : column)) };
  expect(openQuestions(sheet, decided)).toEqual([]);
  // 2.2 lb = 997.903214 g (1 lb = 453.59237 g exactly, NIST Handbook 44, appendix C).
  expect(applyMapping(sheet, decided)).toEqual({
    rows: [
      { line: 2, cells: { date: '2026-07-08', entry: 'harvest', yard: 'LB', gross: '23.5', tare: '0.997903', unit: 'kg', moisture: '17.8', lot: 'A1' } },
      { line: 3, cells: { date: '2026-07-09', entry: 'harvest', yard: 'LB', gross: '12', tare: '0.997903', unit: 'kg', moisture: '18', lot: 'A2' } },
    ],
    aside: [],
  });
  const other = applyMapping(sheet, { ...decided, dateOrder: 'day-first' });
  expect(other.rows.map(({ cells }) => cells.date)).toEqual(['2026-08-07', '2026-09-07']);
});

test('honey weighed net has no empty weight; a sample named in the header is the number of bees', () => {
  const honey = sheetOf('Date,Hive,Honey (lb)\n2026-07-08,LB-01,31\n');
  const harvest = guessMapping(honey, []);
  expect(harvest).toMatchObject({ kind: 'harvest', fixed: { tare: '0' } });
  expect(applyMapping(honey, harvest).rows[0]?.cells).toEqual({ date: '2026-07-08', entry: 'harvest', colony: 'LB-01', gross: '31', tare: '0', unit: 'lb' });
  const wash = sheetOf('Date,Hive,Mites per 300 bees\n2026-07-08,LB-01,4\n');
  const mites = guessMapping(wash, []);
  expect(mites).toMatchObject({ kind: 'mites', fixed: { bees: '300' } });
  expect(openQuestions(wash, mites)).toEqual([]);
});

test('a column of kinds gives each row its own, by the form’s word or another for it', () => {
  const sheet = sheetOf('Date,Type,Hive,Reason\n2026-02-14,Died,LB-01,starved\n2026-03-02,Hive check,LB-02,\n2026-03-02,sang,LB-02,\n2026-03-02,lost,LB-03,mites/cold\n2026-03-02,dead,LB-04,queenless\n');
  const mapping = guessMapping(sheet, []);
  expect(mapping.kind).toBeNull();
  expect(becomes(mapping)).toEqual(['date', 'entry', 'colony', 'cause']);
  expect(openQuestions(sheet, mapping)).toEqual([]);
  expect(applyMapping(sheet, mapping).rows.map(({ cells }) => [cells.entry, cells.cause])).toEqual([
    ['loss', 'starvation'], ['inspection', undefined], ['sang', undefined], ['loss', 'mites;cold'], ['loss', 'queen failure'],
  ]);
});

test('a sheet whose words tell nothing is not guessed: the kind and each of its columns are asked', () => {
  const sheet = sheetOf('Alpha,Beta\none,two\nthree,four\n');
  const mapping = guessMapping(sheet, []);
  expect(mapping.kind).toBeNull();
  expect(becomes(mapping)).toEqual([null, null]);
  expect(openQuestions(sheet, mapping).map(({ about }) => about)).toEqual(['kind', 'column', 'column']);
});

test('what no column says is asked, and said once for every row', () => {
  const sheet = sheetOf('Hive,Yard,Queen year\nLB-01,LB,2025\n');
  const mapping = guessMapping(sheet, ['hives']);
  expect(mapping.kind).toBe('install');
  expect(openQuestions(sheet, mapping).map(({ column }) => column)).toEqual(['date', 'origin']);
  const said: SheetMapping = { ...mapping, fixed: { date: '2026-04-01', origin: 'opening' } };
  expect(openQuestions(sheet, said)).toEqual([]);
  expect(applyMapping(sheet, said).rows[0]?.cells).toEqual({ date: '2026-04-01', entry: 'install', origin: 'opening', colony: 'LB-01', yard: 'LB', queen_year: '2025' });
});

test('columns that would become the same, and weights without a unit, are asked', () => {
  const sheet = sheetOf('Date,Hive,Hive id,Weight\n2026-10-01,LB-01,7,61\n');
  const mapping = guessMapping(sheet, ['Hive weights']);
  const twice: SheetMapping = { ...mapping, kind: 'stores', columns: mapping.columns.map((column, at) => ({ ...column, becomes: (['date', 'colony', 'colony', 'weight'] as const)[at] ?? null })) };
  expect(openQuestions(sheet, twice).map(({ about, header }) => [about, header])).toEqual([['twice', 'Hive id'], ['unit', 'Weight']]);
});

test('several columns of remarks become one note that names each', () => {
  const sheet = sheetOf('Date,Hive,Frames of brood,Weather,Remarks\n2026-05-02,LB-01,4,sunny,calm\n2026-05-03,LB-01,4,,calm\n');
  const guessed = guessMapping(sheet, []);
  const mapping: SheetMapping = { ...guessed, columns: guessed.columns.map((column) => (column.header === 'Weather' ? { ...column, becomes: 'note' } : column)) };
  expect(openQuestions(sheet, mapping)).toEqual([]);
  expect(applyMapping(sheet, mapping).rows.map(({ cells }) => cells.note)).toEqual(['Weather: sunny; Remarks: calm', 'calm']);
});

test.each([
  ['2026-05-02', null, '2026-05-02'], ['2.5.2026', null, '2026-05-02'], ['02.05.26', null, '2026-05-02'], ['2 May 2026', null, '2026-05-02'], ['May 2nd, 2026', null, '2026-05-02'], ['2-May-26', null, '2026-05-02'],
  ['20260502', null, '2026-05-02'], ['46144', null, '2026-05-02'], ['46144.75', null, '2026-05-02'], ['2026-05-02 14:30', null, '2026-05-02'], ['5/2/2026 2:30 PM', 'month-first', '2026-05-02'],
  ['5/2/2026', 'month-first', '2026-05-02'], ['5/2/2026', 'day-first', '2026-02-05'], ['5-2-26', 'day-first', '2026-02-05'], ['5/5/2026', null, '2026-05-05'], ['5/2/2026', null, null],
  ['13/13/2026', 'day-first', null], ['2026-02-30', null, null], ['spring', 'day-first', null], ['4.5', null, null],
] as const)('%s, %s, is %s', (typed, order, day) => {
  expect(readDay(text(typed), order)).toBe(day);
});

test.each([
  [['5/18/2026', '5/2/2026'], 'month-first'], [['18/5/2026', '5/2/2026'], 'day-first'], [['5/2/2026', '3/4/2026'], 'either'], [['18/5/2026', '5/18/2026'], 'mixed'],
  [['5/5/2026', '18.5.2026', '2026-01-01'], 'clear'], [['spring'], 'none'],
] as const)('the order of %s is %s', (typed, order) => {
  expect(orderOfDays(typed.map(text))).toBe(order);
});

test.each([
  [['4,5', '1.250,5'], 'comma'], [['4.5', '1,250.5'], 'point'], [['1,250', '3'], 'either'], [['1.250'], 'either'], [['0,250'], 'comma'], [['0.250'], 'point'], [['4,5', '4.5'], 'mixed'], [['1,234,567'], 'point'], [['7', 'many'], 'none'],
] as const)('the decimal sign of %s is %s', (typed, sign) => {
  expect(decimalOf(typed)).toBe(sign);
});

test('figures are brought to a point, thousands and all; what is no figure by the sign said is none', () => {
  expect(['4,5', '1.250,5', '1 250', '7', ',5', '4.5', '4,5 kg'].map((typed) => plainNumber(typed, 'comma'))).toEqual(['4.5', '1250.5', '1250', '7', '.5', null, null]);
  expect(['4.5', '1,250.5', '7.', '4,5', 'ten', ''].map((typed) => plainNumber(typed, 'point'))).toEqual(['4.5', '1250.5', '7', null, null, null]);
  expect(['Honey (kg)', 'Syrup, gallons', 'Weight lbs', 'Feed [L]', 'Label', 'lb or kg'].map(unitInHeader)).toEqual(['kg', 'gal', 'lb', 'l', null, null]);
  expect(splitUnit('12.5 kg')).toEqual({ figure: '12.5', unit: 'kg' });
  expect(splitUnit('12 frames')).toEqual({ figure: '12 frames', unit: null });
});

test('a title, names in two rows, columns without a name and names alike: every filled column gets its own name', () => {
  const sheet = sheetOf('Larch Bend 2026\n\nDate,Hive,Note,Note,\n2026-05-02,LB-01,a,b,c\n');
  expect(sheet).toMatchObject({ headerLine: 3, above: ['Larch Bend 2026'], headers: ['Date', 'Hive', 'Note', 'Note (2)', 'Column E'] });
  expect(sheet.rows).toEqual([{ line: 4, cells: ['2026-05-02', 'LB-01', 'a', 'b', 'c'].map(text) }]);
});

test('lines are counted as the file has them, below a line that names the separator and past breaks in a cell', () => {
  const sheet = sheetOf('sep=;\nDate;Hive;Remarks\n2026-05-02;LB-01;"two\nlines"\n\n2026-05-03;LB-02;x\n');
  expect(sheet.rows.map(({ line }) => line)).toEqual([3, 6]);
});

test('a mapping is kept for the same headers alone, and the newest holds', () => {
  const one = guessMapping(sheetOf(dayFirst), []);
  const two = guessMapping(sheetOf(unitsInHeaders), []);
  const changed: SheetMapping = { ...one, decimal: 'point' };
  const kept = withSaved(withSaved(withSaved(undefined, one), two), changed);
  expect(savedFor(kept, one.columns.map(({ header }) => header))).toEqual(changed);
  expect(savedFor(kept, two.columns.map(({ header }) => header))).toEqual(two);
  expect(savedFor(kept, ['Date'])).toBeNull();
  expect(savedFor('not ours', ['Date'])).toBeNull();
});

const cell = fc.option(
  fc.oneof(
    fc.constantFrom('2026-05-02', '5/2/2026', '17/5/2026', '4,5', '4.5', '1,250', '12 kg', '3 lb', 'yes', 'x', 'LB-01', 'starved', 'inspection', 'Died', 'total', '=A1', '2025'),
    fc.string({ minLength: 1, maxLength: 12 }).map((typed) => typed.trim()).filter((typed) => typed !== ''),
  ).map(text),
  { nil: null, freq: 3 },
);
const anySheet = fc.integer({ min: 1, max: 6 }).chain((width) =>
  fc.record({
    mapping: fc.record({
      kind: fc.option(fc.constantFrom(...kinds)),
      columns: fc.array(fc.record({ becomes: fc.option(fc.constantFrom(...columns, leftOut)), unit: fc.option(fc.constantFrom(...amountUnits)) }), { minLength: width, maxLength: width })
        .map((list) => list.map((column, at) => ({ header: `H${at}`, ...column }))),
      fixed: fc.constantFrom({}, { date: '2026-04-01' }, { unit: 'kg' }, { note: 'spring' }),
      dateOrder: fc.option(fc.constantFrom('month-first', 'day-first')),
      decimal: fc.option(fc.constantFrom('point', 'comma')),
    }),
    rows: fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 8 }),
  }),
);

test('whatever the sheet and the choices: each row comes out once, and no filled cell of a mapped column is dropped', () => {
  fc.assert(
    fc.property(anySheet, ({ mapping, rows }) => {
      const choices = mapping as SheetMapping;
      const sheet: Sheet = { name: 's', headers: choices.columns.map(({ header }) => header), headerLine: 1, above: [], rows: rows.map((cells, at) => ({ line: at + 2, cells })) };
      const read = applyMapping(sheet, choices);
      expect([...read.rows, ...read.aside].map(({ line }) => line).toSorted((a, b) => a - b)).toEqual(sheet.rows.map(({ line }) => line));
      const taken = new Map(read.rows.map((row) => [row.line, row.cells]));
      for (const row of sheet.rows) {
        const cells = taken.get(row.line);
        if (cells === undefined) continue;
        const filled = choices.columns.flatMap(({ becomes: target }, at) => (row.cells[at] != null && target !== null && target !== leftOut ? [{ target, typed: row.cells[at].text }] : []));
        for (const { target, typed } of filled) {
          expect(cells[target] ?? '').not.toBe('');
          if (target === 'note') expect(cells.note).toContain(typed);
        }
        // Two cells never share a column unless it is the note.
        const once = filled.filter(({ target }) => target !== 'note').map(({ target }) => target);
        expect(new Set(once).size).toBe(once.length);
      }
    }),
  );
});

test('every column that is filled is mapped, left out by choice, or asked about', () => {
  const header = fc.constantFrom(...Object.values(headerWords).flat(), 'Weather', 'Colour', 'X7');
  fc.assert(
    fc.property(fc.uniqueArray(header, { minLength: 2, maxLength: 7 }), fc.array(fc.array(cell, { minLength: 7, maxLength: 7 }), { minLength: 1, maxLength: 5 }), (headers, rows) => {
      const raw: RawSheet = { name: 's', rows: [{ line: 1, cells: headers.map(text) }, ...rows.map((cells, at) => ({ line: at + 2, cells: cells.slice(0, headers.length) }))] };
      const found = findHeader(raw, 's');
      if (!found.ok) return;
      const mapping = guessMapping(found.value, []);
      const asked = new Set(openQuestions(found.value, mapping).flatMap(({ about, header: name }) => (about === 'column' ? [name] : [])));
      mapping.columns.forEach(({ header: name, becomes: target }, at) => {
        const filled = found.value.rows.some((row) => row.cells[at] != null);
        expect(target !== leftOut).toBe(true);
        expect(target !== null || !filled || asked.has(name)).toBe(true);
      });
    }),
  );
});
