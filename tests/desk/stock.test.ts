import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { createDesk, type Desk } from '#core/desk/desk.ts';

let folder = '';
let desk: Desk;
const today = day('2026-11-25');

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'outyard-stock-'));
  desk = createDesk({ folder, program: 'Outyard under test', now: () => ({ day: today, stamp: `${today} 21:00` }), log: () => undefined });
});
afterEach(async () => {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
});

async function call<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<Answer<OutputOf<Name>>> {
  return (await desk.call(name, input)) as Answer<OutputOf<Name>>;
}
async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  return answer.value;
}
async function refused<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<Fault> {
  const answer = await call(name, input);
  if (answer.ok) throw new Error(`${name} was not refused`);
  return answer;
}

const stock = (date: string, quantity: number, item: string, from: string, to: string): Cells => ({ date, entry: 'stock', item, quantity: String(quantity), from, to });
const about = async (item: string) => {
  const found = (await ask('stock.table', {})).items.find((one) => one.item === item);
  if (found === undefined) throw new Error(`no ${item}`);
  return found;
};

async function trial(more: readonly Cells[] = []): Promise<void> {
  await ask('book.create', { name: 'Ossar Valley' });
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
  await ask('journal.enter', {
    rows: [
      stock('2026-03-01', 12, 'deep box', 'supplier', 'shed'), stock('2026-03-01', 120, 'deep frame', 'supplier', 'shed'), stock('2026-03-01', 10, 'stand', 'supplier', 'shed'),
      ...['A', 'B'].map((colony): Cells => ({ date: '2026-04-20', entry: 'install', yard: 'QY', colony, origin: 'package' })), ...more,
    ],
  });
}

describe('counting', () => {
  test('the difference is shown before it is entered, is written off, can be taken back, and goes through the exchange form', async () => {
    await trial();
    const counting = { place: 'shed', item: 'Deep Boxes', counted: 7, day: today };
    expect(await ask('stock.counted', counting)).toEqual({ had: 10, difference: -3, sentence: 'The book has 10 deep boxes in the shed, you counted 7: 3 are missing and will be written off.' });
    expect((await about('deep box')).free).toBe(10);
    const done = await ask('stock.count', { ...counting, note: 'three broken' });
    expect(await about('deep box')).toMatchObject({ free: 7, onHives: 2, scrapped: 3, cameIn: 12, balances: true });
    expect((await ask('stock.table', {})).counts).toEqual([{ day: today, place: 'shed', item: 'deep box', counted: 7, had: 10, difference: -3 }]);
    const { text } = await ask('export.journal', {});
    expect(text).toContain('"counted 7, the book had 10; three broken"');
    await ask('journal.undo', { gesture: done.gesture });
    expect((await about('deep box')).free).toBe(10);
  });

  test('whole things are counted whole, by every way in; what is weighed is not', async () => {
    await trial();
    const before = (await ask('book.status', {})).book?.position;
    const says = '“1.5” is no whole number, and deep boxes are counted whole. Write 1 or 2.';
    const half = { place: 'shed', item: 'Deep Boxes', counted: 1.5, day: today };
    expect([await refused('stock.counted', half), await refused('stock.count', { ...half, note: '' })]).toMatchObject([{ field: 'counted', sentence: says }, { field: 'counted', sentence: says }]);
    expect((await refused('journal.enter', { rows: [{ ...stock('2026-03-02', 1, 'deep box', 'supplier', 'shed'), quantity: '1.5' }] })).rows).toMatchObject([{ column: 'quantity', value: '1.5', sentence: says }]);
    expect((await refused('journal.enter', { rows: [{ date: '2026-03-02', entry: 'purchase', item: 'nails', quantity: '0.5', to: 'shed' }] })).sentence).toBe('“0.5” is no whole number, and nails are counted whole. Write 1. What is weighed or measured has its unit in its name: “nails, lb”.');
    await ask('journal.enter', { rows: [{ date: '2026-06-01', entry: 'loss', colony: 'A' }] });
    const [hive] = (await ask('stock.table', {})).deadOuts;
    expect(await refused('stock.check', { colony: hive!.colony, day: today, to: 'shed', parts: [{ item: 'deep frame', toMend: 0, scrap: 2.5 }], inspectorSeen: false, note: '' })).toMatchObject({ field: 'deep frame', sentence: expect.stringContaining('deep frames are counted whole') });
    expect((await ask('book.status', {})).book?.position).toBe((before ?? 0) + 1);
    for (const [item, quantity] of [['sugar', 12.5], ['foundation', 2.25], ['nails, lb', 0.5], ['bulk honey, kg', 3.4]] as const) await ask('journal.enter', { rows: [stock('2026-03-02', quantity, item, 'supplier', 'shed')] });
    expect(await ask('stock.counted', { place: 'shed', item: 'sugar', counted: 12.25, day: today })).toMatchObject({ had: 12.5, difference: -0.25 });
  });

  test('more than the book has comes in; as many as it has is still a count', async () => {
    await trial();
    expect((await ask('stock.counted', { place: 'shed', item: 'stand', counted: 9, day: today })).difference).toBe(1);
    await ask('stock.count', { place: 'shed', item: 'stand', counted: 9, day: today, note: '' });
    await ask('stock.count', { place: 'shed', item: 'deep frame', counted: 100, day: today, note: '' });
    const { counts } = await ask('stock.table', {});
    expect(counts.map(({ item, difference }) => [item, difference])).toEqual([['deep frame', 0], ['stand', 1]]);
    expect(await about('stand')).toMatchObject({ free: 9, cameIn: 11 });
  });

  test('a place that is none and a day to come are refused in a sentence', async () => {
    await trial();
    expect((await refused('stock.counted', { place: 'barn', item: 'stand', counted: 1, day: today })).sentence).toContain('“barn” is no place');
    expect((await refused('stock.count', { place: 'shed', item: 'stand', counted: 1, day: day('2026-12-01'), note: '' })).field).toBe('day');
  });
});

