import fc from 'fast-check';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { alwaysNow, answersAsOf, isRefusedLookingBack } from '#shared/contract/asOf.ts';
import { contract, isOperationName, type InputOf, type OperationName } from '#shared/contract/contract.ts';
import { addDays, day, daysBetween, type Day } from '#shared/days.ts';
import type { Gesture, StoredEntry } from '#core/book/store.ts';
import { Book } from '#core/desk/openBook.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';
import { anyAct, founding, type Act } from '#tests/journal/anyRows.ts';
import { acts, faultOf, standingEntries, trialBook } from '#tests/journal/trialBook.ts';

let scratch: ReturnType<typeof scratchFolder>;
let long: ReturnType<typeof trialDesk>;
let short: ReturnType<typeof trialDesk>;
beforeEach(() => {
  scratch = scratchFolder();
  long = trialDesk(scratch.folder);
  short = trialDesk(scratch.folder);
});
afterEach(async () => {
  await long.desk.close();
  await short.desk.close();
  scratch.remove();
});

interface Content {
  readonly settings: ReadonlyMap<string, string>;
  readonly yards: readonly Yard[];
  readonly gestures: readonly Gesture[];
  readonly stored: readonly StoredEntry[];
  readonly standing: readonly StoredEntry[];
}

async function contentOf(book: Book): Promise<Content> {
  const { store } = book;
  const stored = await store.entries({});
  return { settings: await store.settings(), yards: await store.yards(), gestures: await store.gestures(), stored, standing: stored.filter(({ struck }) => struck === null) };
}

let made = 0;
/** Opens a book that holds nothing but the standing entries up to the day, and the yards known by then; its today is that day. */
async function openShort({ settings, yards, gestures, stored, standing }: Content, until: Day): Promise<void> {
  const path = join(scratch.folder, `short-${(made += 1)}.outyard`);
  const book = await Book.create(path, new Map([...settings].filter(([key]) => key === 'name').concat([['demoDay', until]])));
  const entries = standing.filter(({ entry }) => entry.day <= until);
  const names = (some: readonly StoredEntry[], yard: Yard) => some.some(({ entry }) => new RegExp(`"(yard|toYard)":${yard.id}\\b`).test(JSON.stringify(entry.body)));
  for (const yard of yards) if (names(stored.filter(({ entry }) => entry.day <= until), yard) || !names(standing, yard)) await book.store.keepYard(yard);
  for (const { id, at, kind, title } of gestures) {
    const own = entries.filter(({ gesture }) => gesture === id).map(({ entry }) => ({ entry, replaces: null }));
    if (own.length > 0) await book.store.commit({ at, kind, title, undoes: null, yards: [], entries: own, marks: [], states: [], vanished: [] }, await book.store.position());
  }
  await book.store.rebuild();
  await book.store.close();
  await short.ask('book.open', { path });
}

type Asked = { [Name in OperationName]: { readonly name: Name; readonly input: InputOf<Name> } }[OperationName];
/** What screens ask of the operation as a whole. */
const asked: readonly Asked[] = [
  { name: 'colonies.list', input: { which: 'all' } },
  { name: 'colonies.list', input: { which: 'living' } },
  { name: 'yards.list', input: {} },
  { name: 'losses.review', input: { united: 'lost' } },
  { name: 'losses.review', input: { united: 'takenOut' } },
  { name: 'lines.picture', input: {} },
  { name: 'lines.picture', input: { view: 'first' } },
  { name: 'lines.lanes', input: { from: 3, most: 4 } },
  { name: 'lines.rows', input: { by: 'family', from: 1, most: 3 } },
  { name: 'stock.table', input: {} },
  { name: 'needs.list', input: { yard: null } },
  { name: 'find.all', input: { text: 'superseded', limit: 50 } },
  { name: 'find.all', input: { text: 'g1 queen', limit: 50 } },
];

