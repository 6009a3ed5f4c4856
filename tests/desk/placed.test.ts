import { expect, test } from 'vitest';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';
import { demoDesk } from './freshDesk.ts';

const at = demoDesk();
const { ask } = at;
const orders = async () => (await ask('orders.placed', {})).orders;
const deadlines = async () => (await ask('orders.deadlines', {})).lines.map(({ sentence }) => sentence);
const hive = (label: string, date: string, supplier: string) => ({ date, entry: 'install', colony: label, yard: 'MR', origin: 'package', supplier, price: '160' });

test('an order is an entry, is counted as coming, is ticked off by part, survives the export, and is undone', async () => {
  const before = await ask('order.decide', {});
  const bees = before.answer?.bees.find(({ kind }) => kind === 'package');
  if (before.answer === null || bees === undefined) throw new Error('packages were expected');
  const { key } = await ask('plans.keep', { question: {}, note: 'as things stand' });
  expect(await deadlines()).toContainEqual(`${bees.quantity}\u00a0× 3 lb packages from Sandel Road Bees: order by 31 January 2027, 67 days left.`);

  // Half of it, from the plan; the other half stays on the list.
  const half = Math.floor(bees.quantity / 2);
  const written = await ask('orders.place', { lines: [{ offer: bees.offer, quantity: half }], plan: key });
  const [order] = await orders();
  expect(order).toMatchObject({ seller: 'Sandel Road Bees', kind: 'package', quantity: half, arrived: 0, left: half, plan: key, delivery: ['2027-04-21', '2027-04-29'], awaited: true });
  expect(await deadlines()).toContainEqual(expect.stringContaining(`${bees.quantity - half}\u00a0× 3 lb packages`));
  const after = await ask('order.decide', {});
  expect(after.onOrder.colonies).toBe(half);
  const still = after.answer?.bees.filter(({ kind }) => kind === 'package').reduce((sum, { quantity }) => sum + quantity, 0) ?? 0;
  expect(still).toBeLessThan(bees.quantity);
  expect(after.answer?.chanceShort).toBeLessThanOrEqual(0.2);
  // Bees that are only ordered are no price paid and no colony.
  expect(after.living).toBe(before.living);
  expect((await ask('offers.list', {})).paid.every(({ day }) => day < '2026-11-25')).toBe(true);

  // A delivery by part: noted first, then hived; the same bees count once.
  await ask('orders.deliver', { entry: order!.entry, quantity: 3, to: 'shed' });
  expect((await orders())[0]).toMatchObject({ arrived: 3, left: half - 3 });
  await ask('journal.enter', { rows: [hive('Z-01', '2026-11-25', 'Sandel Road Bees'), hive('Z-02', '2026-11-25', 'Sandel Road Bees'), hive('Z-03', '2026-11-25', 'Sandel Road Bees'), hive('Z-04', '2026-11-25', 'Sandel Road Bees')] });
  expect((await orders())[0]).toMatchObject({ arrived: 4, left: half - 4 });
  expect((await ask('order.decide', {})).onOrder.colonies).toBe(half - 4);
  const much = await at.answer('orders.deliver', { entry: order!.entry, quantity: half, to: 'shed' });
  expect(much).toMatchObject({ ok: false, sentence: expect.stringContaining('are too many') });

  // Out and into another book: the order and what came of it are the rows themselves.
  const { text } = await ask('export.journal', {});
  const other = scratchFolder();
  const there = trialDesk(other.folder);
  await there.ask('book.create', { name: 'Another' });
  const file = { name: 'journal.csv', base64: Buffer.from(text).toString('base64') };
  const { sha256, position } = await there.ask('import.preview', { file });
  await there.ask('import.enter', { file, sha256, position });
  expect((await there.ask('orders.placed', {})).orders[0]).toMatchObject({ seller: 'Sandel Road Bees', quantity: half, arrived: 4, left: half - 4, delivery: ['2027-04-21', '2027-04-29'], plan: null });
  await there.desk.close();
  other.remove();

  await ask('journal.undo', { gesture: written.gesture });
  expect(await orders()).toEqual([]);
  expect((await ask('order.decide', {})).onOrder.colonies).toBe(0);
  expect(written.entered).toBe(1);
});

test('equipment ordered in packs arrives as stock, and both are undone by one act each', async () => {
  const { answer } = await ask('order.decide', {});
  const part = answer?.equipment.find(({ packs }) => packs.length > 0);
  if (part === undefined) throw new Error('equipment was expected');
  const [pack] = part.packs;
  const placed = await ask('orders.place', { lines: [{ offer: pack!.offer, quantity: pack!.packs }], plan: null });
  const pieces = pack!.packs * pack!.packSize;
  expect((await orders())[0]).toMatchObject({ kind: 'equipment', item: part.item, quantity: pieces, price: pack!.total, left: pieces });
  const now = (await ask('order.decide', {})).answer?.equipment.find(({ item }) => item === part.item);
  expect(now).toMatchObject({ onOrder: pieces, order: 0, packs: [] });
  const shed = async () => (await ask('stock.table', {})).items.find(({ item }) => item === part.item)?.places.find(({ place }) => place === 'shed')?.free ?? 0;
  const had = await shed();
  const came = await ask('orders.deliver', { entry: (await orders())[0]!.entry, quantity: 2, to: 'shed' });
  expect(await shed()).toBe(had + 2);
  expect((await orders())[0]).toMatchObject({ arrived: 2, left: pieces - 2 });
  expect((await ask('order.decide', {})).answer?.equipment.find(({ item }) => item === part.item)?.have).toBe(now?.have);
  await ask('journal.undo', { gesture: came.gesture });
  expect((await orders())[0]).toMatchObject({ arrived: 0, left: pieces });
  await ask('journal.undo', { gesture: placed.gesture });
  expect(await orders()).toEqual([]);
});

test('another price that was agreed is what is entered; a price of nothing is asked about', async () => {
  const { offers } = await ask('offers.list', {});
  const nucs = offers.find(({ what }) => what.kind === 'nuc')!;
  await ask('orders.place', { lines: [{ offer: nucs.key, quantity: 5, each: 19_900 }], plan: null });
  expect((await orders())[0]).toMatchObject({ kind: 'nuc', quantity: 5, price: 99_500 });
  await ask('journal.undo', {});
  expect(await at.answer('orders.place', { lines: [{ offer: nucs.key, quantity: 5, each: 0 }], plan: null })).toMatchObject({ ok: false, field: nucs.key, sentence: expect.stringContaining('the price is 0') });
  expect(await orders()).toEqual([]);
});

test('what cannot be ordered is refused with a sentence, and nothing is entered', async () => {
  const { offers } = await ask('offers.list', {});
  const packages = offers.find(({ what }) => what.kind === 'package')!;
  const nucs = offers.find(({ what }) => what.kind === 'nuc')!;
  for (const [lines, said] of [
    [[{ offer: packages.key, quantity: 1 }], 'at least 2'], [[{ offer: nucs.key, quantity: 3 }, { offer: packages.key, quantity: 999 }], 'at most 60'], [[{ offer: 'o99999', quantity: 1 }], 'nobody’s offer'],
  ] as const) expect(await at.answer('orders.place', { lines: [...lines], plan: null })).toMatchObject({ ok: false, sentence: expect.stringContaining(said) });
  expect(await orders()).toEqual([]);
  expect(await at.answer('orders.deliver', { entry: 1, quantity: 1, to: 'shed' })).toMatchObject({ ok: false });
});
