import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { dayFirst } from '#tests/exchange/threeSheets.ts';

let folder: string;
let desk: Desk;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'outyard-sort-out-'));
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
const fileOf = (name: string, text: string) => ({ name, base64: Buffer.from(text).toString('base64') });
async function bringIn(name: string, text: string) {
  const file = fileOf(name, text);
  const seen = await ask('import.preview', { file });
  return ask('import.enter', { file, sha256: seen.sha256, position: seen.position });
}
const list = async (which: 'waiting' | 'aside' = 'waiting') => (await ask('sortOut.list', { which, from: 0, limit: 500 })).rows;
const counts = () => ask('sortOut.counts', {});
const exported = async () => (await ask('export.journal', {})).text;

const spring = [
  'date,entry,yard,colony,origin,frames_bees,weather',
  '2026-04-24,install,LB,LB-01,package,,',
  '2026-05-02,inspection,,LB-01,,8,',
  '2026-05-02,inspection,,LB-09,,6,',
  '2026-02-30,install,LB,LB-02,nuc,,',
  '2026-05-03,inspection,,LB-01,,7,"=sunny; ""calm"""',
  '',
].join('\n');

test('rows that cannot stand are kept with their import, come back after closing, and are not doubled by the same file', async () => {
  const done = await bringIn('spring.csv', spring);
  expect([done.read, done.entered, done.repeats, done.toSortOut.length, done.toKeep]).toEqual([5, 2, 0, 3, 3]);
  expect((await ask('journal.recent', { limit: 1 })).gestures[0]).toMatchObject({ id: done.gesture, kind: 'import', entries: 2 });
  const { path } = (await ask('book.status', {})).book!;
  await ask('book.close', {});
  await ask('book.open', { path });
  expect((await list()).map(({ file, line, column, value, ready }) => [file, line, column, value, ready])).toEqual([
    ['spring.csv', 4, 'colony', 'LB-09', null], ['spring.csv', 5, 'date', '2026-02-30', null], ['spring.csv', 6, 'weather', '=sunny; "calm"', null],
  ]);
  for (const row of await list()) expect(row.sentence).toMatch(/\.$/);

  const again = await ask('import.preview', { file: fileOf('copy of spring.csv', spring) });
  expect([again.entered, again.repeats, again.toSortOut.length, again.toKeep]).toEqual([0, 2, 3, 0]);
  expect(await faultOf('import.enter', { file: fileOf('copy of spring.csv', spring), sha256: again.sha256, position: again.position })).toMatchObject({ code: 'nothing-to-enter', sentence: expect.stringContaining('waits in the book already') });
  const more = await bringIn('more.csv', `${spring}2026-05-04,inspection,,LB-01,,5,\n`);
  expect([more.entered, more.repeats, more.toKeep]).toEqual([1, 2, 0]);
  expect(await list()).toHaveLength(3);
});

test('a row is mended and entered; undo of it brings the row back, redo takes it away, a strike leaves it settled', async () => {
  await bringIn('spring.csv', spring);
  const [, bad] = await list();
  const { cells, typed } = await ask('sortOut.row', { key: bad!.key });
  expect(cells).toMatchObject({ date: '2026-02-30', entry: 'install', colony: 'LB-02' });
  expect(typed).toContainEqual({ column: 'date', value: '2026-02-30' });
  expect(await ask('sortOut.judge', { key: bad!.key, cells })).toMatchObject({ says: null, refusals: [{ column: 'date', sentence: expect.stringContaining('no day of the calendar') }] });
  expect(await faultOf('sortOut.enter', { key: bad!.key, cells })).toMatchObject({ code: 'refused', rows: [{ column: 'date' }] });
  const mended = { ...cells, date: '2026-04-30' };
  expect(await ask('sortOut.judge', { key: bad!.key, cells: mended })).toMatchObject({ says: expect.stringContaining('LB-02'), refusals: [] });
  const written = await ask('sortOut.enter', { key: bad!.key, cells: mended });
  expect([written.entered, await counts()]).toEqual([1, { waiting: 2, ready: 0, aside: 0, entered: 1 }]);
  expect(await faultOf('sortOut.enter', { key: bad!.key, cells: { ...mended, date: '2026-04-29' } })).toMatchObject({ code: 'refused', sentence: 'Line 5 of spring.csv is in the book already.' });

  await ask('journal.undo', {});
  expect((await list()).map(({ line }) => line)).toEqual([4, 5, 6]);
  await ask('journal.redo', {});
  expect((await list()).map(({ line }) => line)).toEqual([4, 6]);
  const seen = await ask('import.preview', { file: fileOf('spring.csv', spring) });
  expect([seen.read, seen.entered, seen.repeats, seen.toSortOut.length]).toEqual([5, 0, 3, 2]);

  const { lines } = await ask('act.page', { id: written.gesture, from: 0, limit: 200 });
  await ask('journal.replace', { entry: lines[0]!.entry.id, cells: { ...mended, date: '2026-04-29' }, reason: 'misread' });
  expect(await list()).toHaveLength(2);
  await ask('journal.undo', {});
  expect(await list()).toHaveLength(2);
  await ask('journal.strike', { entry: lines[0]!.entry.id, reason: 'never bought' });
  expect(await list()).toHaveLength(2);
  await ask('journal.undo', {});
  await ask('journal.undo', { gesture: written.gesture });
  expect(await list()).toHaveLength(3);
});

