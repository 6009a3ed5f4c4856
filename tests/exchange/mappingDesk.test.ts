import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { leftOut, type SheetMapping } from '#shared/contract/sheets.ts';
import { day } from '#shared/days.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { dayFirst, unitsInHeaders, workbook } from './threeSheets.ts';
import { xlsxFile, zipFile } from './xlsxFile.ts';

let folder: string;
let desk: Desk;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'outyard-sheets-'));
  desk = createDesk({ folder, program: 'tests', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 20:00' }), log: () => undefined });
  await ask('book.create', { name: 'Larch Bend' });
});
afterEach(async () => {
  await desk.close();
  await rm(folder, { recursive: true });
});

const call = async <Name extends OperationName>(name: Name, input: InputOf<Name>) => (await desk.call(name, input)) as Answer<OutputOf<Name>>;
async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  return answer.value;
}
async function faultOf<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<Fault> {
  const answer = await call(name, input);
  if (answer.ok) throw new Error(`${name} was not refused`);
  return answer;
}
const fileOf = (name: string, content: Buffer | string) => ({ name, base64: Buffer.from(content).toString('base64') });
const leaveOut = (mapping: SheetMapping, ...headers: string[]): SheetMapping => ({ ...mapping, columns: mapping.columns.map((column) => (headers.includes(column.header) ? { ...column, becomes: leftOut } : column)) });

async function bringIn(file: ReturnType<typeof fileOf>, sheet: string, mapping: SheetMapping) {
  const seen = await ask('sheets.preview', { file, sheet, mapping });
  return ask('sheets.enter', { file, sheet, mapping, sha256: seen.sha256, position: seen.position });
}

test('a workbook is brought in sheet by sheet; each is one step that Undo takes back, and the second time all are repeats', async () => {
  const file = fileOf('bees.xlsx', workbook());
  const look = await ask('sheets.look', { file });
  expect(look).toMatchObject({ sheet: 'Hive list', headerLine: 2, above: ['Larch Bend, all hives'], questions: [], origin: 'guessed', days: 'clear' });
  expect(look.sheets).toEqual([{ name: 'Hive list', rows: 3, problem: null }, { name: 'Inspections', rows: 2, problem: null }, { name: 'Empty', rows: 0, problem: 'The sheet “Empty” is empty.' }]);
  expect(look.sample.map(({ line, cells, trouble }) => [line, cells, trouble])).toEqual([
    [3, { date: '2026-04-24', entry: 'install', yard: 'Larch Bend', colony: 'LB-01', origin: 'package', queen_year: '2026' }, null],
    [4, { date: '2026-04-24', entry: 'install', yard: 'Larch Bend', colony: 'LB-02', origin: 'nuc', queen_year: '2025' }, null],
    [5, { date: '2026-04-24', entry: 'install', yard: 'Larch Bend', colony: '3', origin: 'nuc' }, null],
  ]);
  expect(await bringIn(file, 'Hive list', look.mapping)).toMatchObject({ file: 'bees.xlsx, Hive list', read: 3, entered: 3, repeats: 0, toSortOut: [], living: 3, newYards: ['Larch Bend'] });

  const second = await ask('sheets.look', { file, sheet: 'Inspections' });
  expect(second.columns.map(({ header }) => header)).toEqual(['Date', 'Hive', 'Frames of bees', 'Frames of brood', 'Frames of stores', 'Queen seen', 'Weather', 'Remarks']);
  expect(second.questions.map(({ header }) => header)).toEqual(['Weather']);
  expect(await faultOf('sheets.preview', { file, sheet: 'Inspections', mapping: second.mapping })).toMatchObject({ code: 'refused', sentence: 'Say what “Weather” becomes, or leave it out.' });
  const mapping = leaveOut(second.mapping, 'Weather');
  expect(await bringIn(file, 'Inspections', mapping)).toMatchObject({ read: 2, entered: 2, toSortOut: [] });
  const exported = await ask('export.journal', {});
  expect(exported.text).toMatch(/2026-05-02,inspection,.*LB-01.*,8,4\.5,3\.5,/);

  expect(await ask('sheets.preview', { file, sheet: 'Inspections', mapping })).toMatchObject({ read: 2, entered: 0, repeats: 2 });
  const [gesture] = (await ask('journal.recent', { limit: 1 })).gestures;
  expect(gesture).toMatchObject({ kind: 'import', title: 'Import of bees.xlsx, Inspections' });
  await ask('journal.undo', { gesture: gesture!.id });
  expect((await ask('book.status', {})).book?.entries).toBe(3);
});

test('rows that contradict the book are listed by their own line and header; the mapping is kept with the book and offered again', async () => {
  const hives = fileOf('bees.xlsx', workbook());
  await bringIn(hives, 'Hive list', (await ask('sheets.look', { file: hives })).mapping);
  const file = fileOf('durchsicht.csv', dayFirst.replace('17/05/2026;LB-01', '17/05/2026;LB-77'));
  const look = await ask('sheets.look', { file });
  const mapping: SheetMapping = { ...look.mapping, columns: look.mapping.columns.map((column) => (column.header === 'Bemerkung' ? { ...column, becomes: leftOut } : column)) };
  const done = await bringIn(file, look.sheet, mapping);
  expect(done).toMatchObject({ read: 4, entered: 2, repeats: 0 });
  expect(done.toSortOut.map(({ line, column, value }) => [line, column, value])).toEqual([[4, 'Volk', 'LB-77'], [5, 'Datum', '31/06/2026']]);

  const { path } = (await ask('book.status', {})).book!;
  await ask('book.close', {});
  await ask('book.open', { path });
  const again = await ask('sheets.look', { file: fileOf('later.csv', dayFirst) });
  expect(again).toMatchObject({ origin: 'saved', mapping });
  expect((await ask('sheets.look', { file: fileOf('later.csv', dayFirst), afresh: true })).mapping).toEqual(look.mapping);
});

