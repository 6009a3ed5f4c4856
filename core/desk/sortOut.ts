import type { SortOutCounts, WaitingRow } from '#shared/contract/sortOut.ts';
import type { Written } from '#shared/contract/journal.ts';
import type { DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Store } from '#core/book/store.ts';
import { countWords, enterPlanned, enterRows } from './enterRows.ts';
import { importRead } from './importFile.ts';
import { judgeWaiting, type Judged } from './judgeRows.ts';
import { keptRows, paperOf, plainCells, type KeptRow } from './keptRows.ts';

export interface Desktop extends Judged {
  readonly position: number;
  readonly rows: readonly KeptRow[];
  readonly counts: SortOutCounts;
}

/** What waits in each open book, looked at once for each change of the book. */
const looked = new WeakMap<Store, Desktop>();

/** Enters a row as mended, and notes with it what was entered. */
export async function enterWaiting(store: Store, key: string, cells: Cells, order: DateOrder, at: string): Promise<Written> {
  const row = openRow(await desktop(store), key);
  return enterRows(store, [cells], `Sorted out: line ${row.line} of ${row.file}`, order, at, ([entry]) =>
    entry === undefined ? [] : [paperOf(key, { ...row, aside: null, entries: [...row.entries, entry.id] })],
  );
}

/** Enters all rows that can stand as they were typed, in one act. */
export async function enterAllReady(store: Store, at: string): Promise<Written> {
  const found = await desktop(store);
  const ready = found.rows.filter((row) => row.state === 'waiting' && found.ready.has(row.key));
  if (ready.length === 0) throw new FaultError(refuse('nothing-to-enter', 'No row that waits can be entered as it was typed.', { mend: 'Open a row and mend it.' }));
  const plan = await importRead(store, ready.map((row, line) => ({ line, cells: plainCells(row), stray: null })), 'month-first');
  const papers = plan.entries.flatMap((entry, place) => {
    const row = ready[plan.lines[place] ?? -1];
    return row === undefined ? [] : [paperOf(row.key, { ...row, entries: [...row.entries, entry.id] })];
  });
  const title = `Sorted out: ${countWords(papers.length, 'row', 'rows')} as typed`;
  return enterPlanned(store, { entries: plan.entries, states: plan.states, yards: plan.newYards, expected: plan.position }, title, at, () => papers);
}

/** Sets a row aside with a reason, or lets it wait again. */
export async function keepAside(store: Store, key: string, aside: { reason: string; at: string } | null): Promise<SortOutCounts> {
  const found = await desktop(store);
  const row = aside === null ? keptRow(found, key) : openRow(found, key);
  if (aside === null && row.state !== 'set aside') throw new FaultError(refuse('refused', 'That row is not set aside any more.'));
  await store.keepPapers([paperOf(key, { ...row, aside })]);
  return (await desktop(store)).counts;
}

/** What waits, as the book is now. */
export async function desktop(store: Store): Promise<Desktop> {
  const position = await store.position();
  const last = looked.get(store);
  if (last?.position === position) return last;
  const rows = await keptRows(store);
  const judged = await judgeWaiting(store, rows.filter(({ state }) => state === 'waiting'));
  const count = (state: KeptRow['state']) => rows.filter((row) => row.state === state).length;
  const counts = { waiting: count('waiting') - judged.inBook.size, ready: judged.ready.size, aside: count('set aside'), entered: count('entered') + judged.inBook.size };
  const found = { position, rows, ...judged, counts };
  looked.set(store, found);
  return found;
}

export function waits(row: KeptRow, { inBook }: Judged): boolean {
  return row.state === 'waiting' && !inBook.has(row.key);
}

export function keptRow({ rows }: Desktop, key: string): KeptRow {
  const row = rows.find((one) => one.key === key);
  if (row === undefined || row.state === 'taken back') throw new FaultError(refuse('unknown', 'That row is not kept in this book, or its import was taken back.'));
  return row;
}

/** A row that can still be entered or set aside. */
export function openRow(found: Desktop, key: string): KeptRow {
  const row = keptRow(found, key);
  if (row.state === 'entered' || found.inBook.has(key)) throw new FaultError(refuse('refused', `Line ${row.line} of ${row.file} is in the book already.`, { mend: 'Nothing was entered twice.' }));
  return row;
}

const shownLetters = 200;

export function view(row: KeptRow, { ready, against }: Judged): WaitingRow {
  return {
    key: row.key, file: row.file, line: row.line, column: row.column, value: row.value.slice(0, shownLetters), sentence: against.get(row.key) ?? row.sentence,
    ready: row.state === 'waiting' ? (ready.get(row.key) ?? null) : null, aside: row.state === 'set aside' ? row.aside : null,
  };
}