/** The open book as of the day answers as the book that ends that day. */
async function expectSame(content: Content, until: Day): Promise<number> {
  await openShort(content, until);
  const all = [...asked];
  const { rows, yards } = await short.ask('colonies.list', { which: 'all' });
  for (const { id } of rows.slice(-8)) all.push({ name: 'colony.strip', input: { id } }, { name: 'colony.story', input: { id } });
  for (const { id } of yards) all.push({ name: 'yard.page', input: { id } });
  for (const { name, input } of all) {
    const then = await long.desk.call(name, { ...input, asOf: until });
    const ended = await short.desk.call(name, input);
    if (!then.ok || !ended.ok) throw new Error(`${name} as of ${until}: ${JSON.stringify([then, ended])} ${long.log.join('\n')}`);
    expect(contract[name].output.parse(then.value)).toEqual(then.value);
    expect(withoutStruck(then.value), `${name} as of ${until}`).toEqual(ended.value);
  }
  const recent = await long.ask('journal.recent', { limit: 200, asOf: until });
  const ended = await short.ask('journal.recent', { limit: 200 });
  expect(recent.gestures.map(({ id: _, ...gesture }) => ({ ...gesture, undone: false }))).toEqual(ended.gestures.map(({ id: _, ...gesture }) => gesture));
  expect([recent.canUndo, recent.canRedo]).toEqual([null, null]);
  const [status, own] = [await long.ask('book.status', { asOf: until }), await short.ask('book.status', {})];
  expect(status.today).toBe(until);
  const same = { path: '', position: 0, demo: true };
  expect({ ...status.book, ...same }).toEqual({ ...own.book, ...same });
  await short.ask('book.close', {});
  return rows.length;
}

/** Struck entries are told in the book they were struck in, and were never in the short one. */
function withoutStruck(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((one: unknown) => !isStruck(one)).map(withoutStruck);
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.fromEntries(Object.entries(value).map(([key, part]) => [key, withoutStruck(part)]));
  if (!('total' in value) || !('rows' in value) || !Array.isArray(value.rows)) return parts;
  return { ...parts, total: Number(value.total) - value.rows.filter(isStruck).length };
}

function isStruck(one: unknown): boolean {
  return typeof one === 'object' && one !== null && 'struck' in one && one.struck === true;
}

test('the demo as of a day is the book that ends that day', async () => {
  const { book: status } = await long.ask('book.demo', { which: 'ossar' });
  await long.ask('book.close', {});
  const book = await Book.open(status?.path ?? '');
  const content = await contentOf(book);
  const { firstDay, lastDay } = await book.store.counts();
  await book.store.close();
  await long.ask('book.open', { path: book.path });
  if (firstDay === null || lastDay === null) throw new Error('the demo has records');
  const between = fc.sample(fc.integer({ min: 1, max: daysBetween(firstDay, lastDay) - 1 }), 4).toSorted((a, b) => a - b);
  const counts: number[] = [];
  for (const until of [firstDay, ...between.map((after) => addDays(firstDay, after)), lastDay]) counts.push(await expectSame(content, until));
  expect(counts).toEqual(counts.toSorted((a, b) => a - b));
  expect(counts.at(-1)).toBeGreaterThan(counts[0] ?? 0);
}, 60_000);

test('so is any book after any acts: what was struck, replaced, undone or entered late counts as it stands now', async () => {
  await fc.assert(fc.asyncProperty(fc.array(anyAct, { minLength: 4, maxLength: 12 }), fc.integer({ min: 0, max: 450 }), async (done, after) => {
    const path = join(scratch.folder, `long-${(made += 1)}.outyard`);
    const book = await Book.create(path, new Map([['name', 'Any']]));
    await trialBook(book.store);
    await acts.enter(book.store, founding);
    for (const act of done) await faultOf(() => doIt(book, act));
    const content = await contentOf(book);
    const { firstDay } = await book.store.counts();
    await book.store.close();
    if (firstDay === null) return;
    await long.ask('book.open', { path });
    await expectSame(content, addDays(firstDay, after));
    await long.ask('book.close', {});
  }), { numRuns: 12 });
}, 60_000);

async function doIt({ store }: Book, act: Act): Promise<unknown> {
  const standing = await standingEntries(store);
  const chosen = 'at' in act ? standing[act.at % Math.max(1, standing.length)] : undefined;
  if (act.what === 'enter' || act.what === 'import') return acts.enter(store, act.rows);
  if (act.what === 'undo') return acts.undo(store);
  if (act.what === 'redo') return acts.redo(store);
  if (chosen === undefined || act.what === 'undo that') return null;
  if (act.what === 'strike') return acts.strike(store, chosen.id);
  return act.what === 'replace' ? acts.replace(store, chosen.id, act.cells) : null;
}