test('a row that stands once something else is entered is offered, and entered as typed with all like it', async () => {
  await bringIn('spring.csv', spring);
  await ask('journal.enter', { rows: [{ date: '2026-04-25', entry: 'install', yard: 'LB', colony: 'LB-09', origin: 'swarm' }] });
  expect((await list()).map(({ line, ready }) => [line, ready !== null])).toEqual([[4, true], [5, false], [6, false]]);
  expect((await list())[0]?.ready).toBe('2 May 2026, LB-09: Looked at: 6 frames of bees.');
  expect(await counts()).toMatchObject({ waiting: 3, ready: 1 });
  const written = await ask('sortOut.enterReady', {});
  expect([written.entered, await counts()]).toEqual([1, { waiting: 2, ready: 0, aside: 0, entered: 1 }]);
  expect(await faultOf('sortOut.enterReady', {})).toMatchObject({ code: 'nothing-to-enter' });
  await ask('journal.undo', {});
  expect(await counts()).toMatchObject({ waiting: 3, ready: 1, entered: 0 });
  // Entered by hand instead, the row has nothing left to say.
  await ask('journal.enter', { rows: [{ date: '2026-05-02', entry: 'inspection', colony: 'LB-09', frames_bees: '6.0' }] });
  expect(await counts()).toMatchObject({ waiting: 2, ready: 0, entered: 1 });
});

test('a row is set aside with a reason, stays so when the file comes again, and is brought back', async () => {
  await bringIn('spring.csv', spring);
  const [row] = await list();
  expect((await faultOf('sortOut.setAside', { key: row!.key, reason: ' ' })).code).toBe('bad-input');
  await ask('sortOut.setAside', { key: row!.key, reason: 'the neighbour’s colony' });
  expect([(await list()).length, (await list('aside')).map(({ line, aside }) => [line, aside?.reason])]).toEqual([2, [[4, 'the neighbour’s colony']]]);
  expect((await ask('import.preview', { file: fileOf('spring.csv', spring) })).toKeep).toBe(0);
  await ask('sortOut.bringBack', { key: row!.key });
  expect([(await list()).length, await list('aside')]).toEqual([3, []]);
  expect(await faultOf('sortOut.bringBack', { key: row!.key })).toMatchObject({ code: 'refused' });
});

test('taking the whole import back takes its rows along and says so first; redo brings them back', async () => {
  const before = await exported();
  const { gesture } = await bringIn('spring.csv', spring);
  const after = await exported();
  expect(await ask('act.consequence', { id: gesture! })).toEqual({ allowed: true, struck: 2, lifted: 0, gone: 1, changed: 0, goneLabels: ['LB-01'], unsorted: 3, refusal: null });
  await ask('sortOut.setAside', { key: (await list())[0]!.key, reason: 'unclear' });
  await ask('journal.undo', { gesture: gesture! });
  expect([await exported(), await counts()]).toEqual([before, { waiting: 0, ready: 0, aside: 0, entered: 0 }]);
  expect(await ask('act.consequence', { id: gesture! })).toMatchObject({ allowed: false, refusal: { sentence: expect.stringContaining('was undone already') } });
  expect(await ask('act.page', { id: gesture!, from: 0, limit: 200 })).toMatchObject({ act: { undone: true }, canRedo: true, total: 2, unsorted: 3 });
  await ask('journal.redo', {});
  expect([await exported(), await counts()]).toEqual([after, { waiting: 2, ready: 0, aside: 1, entered: 0 }]);
  // The file once more, after the import was taken back, brings its rows once more.
  await ask('journal.undo', {});
  expect((await bringIn('spring.csv', spring)).toKeep).toBe(3);
  expect((await list()).length + (await list('aside')).length).toBe(3);
});