describe('dead-outs', () => {
  const loss = (cause: string): Cells => ({ date: '2026-10-10', entry: 'loss', colony: 'A', cause });

  test('a hive is looked over: what is to mend and what is scrap is taken out, the rest is sound', async () => {
    await trial([loss('mites')]);
    const [hive] = (await ask('stock.table', {})).deadOuts;
    expect(hive).toMatchObject({ label: 'A', yard: 'QY', inspector: false });
    expect(hive?.parts).toContainEqual({ item: 'deep frame', count: 10 });
    const check = { colony: hive!.colony, day: today, to: 'shed' as const, inspectorSeen: false, note: 'mouse nest' };
    expect((await refused('stock.check', { ...check, parts: [{ item: 'deep frame', toMend: 6, scrap: 5 }] })).sentence).toContain('more than that');
    await ask('stock.check', { ...check, parts: [{ item: 'deep frame', toMend: 1, scrap: 4 }] });
    expect(await about('deep frame')).toMatchObject({ onHives: 10, free: 105, toCheck: 0, toMend: 1, scrapped: 4, balances: true });
    expect((await ask('stock.table', {})).deadOuts).toEqual([]);
    expect((await refused('stock.check', { ...check, parts: [] })).sentence).toContain('No hive of A');
  });

  test('where two died, the one named is looked over', async () => {
    await trial([loss('mites'), { ...loss('cold'), colony: 'B', date: '2026-10-12' }]);
    const [, second] = (await ask('stock.table', {})).deadOuts;
    await ask('stock.check', { colony: second!.colony, day: today, to: 'yard', parts: [], inspectorSeen: false, note: '' });
    expect((await ask('stock.table', {})).deadOuts.map(({ label }) => label)).toEqual(['A']);
    expect(await about('deep box')).toMatchObject({ free: 11, toCheck: 1 });
  });

  test('after disease nothing is called sound before the inspector has seen it', async () => {
    await trial([loss('disease')]);
    const [hive] = (await ask('stock.table', {})).deadOuts;
    expect(hive?.inspector).toBe(true);
    const check = { colony: hive!.colony, day: today, to: 'yard' as const, parts: [], inspectorSeen: false, note: '' };
    const fault = await refused('stock.check', check);
    expect(fault.sentence).toContain('call the bee inspector first');
    const burnt = hive!.parts.map(({ item, count }) => ({ item, toMend: 0, scrap: count }));
    await ask('stock.check', { ...check, parts: burnt });
    expect((await about('deep box')).scrapped).toBe(1);
  });
});

