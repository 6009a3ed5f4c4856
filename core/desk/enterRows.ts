import { dayInWords, type DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse, type RowFault } from '#shared/faults.ts';
import type { Written } from '#shared/contract/journal.ts';
import type { Paper, Store, StoredEntry } from '#core/book/store.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { keyOf } from '#core/exchange/keyOf.ts';
import { readRow } from '#core/journal/readRow.ts';
import { labelClashSentence } from '#core/journal/refold.ts';
import type { TypedRow } from '#core/journal/typedRow.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import type { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook, type Yard } from '#core/journal/yardBook.ts';
import { rowKey, writeRow } from '#core/journal/writeRow.ts';
import { loadWorking } from './loadWorking.ts';
import { namesOf } from './names.ts';

interface Placed {
  readonly at: number;
  readonly row: TypedRow;
}

export interface EntryPlan {
  readonly entries: readonly Entry[];
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  /** The book's position that the plan holds for. */
  readonly expected: number;
}

export type PapersFor = (entries: readonly Entry[]) => readonly Paper[];

/** Enters rows typed at the desk: all of them in one act or, if any is refused, none. Papers may be kept with the entries. */
export async function enterRows(store: Store, typed: readonly Cells[], title: string | undefined, order: DateOrder, at: string, papers?: PapersFor): Promise<Written> {
  return enterPlanned(store, await planRows(store, typed, order), title, at, papers);
}

export async function enterPlanned(store: Store, { entries, states, yards, expected }: EntryPlan, title: string | undefined, at: string, papers?: PapersFor): Promise<Written> {
  const words = title ?? actTitle(entries);
  const { gesture, position } = await store.commit(
    {
      at, kind: 'enter', title: words, undoes: null, yards, entries: entries.map((entry) => ({ entry, replaces: null })), marks: [], states, vanished: [],
      ...(papers === undefined ? {} : { papers: papers(entries) }),
    },
    expected,
  );
  const colonies = [...new Set(entries.flatMap((entry) => rulesOf(entry.kind).touches(entry.body).map((touch) => touch.colony)))];
  return { gesture, sentence: `${words}: ${countWords(entries.length, 'entry', 'entries')} in the book.`, entered: entries.length, struck: 0, colonies, position };
}

/** What entering the rows would do; nothing is changed. Throws a FaultError that names every row that cannot stand. */
export async function planRows(store: Store, typed: readonly Cells[], order: DateOrder): Promise<EntryPlan & { working: WorkingSet }> {
  const expected = await store.position();
  const yards = new YardBook(await store.yards());
  const faults: RowFault[] = [];
  const rows: Placed[] = [];
  typed.forEach((cells, index) => {
    const reading = readRow(cells, order);
    if (reading.ok) rows.push({ at: index, row: reading.row });
    else faults.push({ line: index, ...reading.trouble });
  });
  rows.sort((a, b) => (a.row.day < b.row.day ? -1 : a.row.day > b.row.day ? 1 : a.at - b.at));
  if (faults.length > 0) throw refusedRows(faults);

  const working = (await loadWorking(store, yards, rows.map(({ row }) => row)))();
  const standing = await standingKeys(store, yards, rows.map(({ row }) => row));
  const entries: Entry[] = [];
  const indexOf = new Map<Entry, number>();
  for (const { at: index, row } of rows) {
    const key = keyOf(row, yards);
    if (standing.has(key)) {
      faults.push({ line: index, column: null, value: '', sentence: `The same entry of ${dayInWords(row.day)} is in the book already. If it did happen twice, say so in the note.` });
      continue;
    }
    standing.add(key);
    const added = working.add(row);
    if (added.ok) {
      entries.push(added.entry);
      indexOf.set(added.entry, index);
      continue;
    }
    const { column, sentence } = added.refusal;
    faults.push({ line: index, column, value: (column === null ? undefined : typed[index]?.[column]) ?? '', sentence });
  }
  for (const { created, sentenceAbout } of working.clashes()) {
    const index = indexOf.get(created) ?? 0;
    const column = created.kind === 'split' ? 'new_colony' : 'colony';
    faults.push({ line: index, column, value: typed[index]?.[column] ?? '', sentence: labelClashSentence(sentenceAbout) });
  }
  if (faults.length > 0) throw refusedRows(faults);

  return { entries, states: working.changed(), yards: [], expected, working };
}

/** Texts of the rows that stand on the days of the given ones. */
async function standingKeys(store: Store, yards: YardBook, rows: readonly TypedRow[]): Promise<Set<string>> {
  const days = [...new Set(rows.map((row) => row.day))];
  const names = await namesOf(store, yards);
  const found: StoredEntry[] = [];
  for (const day of days) found.push(...(await store.entries({ from: day, until: day })));
  return new Set(found.filter(({ struck }) => struck === null).map(({ entry }) => rowKey(writeRow(entry, names))));
}

function actTitle(entries: readonly Entry[]): string {
  const kinds = new Set(entries.map((entry) => entry.kind));
  const [first] = entries;
  const what = kinds.size === 1 && first !== undefined ? first.kind : 'records';
  return `${what.charAt(0).toUpperCase()}${what.slice(1)} of ${first === undefined ? '' : dayInWords(first.day)}`;
}

export function countWords(count: number, one: string, many: string): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}

export function refusedRows(rows: RowFault[]): FaultError {
  const ordered = rows.toSorted((a, b) => a.line - b.line);
  const [first] = ordered;
  return new FaultError(
    refuse('refused', first === undefined ? 'Nothing was entered.' : first.sentence, {
      mend: rows.length > 1 ? `Nothing was entered yet; ${rows.length} rows need mending.` : 'Nothing was entered yet; mend the row and enter it again.',
      rows: ordered,
      ...(first?.column == null ? {} : { field: first.column }),
    }),
  );
}
