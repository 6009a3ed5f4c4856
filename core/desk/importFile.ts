import type { DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, type RowFault } from '#shared/faults.ts';
import type { NewItem } from '#shared/contract/nearItems.ts';
import { strangeIn } from '#shared/ordinary.ts';
import { importRows, readRows, yardsNamedByInstalls, yardsUsed } from '#core/exchange/importRows.ts';
import { readCsv, type CsvRow } from '#core/exchange/readCsv.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { YardBook, type Yard } from '#core/journal/yardBook.ts';
import { rowKey, writeRow } from '#core/journal/writeRow.ts';
import type { Store } from '#core/book/store.ts';
import { knownItems, newItems, withMeant } from './nearItemHandlers.ts';
import { loadWorking } from './loadWorking.ts';
import { isInJournal, keptRows, unsortedRows, type RowAt, type UnsortedRow } from './keptRows.ts';
import { namesOf } from './names.ts';
import type { Book } from './openBook.ts';

export interface FileImport {
  readonly read: number;
  readonly entries: readonly Entry[];
  /** The line of each entry's row. */
  readonly lines: readonly number[];
  readonly repeats: readonly number[];
  readonly toSortOut: readonly RowFault[];
  /** What stands in each row to sort out, to be kept until it is. */
  readonly unsorted: readonly UnsortedRow[];
  /** How many of them the book does not hold yet. */
  readonly toKeep: number;
  readonly newYards: readonly Yard[];
  /** Possible figures out of the ordinary, by line. */
  readonly strange: readonly { readonly line: number; readonly sentence: string }[];
  readonly newItems: readonly NewItem[];
  readonly states: readonly ColonyState[];
  /** Colonies alive after the last entry, the file's rows included. */
  readonly living: number;
  readonly position: number;
}

/** What entering the file would do to the book; nothing is changed. Throws a FaultError for a file that cannot be read. */
export async function importFile(book: Book, bytes: Uint8Array, fileName: string, items?: Readonly<Record<string, string>>): Promise<FileImport> {
  const { dateOrder } = await book.settings();
  return importBytes(book.store, bytes, fileName, dateOrder, items);
}

export async function importBytes(store: Store, bytes: Uint8Array, fileName: string, order: DateOrder, items?: Readonly<Record<string, string>>): Promise<FileImport> {
  const file = readCsv(bytes, fileName);
  if (!file.ok) throw new FaultError(file);
  return importRead(store, file.value, order, [], undefined, items);
}

/** What entering rows of the exchange form would do to the book. `items` says what is meant by new items that read almost like others. `aside` are rows that could not be brought into that form; they are counted and listed with the rest. */
export async function importRead(store: Store, written: readonly CsvRow[], order: DateOrder, aside: readonly RowFault[] = [], rowAt: RowAt = rowsOf(written, order), items: Readonly<Record<string, string>> = {}): Promise<FileImport> {
  const file = withMeant(written, items);
  const position = await store.position();
  const before = new YardBook(await store.yards());
  const read = readRows(file, order, before);
  const counts = await store.counts();
  const next = await store.nextIds();
  const yards = before.with(yardsNamedByInstalls(read.rows), next.yard);
  const known = await knownKeys(store, before);
  const newWorkingSet = await loadWorking(store, yards, read.rows.map(({ row }) => row));
  const outcome = importRows(read, known, newWorkingSet);
  const used = yardsUsed(outcome.entries);
  const old = new Set(before.list().map((yard) => yard.id));
  const changed = outcome.working.changed();
  const stateBefore = new Map((await store.states(changed.map((state) => state.id))).map((state) => [state.id, state]));
  const difference = changed.reduce((sum, state) => sum + (state.end === null ? 1 : 0) - (stateBefore.get(state.id)?.end === null ? 1 : 0), 0);
  const faults = [...outcome.toSortOut, ...aside].toSorted((a, b) => a.line - b.line);
  const unsorted = unsortedRows(faults, rowAt);
  const kept = new Map((await keptRows(store)).map((row) => [row.key, row.state]));
  // A row that was mended and entered is in the book, whatever the file still says.
  const mended = new Set(unsorted.filter(({ key }) => kept.get(key) === 'entered').map(({ fault }) => fault.line));
  const entering = new Set(outcome.entries.map(({ line }) => line));
  return {
    read: file.length + aside.length,
    entries: outcome.entries.map(({ entry }) => entry),
    lines: outcome.entries.map(({ line }) => line),
    repeats: [...outcome.repeats, ...mended].toSorted((a, b) => a - b),
    toSortOut: faults.filter(({ line }) => !mended.has(line)),
    unsorted: unsorted.filter(({ fault }) => !mended.has(fault.line)),
    toKeep: unsorted.filter(({ key }) => !kept.has(key) || kept.get(key) === 'taken back').length,
    newYards: yards.list().filter((yard) => !old.has(yard.id) && used.has(yard.id)),
    strange: file.flatMap(({ line, cells }) => (entering.has(line) ? strangeIn(cells).map(({ sentence }) => ({ line, sentence })) : [])),
    newItems: newItems(written, entering, await knownItems(store), items),
    states: changed,
    living: counts.living + difference,
    position,
  };
}

/**
 * Texts of the rows already in the journal: those that stand, and those a person struck (also when the strike was
 * undone and brought back), which must not come back by importing the file again. What was undone is not in the journal any more and may be imported anew.
 */
export async function knownKeys(store: Store, yards: YardBook): Promise<Set<string>> {
  const names = await namesOf(store, yards);
  const stored = await store.entries({});
  return new Set(stored.filter(isInJournal).map(({ entry }) => rowKey(writeRow(entry, names))));
}

/** The rows of a file in the exchange form as they were typed. */
function rowsOf(file: readonly CsvRow[], order: DateOrder): RowAt {
  const byLine = new Map(file.map((row) => [row.line, row]));
  return (line) => {
    const row = byLine.get(line);
    if (row === undefined) throw new Error(`the file has no row on line ${line}`);
    const cells = Object.entries(row.cells).map(([column, value]) => ({ column, value }));
    return { cells: withStray(row), typed: [...cells, ...(row.stray?.each ?? [])], order, unread: row.stray !== null };
  };
}

/** What stands outside the known columns goes to the note, so that mending the row does not lose it. */
function withStray({ cells, stray }: CsvRow): Cells {
  if (stray === null) return cells;
  const beside = stray.each.map(({ column, value }) => (column === '' ? value : `${column}: ${value}`));
  return { ...cells, note: [cells.note, ...beside].filter((text) => text !== undefined).join('; ') };
}
