import { FaultError } from '#shared/faults.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { RowJudgement } from '#shared/contract/sortOut.ts';
import { dayInWords, type DateOrder } from '#shared/days.ts';
import { importRows, readRows, yardsNamedByInstalls } from '#core/exchange/importRows.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import type { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import type { Store } from '#core/book/store.ts';
import { planRows } from './enterRows.ts';
import { knownKeys } from './importFile.ts';
import { plainCells, type KeptRow } from './keptRows.ts';
import { loadWorking } from './loadWorking.ts';
import { namesOf } from './names.ts';

export interface Judged {
  /** Waiting rows that could be entered as typed, all of them together, each with its entry in words. */
  readonly ready: ReadonlyMap<string, string>;
  /** What is against each of the others, as the book is now. */
  readonly against: ReadonlyMap<string, string>;
  /** Rows that the book holds as an entry, entered in another way. */
  readonly inBook: ReadonlySet<string>;
}

/** Looks at every waiting row as it was typed; nothing is changed. */
export async function judgeWaiting(store: Store, waiting: readonly KeptRow[]): Promise<Judged> {
  const against = new Map<string, string>();
  const ready = new Map<string, string>();
  const inBook = new Set<string>();
  const rows = waiting.filter((row) => !row.unread);
  if (rows.length === 0) return { ready, against, inBook };
  const before = new YardBook(await store.yards());
  // A row's place in the list stands for its line.
  const read = readRows(rows.map((row, line) => ({ line, cells: plainCells(row), stray: null })), 'month-first', before);
  const known = await knownKeys(store, before);
  const yards = before.with(yardsNamedByInstalls(read.rows), (await store.nextIds()).yard);
  const outcome = importRows(read, known, await loadWorking(store, yards, read.rows.map(({ row }) => row)));
  const names = namesWith(await namesOf(store, yards), outcome.working);
  const keyAt = (line: number) => rows[line]?.key ?? '';
  for (const { line, sentence } of outcome.toSortOut) against.set(keyAt(line), sentence);
  for (const { line, entry } of outcome.entries) ready.set(keyAt(line), sentenceOf(entry, names));
  for (const { line, key } of read.rows) if (known.has(key)) inBook.add(keyAt(line));
  for (const line of outcome.repeats) {
    if (!inBook.has(keyAt(line))) against.set(keyAt(line), 'It says the same as another row that waits here. Enter one of the two, or set one aside.');
  }
  return { ready, against, inBook };
}

/** What entering these cells would do, by the computation that enters them; nothing is changed. */
export async function judgeCells(store: Store, cells: Cells, order: DateOrder): Promise<RowJudgement> {
  try {
    const { entries, working } = await planRows(store, [cells], order);
    const names = namesWith(await namesOf(store), working);
    return { says: entries.map((entry) => sentenceOf(entry, names)).join(' '), refusals: [] };
  } catch (error) {
    if (!(error instanceof FaultError) || error.fault.code !== 'refused') throw error;
    return { says: null, refusals: (error.fault.rows ?? []).map(({ column, sentence }) => ({ column, sentence })) };
  }
}

/** Colonies that only the rows make have their labels, too. */
function namesWith(names: Names, working: WorkingSet): Names {
  const made = new Map(working.states().map((state) => [state.id, state.label]));
  return { ...names, colony: (id) => made.get(id) ?? names.colony(id) };
}

/** "2 May 2026, LB-09: Looked at: 6 frames of bees." */
function sentenceOf({ kind, body, day }: Entry, names: Names): string {
  const { touches, sentence } = rulesOf(kind);
  const labels = touches(body as never).map(({ colony }) => names.colony(colony));
  return `${dayInWords(day)}${labels.length === 0 ? '' : `, ${labels.join(' and ')}`}: ${sentence(body as never, names)}`;
}
