import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';

let folder: string;
let desk: Desk;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'outyard-find-'));
  desk = createDesk({ folder, program: 'test', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 20:00' }), log: (line) => { if (!line.startsWith('slow:')) throw new Error(line); } });
  await ask('book.create', { name: 'Ossar Valley' });
  await ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
  await ask('yard.keep', { code: 'ŁG', name: 'Łąka Górna', room: null, minutes: null });
});
afterEach(async () => {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  return answer.value as OutputOf<Name>;
}
const install = (colony: string, more: Record<string, string> = {}) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', ...more });
const find = (text: string, limit = 8) => ask('find.all', { text, limit });
const labels = async (text: string) => (await find(text)).colonies.rows.map(({ label }) => label);

test('colonies by label in any case and any accent, living before ended, best fit first, and how many there are', async () => {
  const long = `Ω${'x'.repeat(78)}Z`;
  await ask('journal.enter', { rows: ['LB-1', 'LB-10', 'LB-2', 'Große Linde', 'Bjørn 🐝', 'כוורת 3', long, 'two words'].map((label) => install(label)) });
  await ask('journal.enter', { rows: [{ date: '2026-10-01', entry: 'loss', yard: 'LB', colony: 'LB-1', cause: 'mites' }] });
  expect(await labels('lb-')).toEqual(['LB-2', 'LB-10', 'LB-1']);
  expect(await labels('LB-1')).toEqual(['LB-1', 'LB-10']);
  expect(await labels('grosse')).toEqual(['Große Linde']);
  expect(await labels('BJORN')).toEqual(['Bjørn 🐝']);
  expect(await labels('🐝')).toEqual(['Bjørn 🐝']);
  expect(await labels('כוורת')).toEqual(['כוורת 3']);
  expect(await labels(`${'X'.repeat(70)}z`)).toEqual([long]);
  expect(await labels('words two')).toEqual(['two words']);
  const some = await find('lb-', 2);
  expect(some.colonies).toMatchObject({ total: 3, rows: [{ label: 'LB-2' }, { label: 'LB-10' }] });
  expect((await find('LB-1')).colonies.rows[0]).toMatchObject({ how: 'lost', end: '2026-10-01', yardName: 'Larch Bend' });
  expect(await find('  ')).toEqual({ colonies: { rows: [], total: 0 }, yards: { rows: [], total: 0 }, queens: { rows: [], total: 0 }, lots: { rows: [], total: 0 }, entries: { rows: [], total: 0 } });
});

test('a label used again is two colonies, the living one first', async () => {
  await ask('journal.enter', { rows: [install('G53')] });
  await ask('journal.enter', { rows: [{ date: '2026-06-01', entry: 'loss', yard: 'LB', colony: 'G53' }] });
  await ask('journal.enter', { rows: [install('G53', { date: '2026-07-01', entry: 'install' })] });
  expect((await find('g53')).colonies.rows.map(({ start, how }) => [start, how])).toEqual([['2026-07-01', 'alive'], ['2026-04-24', 'lost']]);
});

test('yards by name, code and what is written down of them; queens by year, colour, source and colony', async () => {
  await ask('journal.enter', { rows: [install('LB-1', { queen_year: '2025', queen_source: 'Córdova Ridge' }), install('LB-2', { queen_year: '2026' })] });
  await ask('journal.enter', { rows: [{ date: '2026-07-01', entry: 'requeen', yard: 'LB', colony: 'LB-1', queen_year: '2026', queen_source: 'own' }] });
  expect((await find('laka')).yards.rows).toMatchObject([{ code: 'ŁG', name: 'Łąka Górna', living: 0 }]);
  expect((await find('bend')).yards.rows).toMatchObject([{ code: 'LB', living: 2 }]);
  expect((await find('cordova')).queens.rows).toMatchObject([{ colony: { label: 'LB-1' }, year: 2025, colour: 'blue', until: '2026-07-01' }]);
  expect((await find('queen 2026')).queens.rows.map(({ colony, until }) => [colony.label, until])).toEqual([['LB-1', null], ['LB-2', null]]);
  expect((await find('white lb-2')).queens.rows.map(({ colony }) => colony.label)).toEqual(['LB-2']);
  // A label alone is the colony, not every queen in it.
  expect((await find('lb-2')).queens.total).toBe(0);
});

test('lots of honey by name, as a jar names them too: the best fit first, those with honey left before those gone, the later first', async () => {
  const harvest = (date: string, lot: string, yard = 'LB') => ({ date, entry: 'harvest', yard, gross: '80', tare: '20', unit: 'lb', lot });
  await ask('journal.enter', { rows: [harvest('2025-07-01', 'Łąka 1', 'ŁG'), harvest('2026-07-01', 'Łąka 10', 'ŁG'), harvest('2026-07-20', 'Łąka 10'), harvest('2026-08-01', 'Lime łąka'), harvest('2026-08-02', 'Early')] });
  const lots = async (text: string) => (await find(text)).lots.rows.map(({ code }) => code);
  expect(await lots('LAKA 1')).toEqual(['Łąka 1', 'Łąka 10']);
  expect(await lots('łąka')).toEqual(['Łąka 10', 'Łąka 1', 'Lime łąka']);
  expect(await lots('lot early')).toEqual(['Early']);
  expect(await lots('Outyard honey lot Łąka 1')).toEqual(['Łąka 1', 'Łąka 10']);
  expect(await lots('lot')).toEqual(['Early', 'Lime łąka', 'Łąka 10', 'Łąka 1']);
  expect(await lots('ot')).toEqual([]);
  expect((await find('laka', 1)).lots).toMatchObject({ total: 3, rows: [{ code: 'Łąka 10', from: '2026-07-01', until: '2026-07-20', yards: ['Łąka Górna', 'Larch Bend'], left: true }] });
  // Sold out goes behind what is still there; what is poured into a lot alone makes it one, and taken back it is none.
  await ask('lots.sell', { lot: 'Łąka 10', day: '2026-09-01', size: null, quantity: 120, price: null, note: '' });
  expect((await find('łąka')).lots.rows.map(({ code, left }) => [code, left])).toEqual([['Łąka 1', true], ['Łąka 10', false], ['Lime łąka', true]]);
  const { key } = await ask('lots.keep', { lot: 'Blend', day: '2026-09-02', act: { what: 'poured', from: 'Early', mass: 1000 } });
  expect((await find('blend')).lots.rows).toMatchObject([{ code: 'Blend', from: '2026-09-02', until: null, yards: [], left: true }]);
  await ask('lots.takeBack', { key, reason: 'a slip' });
  expect((await find('blend')).lots.total).toBe(0);
  // As the book stood on a day before.
  const past = await desk.call('find.all', { text: 'łąka', asOf: '2026-07-05' });
  expect(past).toMatchObject({ ok: true, value: { lots: { rows: [{ code: 'Łąka 10', until: '2026-07-01', left: true }, { code: 'Łąka 1' }] } } });
});

test('notes and sentences, the newest first, with the words of a label beside; what is entered, undone and struck later is found as it is', async () => {
  await ask('journal.enter', { rows: [install('LB-1'), install('LB-2')] });
  await ask('journal.enter', { rows: [{ date: '2026-05-01', entry: 'note', yard: 'LB', colony: 'LB-1', note: 'Laying workers? Näher ansehen' }] });
  expect((await find('naher')).entries.rows).toMatchObject([{ kind: 'note', colonies: [{ label: 'LB-1' }], struck: false }]);
  await ask('journal.enter', { rows: [{ date: '2026-05-03', entry: 'inspection', yard: 'LB', colony: 'LB-2', frames_bees: '5', note: 'laying well' }] });
  expect((await find('laying')).entries.rows.map(({ day: on }) => on)).toEqual(['2026-05-03', '2026-05-01']);
  expect((await find('lb-1 laying')).entries.total).toBe(1);
  await ask('journal.undo', {});
  expect((await find('laying well')).entries.rows).toMatchObject([{ struck: true }]);
  const [row] = (await find('workers')).entries.rows;
  if (row === undefined) throw new Error('the note is not found');
  const one = await ask('find.entry', { id: row.id });
  expect(one).toMatchObject({ entry: { sentence: 'Note: Laying workers? Näher ansehen' }, colonies: [{ label: 'LB-1' }], yardName: 'Larch Bend' });
  // A note of no colony is found too, and a yard's new name in it.
  await ask('journal.enter', { rows: [{ date: '2026-05-04', entry: 'note', yard: 'LB', note: 'gate is broken' }] });
  const { yards } = (await ask('book.status', {})).book ?? { yards: [] };
  const larch = yards.find(({ code }) => code === 'LB');
  if (larch === undefined) throw new Error('no yard');
  await ask('yard.keep', { id: larch.id, code: 'LB', name: 'Beech Bend', room: 20, minutes: 35 });
  expect((await find('beech gate')).entries.rows).toMatchObject([{ sentence: 'Note on Beech Bend: gate is broken', colonies: [] }]);
});

test('an entry whose colony is no longer in the book still has its page', async () => {
  await ask('journal.enter', { rows: [install('LB-9', { note: 'brought by Tove' })] });
  await ask('journal.undo', {});
  const { colonies, entries } = await find('tove');
  expect(colonies.total).toBe(0);
  expect(entries.rows).toMatchObject([{ struck: true, colonies: [] }]);
  const refused = await desk.call('find.entry', { id: 9999 });
  expect(refused).toMatchObject({ ok: false, code: 'unknown' });
});