test('nothing is entered when the file or the book has changed since the preview, or the mapping is of another sheet', async () => {
  const file = fileOf('honey.csv', unitsInHeaders);
  await ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
  const { mapping: guessed, sheet } = await ask('sheets.look', { file });
  const mapping: SheetMapping = { ...leaveOut(guessed, 'Sold to'), dateOrder: 'month-first' };
  const seen = await ask('sheets.preview', { file, sheet, mapping });
  expect(seen).toMatchObject({ read: 2, entered: 2 });
  expect(await faultOf('sheets.enter', { file: fileOf('honey.csv', `${unitsInHeaders}\n`), sheet, mapping, sha256: seen.sha256, position: seen.position })).toMatchObject({ code: 'moved-on' });
  await ask('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
  expect(await faultOf('sheets.enter', { file, sheet, mapping, sha256: seen.sha256, position: seen.position })).toMatchObject({ code: 'moved-on' });
  expect(await faultOf('sheets.look', { file, sheet, mapping: { ...mapping, columns: mapping.columns.slice(1) } })).toMatchObject({ code: 'moved-on' });
  expect((await ask('book.status', {})).book?.entries).toBe(0);
});

test('a kind said by the person is guessed for; the columns that kind has no place for are asked', async () => {
  const look = await ask('sheets.look', { file: fileOf('durchsicht.csv', dayFirst), kind: 'note' });
  expect(look.mapping.kind).toBe('note');
  expect(look.questions.map(({ header }) => header)).toEqual(['Waben Bienen', 'Waben Brut', 'Futter', 'Königin gesehen']);
});

const office = Buffer.concat([Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]), Buffer.alloc(600)]);
const whole = workbook();
const damaged = Buffer.from(whole);
damaged.fill(0x55, 40, 300);
test.each([
  ['a picture with another name', 'bees.xlsx', Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]), 'not an XLSX file'],
  ['another zip', 'bees.xlsx', zipFile([['letter.xml', '<letter/>']]), 'holds no spreadsheet'],
  ['a workbook with a password', 'bees.xlsx', Buffer.concat([office, Buffer.from('EncryptedPackage', 'utf16le')]), 'password'],
  ['an old workbook', 'bees.xls', office, 'old XLS'],
  ['half a workbook', 'bees.xlsx', whole.subarray(0, whole.length / 2), 'damaged or not whole'],
  ['a workbook with damaged bytes', 'bees.xlsx', damaged, 'damaged or not whole'],
  ['a workbook without a sheet that holds anything', 'bees.xlsx', xlsxFile([{ name: 'One', rows: [] }]), 'is empty'],
  ['names without rows', 'bees.xlsx', xlsxFile([{ name: 'One', rows: [['Date', 'Hive']] }]), 'no row below'],
  ['figures without names', 'bees.csv', Buffer.from('1,2\n3,4\n'), 'no row that names its columns'],
  ['a letter', 'bees.csv', Buffer.from('Dear neighbour,\nthe bees flew well.\n'), 'no row that names its columns'],
  ['a quotation mark never closed', 'bees.csv', Buffer.from('Date,Hive\n2026-01-01,"LB\n'), 'cannot be read as a table'],
  ['Latin-1', 'bees.csv', Buffer.from('Date;K\xf6nigin\n1;2\n', 'latin1'), 'not in UTF-8'],
  ['nothing', 'bees.csv', Buffer.alloc(0), 'is empty'],
])('%s: a sentence that says what is wrong, and what would mend it', async (_, name, content, part) => {
  const fault = await faultOf('sheets.look', { file: fileOf(name, content) });
  expect(fault.code).toBe('file-unreadable');
  expect(fault.sentence).toContain(part);
  expect(fault.mend?.length).toBeGreaterThan(10);
});

test('fifty thousand rows are looked at and counted, each once', async () => {
  const rows = Array.from({ length: 50_000 }, (_, at) => ['2026-05-02', `LB-${at % 400}`, (at % 20) / 2] as const);
  const file = fileOf('large.xlsx', xlsxFile([{ name: 'All', rows: [['Date', 'Hive', 'Frames of brood'], ...rows] }]));
  const look = await ask('sheets.look', { file });
  expect(look.sheets).toEqual([{ name: 'All', rows: 50_000, problem: null }]);
  const seen = await ask('sheets.preview', { file, sheet: 'All', mapping: look.mapping });
  expect(seen.read).toBe(50_000);
  expect(seen.entered + seen.repeats + seen.toSortOut.length).toBe(50_000);
  const tooMany = fileOf('larger.csv', `Date,Hive\n${'2026-05-02,LB-01\n'.repeat(100_001)}`);
  expect((await faultOf('sheets.look', { file: tooMany })).sentence).toContain('at most 100000 can be read at once');
}, 60_000);
