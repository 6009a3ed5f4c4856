import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { EntryId } from '#shared/brands.ts';
import type { Fault } from '#shared/faults.ts';
import { openDatabase } from '#core/book/openDatabase.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import type { Store } from '#core/book/store.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { acts, exported, faultOf, imported, standingEntries } from '#tests/journal/trialBook.ts';
import { scratchFolder, writeBook } from './trialFile.ts';

let folder = '';
let remove = () => {};
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => remove());

const long = 'x'.repeat(3000);
const many = (turn: number) => Array.from({ length: 12 }, (_, at) => ({ date: `2024-06-${String(at + 1).padStart(2, '0')}`, entry: 'inspection', colony: 'G1', note: `${turn} ${at} ${long}` }));
const file = (turn: number) => ['date,entry,colony,note', ...many(turn).map(({ date, note }) => `${date},inspection,G2,${note}`)].join('\n');
const lastLook = async (store: Store) => (await standingEntries(store)).findLast((entry) => entry.kind === 'inspection')?.id ?? (1 as EntryId);
const snapshot = async (store: Store) => [await exported(store), await store.projectionText(), await store.position(), JSON.stringify(await store.gestures()), [...(await store.rules())]];

test.each<[string, (store: Store, turn: number) => Promise<unknown>]>([
  ['entering rounds', (store, turn) => acts.enter(store, many(turn))],
  ['importing files', (store, turn) => imported(store, file(turn))],
  ['replacing', async (store, turn) => acts.replace(store, await lastLook(store), { date: '2024-05-01', entry: 'inspection', colony: 'G4', note: `${turn} ${long}` })],
  ['striking and undoing', async (store, turn) => (turn % 2 === 0 ? acts.strike(store, await lastLook(store)) : acts.undo(store))],
  ['undoing and bringing back', async (store, turn) => (turn % 2 === 0 ? acts.undo(store) : acts.redo(store))],
  ['keeping drafts', (store, turn) => store.drafts.keep(`round ${turn}`, long)],
  ['keeping rules', (store, turn) => store.keepRule(`rule ${turn}`, long)],
])('%s until the disk is full: each done whole or not at all, said as a full disk, and usable after', async (_, write) => {
  for (const room of [0, 1, 2, 5]) {
    const path = join(folder, `${room}.outyard`);
    await writeBook(path);
    const database = openDatabase(path);
    const store = sqliteStore(database, path);
    database.pragma(`max_page_count = ${(database.pragma('page_count', { simple: true }) as number) + room}`);
    let fault: Fault | null = null;
    for (let turn = 0; fault === null && turn < 400; turn += 1) {
      const before = await snapshot(store);
      fault = await faultOf(() => write(store, turn));
      if (fault !== null) expect(await snapshot(store)).toEqual(before);
    }
    expect(fault).toMatchObject({ code: 'disk-full', sentence: expect.stringContaining('What was saved before is safe') });
    database.pragma('max_page_count = 1000000');
    expect(await faultOf(() => acts.enter(store, [{ date: '2024-09-09', entry: 'note', note: `room ${room}` }]))).toBeNull();
    expect(await store.findings()).toEqual([]);
    expect(JSON.stringify(await store.states())).toBe(JSON.stringify(statesAsOf(await standingEntries(store))));
    await store.close();
  }
});