const rows = [
  { date: '2026-04-24', entry: 'install', yard: 'LB', colony: 'LB-1', origin: 'package' },
  { date: '2026-05-24', entry: 'install', yard: 'NS', colony: 'NS-1', origin: 'nuc' },
] as const;

test('a day without anything to show is answered with a sentence', async () => {
  expect(await long.answer('book.status', { asOf: '2026-01-01' })).toMatchObject({ ok: true, value: { book: null } });
  await long.ask('book.create', { name: 'Ossar Valley' });
  const sentence = async (asOf: string) => {
    const found = await long.answer('colonies.list', { which: 'living', asOf });
    return found.ok ? null : [found.code, found.field, found.sentence];
  };
  expect(await sentence('2026-01-01')).toEqual(['refused', 'asOf', 'This book has no record yet, so there is no earlier day to look at.']);
  for (const code of ['LB', 'NS', 'QY']) await long.ask('yard.keep', { code, name: `Yard ${code}`, room: null, minutes: null });
  await long.ask('journal.enter', { rows: [...rows] });
  expect(await sentence('2026-04-23')).toEqual(['refused', 'asOf', 'The first record in this book is of 24 April 2026; there is nothing to see on 23 April 2026.']);
  expect(await sentence('2026-11-26')).toEqual(['refused', 'asOf', '26 November 2026 is still to come; today is 25 November 2026.']);
  expect(await sentence('2026-02-30')).toEqual(['bad-input', 'asOf', 'What was typed is no day.']);
  for (const asOf of ['2026-04-24', '2026-11-25']) expect(await sentence(asOf)).toBeNull();
});

test('a yard is there from its first record on; one without any record has no day on which it began', async () => {
  await long.ask('book.create', { name: 'Ossar Valley' });
  for (const code of ['LB', 'NS', 'QY']) await long.ask('yard.keep', { code, name: `Yard ${code}`, room: null, minutes: null });
  await long.ask('journal.enter', { rows: [...rows] });
  const yards = async (asOf: string) => (await long.ask('yards.list', { asOf })).yards.map(({ code, living }) => `${code} ${living}`);
  expect(await yards('2026-05-23')).toEqual(['LB 1', 'QY 0']);
  expect(await yards('2026-05-24')).toEqual(['LB 1', 'NS 1', 'QY 0']);
  const late = await long.answer('colony.story', { id: 2, asOf: '2026-05-23' });
  expect(late).toMatchObject({ ok: false, code: 'unknown', sentence: 'What you ask for was not in the book on 23 May 2026.' });
  // An entry of the day looked at, entered and struck meanwhile, is seen at once: nothing old is kept.
  await long.ask('journal.enter', { rows: [{ date: '2026-05-20', entry: 'install', yard: 'NS', colony: 'NS-2', origin: 'nuc' }] });
  expect(await yards('2026-05-23')).toEqual(['LB 1', 'NS 1', 'QY 0']);
  await long.ask('journal.undo', {});
  expect((await long.ask('book.status', { asOf: '2026-05-23' })).book?.living).toBe(1);
});

test('only what shows the operation takes a day, and whatever enters something is refused meanwhile', async () => {
  const names = Object.keys(contract).filter(isOperationName);
  for (const name of alwaysNow) expect(contract[name].kind, name).toBe('read');
  for (const name of names) expect(answersAsOf(name), name).toBe(contract[name].kind === 'read' && !alwaysNow.has(name));
  // Nothing that changes the record, or what stands beside it, is let through.
  const through = names.filter((name) => contract[name].kind === 'write' && !isRefusedLookingBack(name));
  expect(through.toSorted()).toEqual(['book.close', 'book.create', 'book.demo', 'book.open', 'draft.drop', 'draft.keep', 'work.stop']);
  // The desk itself takes no day with a write.
  await long.ask('book.create', { name: 'Ossar Valley' });
  expect(await long.desk.call('journal.enter', { rows: [...rows], asOf: '2026-05-01' })).toMatchObject({ ok: false, code: 'bad-input' });
  expect(await long.desk.call('draft.fetch', { key: 'a', asOf: day('2026-05-01') })).toMatchObject({ ok: false, code: 'bad-input' });
});