test('an import whose entries others rest on cannot be taken back, and nothing changes', async () => {
  const { gesture } = await bringIn('spring.csv', spring);
  await ask('journal.enter', { rows: [{ date: '2026-06-01', entry: 'inspection', colony: 'LB-01', frames_bees: '9' }] });
  expect(await ask('act.consequence', { id: gesture! })).toMatchObject({ allowed: false, refusal: { sentence: expect.stringContaining('could then not stand'), mend: expect.stringContaining('Nothing was changed') } });
  expect((await faultOf('journal.undo', { gesture: gesture! })).code).toBe('refused');
  expect(await counts()).toMatchObject({ waiting: 3 });
});

test('a file of which nothing can stand is kept when the person says so', async () => {
  const text = 'date,entry,colony,frames_bees\n2026-05-02,inspection,LB-09,6\n2026-05-02,inspection,LB-09,6\n2026-05-09,inspection,LB-09,many\n';
  const done = await bringIn('nothing.csv', text);
  expect([done.read, done.entered, done.repeats, done.toSortOut.length]).toEqual([3, 0, 1, 2]);
  expect(await counts()).toMatchObject({ waiting: 2 });
  expect(await ask('act.page', { id: done.gesture!, from: 0, limit: 200 })).toMatchObject({ total: 0, unsorted: 2 });
  await ask('journal.undo', {});
  expect(await counts()).toMatchObject({ waiting: 0 });
});

test('a row of somebody’s own spreadsheet keeps its cells under its own names, and is mended in the exchange form', async () => {
  await ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
  await ask('journal.enter', { rows: ['LB-01', 'LB-02'].map((colony) => ({ date: '2026-04-01', entry: 'install', yard: 'LB', colony, origin: 'package' })) });
  const file = fileOf('durchsicht.csv', dayFirst);
  const { mapping, sheet } = await ask('sheets.look', { file });
  const seen = await ask('sheets.preview', { file, sheet, mapping });
  await ask('sheets.enter', { file, sheet, mapping, sha256: seen.sha256, position: seen.position });
  const [row] = await list();
  expect(row).toMatchObject({ line: 5, column: 'Datum', value: '31/06/2026', ready: null });
  const { cells, typed } = await ask('sortOut.row', { key: row!.key });
  expect(typed).toEqual([{ column: 'Datum', value: '31/06/2026' }, { column: 'Volk', value: 'LB-01' }, { column: 'Waben Bienen', value: '9,5' }, { column: 'Waben Brut', value: '5' }]);
  expect(cells).toEqual({ date: '31/06/2026', entry: 'inspection', colony: 'LB-01', frames_bees: '9.5', frames_brood: '5' });
  await ask('sortOut.enter', { key: row!.key, cells: { ...cells, date: '2026-06-30' } });
  expect(await exported()).toMatch(/2026-06-30,inspection,.*LB-01.*,9\.5,5,/);
  expect(await ask('sheets.preview', { file, sheet, mapping })).toMatchObject({ read: 4, entered: 0, repeats: 4, toSortOut: [] });
});

test('days of a kept row mean what they meant when the file was read, also after the book’s order is changed', async () => {
  await bringIn('spring.csv', 'date,entry,colony,frames_bees\n4/5/2026,inspection,LB-09,6\n');
  await ask('book.settings', { dateOrder: 'day-first' });
  expect((await ask('sortOut.row', { key: (await list())[0]!.key })).cells.date).toBe('2026-04-05');
});

test('an act of many entries is told in parts, each entry in words', async () => {
  const rows = ['date,entry,yard,colony,origin', ...Array.from({ length: 450 }, (_, at) => `2026-04-24,install,LB,C-${at},package`), ''].join('\n');
  const { gesture } = await bringIn('many.csv', rows);
  const first = await ask('act.page', { id: gesture!, from: 0, limit: 200 });
  const last = await ask('act.page', { id: gesture!, from: 400, limit: 200 });
  expect([first.total, first.lines.length, last.lines.length]).toEqual([450, 200, 50]);
  expect(first.lines[0]).toMatchObject({ what: 'entered', entry: { kind: 'install', struck: false }, colonies: [{ label: 'C-0' }] });
  const struck = await ask('journal.strike', { entry: first.lines[0]!.entry.id, reason: 'twice' });
  expect(await ask('act.page', { id: struck.gesture, from: 0, limit: 200 })).toMatchObject({ total: 1, lines: [{ what: 'struck', entry: { struck: true, struckReason: 'twice' } }] });
  expect(await ask('act.consequence', { id: struck.gesture })).toMatchObject({ allowed: true, struck: 0, lifted: 1, gone: 0, changed: 1 });
  expect((await faultOf('act.page', { id: 999 as never, from: 0, limit: 200 })).code).toBe('unknown');
});