test('what is below nothing is named with its entry, and striking that mends it', async () => {
  await trial([stock('2026-05-01', 13, 'stand', 'shed', 'QY')]);
  const { shortages } = await ask('stock.table', {});
  expect(shortages).toMatchObject([{ place: 'shed', item: 'stand', count: -5, day: '2026-05-01', kind: 'stock', colony: null, what: '13 × stand from the shed to Quarry.' }]);
  expect(shortages[0]?.sentence).toBe('By the record 5 stands more left the shed than had come there; the entry of 1 May 2026 was the first to take what was not there.');
  await ask('journal.strike', { entry: shortages[0]!.entry, reason: 'written twice' });
  expect((await ask('stock.table', {})).shortages).toEqual([]);
  expect((await ask('stock.table', { asOf: day('2026-04-01') })).items.find(({ item }) => item === 'stand')).toMatchObject({ onHives: 0, free: 10 });
});

test('an empty book has no items, no shortages and says what it takes for granted', async () => {
  await ask('book.create', { name: 'Ossar Valley' });
  const table = await ask('stock.table', {});
  expect([table.items, table.shortages, table.deadOuts, table.keptFrom]).toEqual([[], [], [], null]);
  expect(table.assumptions.length).toBeGreaterThan(5);
});

describe('items that may be misspelt', () => {
  test('are asked about by name, and no more once the book has them', async () => {
    await trial();
    const found = async (item: string) => (await ask('stock.nearItem', { item })).found;
    expect(await found('Deap boxes, to mend')).toEqual({ item: 'deap box', nearest: [{ item: 'deep box', instead: 'deep box, to mend' }], sentence: 'There is no item “deap box”. Nearest: deep box.' });
    expect([await found('deep box'), await found('smoker'), await found('')]).toEqual([null, null, null]);
    const done = await ask('journal.enter', { rows: [stock('2026-04-01', 2, 'deap box', 'supplier', 'shed')] });
    expect(await found('deap box')).toBeNull();
    await ask('journal.undo', { gesture: done.gesture });
    expect((await found('deap box'))?.item).toBe('deap box');
  });

  test('in a file: named with their rows, entered as is said, and known again when the file is read once more', async () => {
    await trial();
    const text = ['date,entry,item,quantity,from,to,bees,mites,colony', '2026-05-01,stock,deap box,2,supplier,shed,,,', '2026-05-02,stock,"Deap boxes, to mend",1,supplier,shed,,,', '2026-05-03,stock,smoker,1,supplier,shed,,,', '2026-05-03,stock,smokre,1,supplier,shed,,,', '2026-05-04,mites,,,,,300,70,A'].join('\n');
    const file = { name: 'shed.csv', base64: Buffer.from(text).toString('base64') };
    const seen = await ask('import.preview', { file });
    expect(seen.newItems).toMatchObject([
      { item: 'deap box', nearest: [{ item: 'deep box' }], rows: 2, lines: [2, 3], meant: null }, { item: 'smokre', nearest: [{ item: 'smoker' }], rows: 1, lines: [5], meant: null },
    ]);
    expect(seen.strange).toEqual({ rows: 1, figures: [{ line: 6, sentence: '70 mites in 300 bees is a very high count.' }] });
    const items = { 'deap box': 'deep box', smokre: 'smokre' };
    const meant = await ask('import.preview', { file, items });
    expect([meant.entered, meant.newItems.map((one) => one.meant)]).toEqual([5, ['deep box', 'smokre']]);
    await ask('import.enter', { file, items, sha256: meant.sha256, position: meant.position });
    expect(await about('deep box')).toMatchObject({ free: 12, toMend: 1 });
    expect((await ask('stock.table', {})).items.map(({ item }) => item).filter((item) => /deap|smok/.test(item))).toEqual(['smoker', 'smokre']);
    const again = await ask('import.preview', { file, items });
    expect([again.entered, again.repeats, again.toSortOut]).toEqual([0, 5, []]);
    // Asked of nobody, a file is entered as it is written.
    expect(await ask('import.preview', { file })).toMatchObject({ entered: 2, repeats: 3, newItems: [{ item: 'deap box', meant: null }] });
  });
});
