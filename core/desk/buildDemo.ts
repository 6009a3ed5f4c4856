import { existsSync, renameSync, rmSync } from 'node:fs';
import type { EntryId } from '#shared/brands.ts';
import type { DemoOperation, EnteringAct } from '#core/demo/demoOperation.ts';
import { ossarOffers } from '#core/demo/ossarOffers.ts';
import { ossarHours, ossarWays } from '#core/demo/ossarWork.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { tinyYard } from '#core/demo/tinyYard.ts';
import { readRow } from '#core/journal/readRow.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import type { Change, Store } from '#core/book/store.ts';
import { lotPapers } from './lotPapers.ts';
import { offerPapers } from './offerPapers.ts';
import { Book, bookPath } from './openBook.ts';
import { strikeEntry } from './strikeAndUndo.ts';
import { distancePaperOf, hoursPaperOf } from './workPapers.ts';

export interface DemoBook {
  readonly operation: DemoOperation;
  readonly path: string;
}

export function demoBook(which: 'ossar' | 'tiny', folder: string): DemoBook {
  const operation: DemoOperation = which === 'ossar' ? { ...ossarValley(), offers: ossarOffers(), hours: ossarHours, ways: ossarWays } : tinyYard();
  return { operation, path: bookPath(folder, `${operation.name} (demo)`) };
}

/** Opens the demo book, made anew if it is not there yet. A half-made one never stands under the book's name. */
export async function openDemo({ operation, path }: DemoBook): Promise<Book> {
  if (existsSync(path)) return Book.open(path);
  const part = `${path}.part`;
  for (const leftover of [part, `${part}-wal`, `${part}-shm`]) rmSync(leftover, { force: true });
  const book = await Book.create(part, new Map([['name', operation.name], ['demoDay', operation.lastDay]]));
  try {
    await enterOperation(book.store, operation);
  } finally {
    await book.store.close();
  }
  renameSync(part, path);
  return Book.open(path);
}

/** Enters an invented operation act by act, as it was entered at its desk. */
export async function enterOperation(store: Store, operation: DemoOperation): Promise<void> {
  let nextYard = (await store.nextIds()).yard;
  for (const yard of operation.yards) {
    await store.keepYard({ ...yard, id: nextYard as Parameters<Store['keepYard']>[0]['id'] });
    nextYard += 1;
  }
  if (operation.offers !== undefined) await store.keepPapers(offerPapers(operation.offers));
  if (operation.lots !== undefined) await store.keepPapers(lotPapers(operation.lots));
  const yards = new YardBook(await store.yards());
  await keepWork(store, operation, yards);
  const entered = new Map<number, readonly Entry[]>();
  let from = 0;
  while (from < operation.acts.length) {
    const strikeAt = operation.acts.findIndex((act, at) => at >= from && 'strike' in act);
    const until = strikeAt < 0 ? operation.acts.length : strikeAt;
    await enterActs(store, yards, operation, from, until, entered);
    const act = operation.acts[until];
    if (act !== undefined && 'strike' in act) {
      const id = entered.get(act.strike.act)?.[act.strike.row]?.id;
      if (id === undefined) throw new Error(`act ${until} strikes a row that was never entered`);
      await strikeEntry(store, id as EntryId, act.reason, act.at);
    }
    from = until + 1;
  }
}

async function enterActs(store: Store, yards: YardBook, operation: DemoOperation, from: number, until: number, entered: Map<number, readonly Entry[]>): Promise<void> {
  const next = await store.nextIds();
  const states = await store.states();
  const entriesOf = await store.entriesOf(states.map((state) => state.id));
  const working = new WorkingSet({ yards, colonies: states.map((state) => ({ state, entries: entriesOf.get(state.id) ?? [] })), nextEntry: next.entry, nextColony: next.colony });
  const changes: Change[] = [];
  for (let at = from; at < until; at += 1) {
    const act = operation.acts[at];
    if (act === undefined || 'strike' in act) continue;
    const entries = enterAct(working, act);
    entered.set(at, entries);
    changes.push({
      at: act.at, kind: 'enter', title: act.title, undoes: null, yards: [], entries: entries.toSorted((a, b) => a.id - b.id).map((entry) => ({ entry, replaces: null })), marks: [], states: [], vanished: [],
    });
  }
  const last = changes.pop();
  if (last === undefined) return;
  await store.commitAll([...changes, { ...last, states: working.changed() }], await store.position());
}

/** The act's entries, in the order of its rows. */
function enterAct(working: WorkingSet, act: EnteringAct): Entry[] {
  const rows = act.rows.map((cells, at) => {
    const reading = readRow(cells, 'month-first');
    if (!reading.ok) throw new Error(`“${act.title}”, row ${at}: ${reading.trouble.sentence}`);
    return { at, row: reading.row };
  });
  const entries: Entry[] = [];
  for (const { at, row } of rows.toSorted((a, b) => (a.row.day < b.row.day ? -1 : a.row.day > b.row.day ? 1 : a.at - b.at))) {
    const added = working.add(row);
    if (!added.ok) throw new Error(`“${act.title}”, row ${at}: ${added.refusal.sentence}`);
    entries[at] = added.entry;
  }
  return entries;
}

async function keepWork(store: Store, { hours, ways }: DemoOperation, yards: YardBook): Promise<void> {
  const distances = (ways ?? []).flatMap(([one, other, minutes]) => {
    const [a, b] = [yards.find(one), yards.find(other)];
    return a === null || b === null ? [] : [distancePaperOf(a.id, b.id, minutes)];
  });
  const papers = [...(hours === undefined ? [] : [hoursPaperOf(hours)]), ...distances];
  if (papers.length > 0) await store.keepPapers(papers);
}
