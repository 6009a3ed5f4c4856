import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { contract, type InputOf, type OperationName, type OutputOf } from '#shared/contract/contract.ts';
import { addDays, day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { createDesk, type Desk } from '#core/desk/desk.ts';

let folder = '';
let desk: Desk;
const make = () => createDesk({ folder, program: 'Outyard under test', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 21:00' }), log: () => undefined });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'outyard-desk-'));
  desk = make();
});
afterEach(async () => {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The answer, held against the shape that the contract promises. */
async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>, at: Desk = desk): Promise<OutputOf<Name>> {
  const answer = (await at.call(name, input)) as Answer<OutputOf<Name>>;
  if (!answer.ok) throw new Error(`${name}: ${answer.code}: ${answer.sentence}`);
  const parsed = contract[name].output.safeParse(answer.value);
  if (!parsed.success) throw new Error(`${name}: ${parsed.error.message}`);
  expect(parsed.data).toEqual(answer.value);
  return answer.value;
}
async function fault(name: unknown, input: unknown, at: Desk = desk): Promise<Fault> {
  const answer = await at.call(name, input);
  if (answer.ok) throw new Error(`${String(name)} was answered`);
  return answer;
}
const install: Cells = { date: '2026-05-01', entry: 'install', yard: 'QY', colony: 'A', origin: 'package' };
const file = (text: string) => ({ name: 'journal.csv', base64: Buffer.from(text, 'utf8').toString('base64') });
const oneRow = file('date,entry,yard,colony,origin\n2026-05-01,install,QY,A,package\n');

/** Everything that can be read of the open book. */
async function readAll(): Promise<void> {
  const { book } = await ask('book.status', {});
  await ask('book.check', {});
  await ask('export.journal', {});
  await ask('journal.recent', { limit: 50 });
  const { rows } = await ask('colonies.list', { which: 'all' });
  if (book?.firstDay) await ask('colonies.list', { which: 'living', asOf: addDays(book.firstDay, 20) });
  for (const row of rows.slice(0, 15)) await ask('colony.story', { id: row.id });
  for (const yard of book?.yards ?? []) await ask('round.sheet', { yard: yard.id, day: '2026-11-20' });
  for (const united of ['lost', 'takenOut'] as const) {
    const { seasons } = await ask('losses.review', { united });
    for (const { season } of seasons) await ask('lines.picture', { season });
    for (const { season } of seasons) expect((await ask('losses.review', { season, united })).balances).toBe(true);
    await ask('order.decide', { united });
    await ask('order.decide', { hiveFrames: 8, united, target: 0, confidence: 0.99 });
  }
  await ask('stock.table', {});
  await ask('rules.list', {});
  await ask('order.kept', {});
}

describe('every answer has the shape of the contract', () => {
  test('an empty book', async () => {
    await ask('book.create', { name: 'Empty' });
    await readAll();
    expect((await ask('losses.review', { united: 'lost' })).sentences).toEqual([]);
  });
  test('the tiny demo', async () => {
    expect((await ask('book.demo', { which: 'tiny' })).book).toMatchObject({ demo: true });
    await readAll();
  });
  test('Ossar Valley, and its journal taken into another book', async () => {
    await ask('book.demo', { which: 'ossar' });
    await readAll();
    await ask('book.create', { name: 'Sample' });
    const sample = file(readFileSync(join(import.meta.dirname, '../reference/data/ossar-journal.csv'), 'utf8'));
    const seen = await ask('import.preview', { file: sample });
    const entered = await ask('import.enter', { file: sample, sha256: seen.sha256, position: seen.position });
    expect(entered.read).toBe(entered.entered + entered.repeats + entered.toSortOut.length);
    await readAll();
  });
});

describe('what cannot be', () => {
  test('an unknown operation, bad input, and no book are faults of their own kind', async () => {
    for (const name of ['no.such', 'toString', '__proto__', null, 7]) expect((await fault(name, {})).code).toBe('unknown');
    expect(await fault('journal.recent', { limit: 0 })).toMatchObject({ code: 'bad-input', field: 'limit' });
    expect((await fault('stock.table', undefined)).code).toBe('bad-input');
    expect((await fault('stock.table', {})).code).toBe('no-book');
  });
  test('an import after the book has moved on', async () => {
    await ask('book.create', { name: 'Moved' });
    const { sha256, position } = await ask('import.preview', { file: oneRow });
    await ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
    expect((await fault('import.enter', { file: oneRow, sha256, position })).code).toBe('moved-on');
    expect((await ask('book.status', {})).book?.entries).toBe(0);
  });
  test('a book open at another desk', async () => {
    const path = (await ask('book.create', { name: 'Held' })).book?.path ?? '';
    const other = make();
    expect((await fault('book.open', { path }, other)).code).toBe('locked');
    await other.close();
  });
});

test('two acts at once are done one after the other', async () => {
  await ask('book.create', { name: 'Two' });
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: null, minutes: null });
  const both = await Promise.all([desk.call('journal.enter', { rows: [install] }), desk.call('journal.enter', { rows: [install] }), ask('book.status', {})]);
  expect(both.slice(0, 2).map((one) => 'ok' in one && one.ok)).toEqual([true, false]);
  expect((await ask('book.status', {})).book).toMatchObject({ entries: 1, living: 1 });
});

test('undo, redo, drafts, choices and house rules outlive the desk', async () => {
  const path = (await ask('book.create', { name: 'Kept' })).book?.path ?? '';
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: null, minutes: null });
  await ask('journal.enter', { rows: [install] });
  await ask('draft.keep', { key: 'round', body: '{"half":1}' });
  await ask('order.keep', { target: 7, confidence: 0.9, source: 'nuc', hiveFrames: 8 });
  const expected = async () => (await ask('order.decide', { target: 9 })).forecast.rate;
  const before = await expected();
  await ask('rules.set', { key: 'order.firstLossRate', value: 0.5 });
  expect(await expected()).toBeGreaterThan(before);
  expect((await fault('rules.set', { key: 'order.spare', value: 2 })).code).toBe('refused');
  await ask('journal.undo', {});
  const again = async () => {
    await desk.close();
    desk = make();
    await ask('book.open', { path });
  };
  await again();
  expect((await ask('book.status', {})).book?.living).toBe(0);
  await ask('journal.redo', {});
  await again();
  expect((await ask('book.status', {})).book?.living).toBe(1);
  expect((await fault('journal.redo', {})).code).toBe('nothing-to-enter');
  expect((await ask('draft.fetch', { key: 'round' })).body).toBe('{"half":1}');
  expect(await ask('order.kept', {})).toEqual({ target: 7, confidence: 0.9, source: 'nuc', hiveFrames: 8 });
  const value = async () => (await ask('rules.list', {})).rules.find((rule) => rule.key === 'order.firstLossRate')?.value;
  expect(await value()).toBe(0.5);
  await ask('rules.set', { key: 'order.firstLossRate', value: null });
  expect(await value()).toBe(0.288);
});
