import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { GestureId } from '#shared/brands.ts';
import { entryId, gestureId } from '#shared/contract/values.ts';
import { dayFromTyped, type DateOrder } from '#shared/days.ts';
import { columns, type Cells } from '#shared/entryForms.ts';
import type { RowFault } from '#shared/faults.ts';
import type { Paper, Store, StoredEntry } from '#core/book/store.ts';
import { undoState } from './undoState.ts';

/*
 * Rows of imported files that could not stand are kept as papers, in the same transaction as the import. Such a paper
 * is never taken away: whether its row waits, is entered, or went with an import that was taken back follows from the
 * journal's acts, so that undo and redo carry it along.
 */

const paperKind = 'sort out';

const typedRow = {
  /** In the exchange form as far as the cells could be told apart; what could not be read stands as typed. */
  cells: z.partialRecord(z.enum(columns), z.string()),
  /** Every cell under the file's own name for its column. */
  typed: z.array(z.object({ column: z.string(), value: z.string() })),
  /** The order in which days with slashes were read. */
  order: z.enum(['month-first', 'day-first']),
  /** True where a cell could not be carried over as it is, so that only a person can say what the row means. */
  unread: z.boolean(),
};

const paper = z.object({
  ...typedRow,
  file: z.string(),
  line: z.number().int(),
  column: z.string().nullable(),
  value: z.string(),
  sentence: z.string(),
  /** The imports that brought it; it is there as long as one of them stands. */
  imports: z.array(gestureId),
  /** What was entered for it. */
  entries: z.array(entryId),
  aside: z.object({ reason: z.string(), at: z.string() }).nullable(),
});
type KeptPaper = z.infer<typeof paper>;

/** What stands in one row of a file. */
export interface TypedLine {
  readonly cells: Cells;
  readonly typed: readonly { readonly column: string; readonly value: string }[];
  readonly order: DateOrder;
  readonly unread: boolean;
}
export type RowAt = (line: number) => TypedLine;

export interface UnsortedRow extends TypedLine {
  /** The same for the same cells, whatever file they stand in; two such rows of one file have two. */
  readonly key: string;
  readonly fault: RowFault;
}

export interface KeptRow extends KeptPaper {
  readonly key: string;
  readonly state: 'waiting' | 'set aside' | 'entered' | 'taken back';
}

/** What stands in the rows to sort out, with the key that each is kept under. */
export function unsortedRows(faults: readonly RowFault[], rowAt: RowAt): UnsortedRow[] {
  const seen = new Map<string, number>();
  return faults.map((fault) => {
    const line = rowAt(fault.line);
    const text = JSON.stringify(line.typed.map(({ column, value }) => [column, value]).toSorted(([a = ''], [b = '']) => (a < b ? -1 : a > b ? 1 : 0)));
    const hash = createHash('sha256').update(text).digest('hex').slice(0, 32);
    const turn = (seen.get(hash) ?? 0) + 1;
    seen.set(hash, turn);
    return { ...line, key: turn === 1 ? hash : `${hash}-${turn}`, fault };
  });
}

/** An entry that stands, or that a person struck: what was only undone is not in the journal any more. */
export function isInJournal({ struck }: Pick<StoredEntry, 'struck'>): boolean {
  return struck === null || struck.by !== 'undo';
}

/** Every row ever kept, in the order of its import and its line. */
export async function keptRows(store: Store): Promise<KeptRow[]> {
  const papers = await store.papers(paperKind);
  if (papers.size === 0) return [];
  const { undone } = undoState(await store.gestures());
  const rows = [...papers].map(([key, text]) => ({ key, ...paper.parse(JSON.parse(text)) }));
  const entries = await store.entries({ ids: rows.flatMap((row) => row.entries) });
  const there = new Set(entries.filter(isInJournal).map(({ entry }) => entry.id));
  const stateOf = (row: KeptPaper): KeptRow['state'] => {
    if (row.imports.every((id) => undone.has(id))) return 'taken back';
    if (row.entries.some((id) => there.has(id))) return 'entered';
    return row.aside === null ? 'waiting' : 'set aside';
  };
  return rows
    .map((row) => ({ ...row, state: stateOf(row) }))
    .toSorted((a, b) => (a.imports[0] ?? 0) - (b.imports[0] ?? 0) || a.line - b.line || (a.key < b.key ? -1 : 1));
}

/** The papers that keep the rows an import could not enter; a row that is there already is not kept twice. */
export function papersOfImport(kept: readonly KeptRow[], unsorted: readonly UnsortedRow[], file: string): (gesture: GestureId) => Paper[] {
  const known = new Map(kept.map((row) => [row.key, row]));
  return (gesture) =>
    unsorted.map(({ key, fault, cells, typed, order, unread }) => {
      const old = known.get(key);
      const fresh = { cells, typed: [...typed], order, unread, file, line: fault.line, column: fault.column, value: fault.value, sentence: fault.sentence };
      if (old === undefined) return paperOf(key, { ...fresh, imports: [gesture], entries: [], aside: null });
      return paperOf(key, { ...old, ...(old.state === 'taken back' ? fresh : {}), imports: [...old.imports, gesture] });
    });
}

export function paperOf(key: string, body: KeptPaper): Paper {
  // Parsing leaves out what only the reader added.
  return { kind: paperKind, key, body: JSON.stringify(paper.parse(body)) };
}

/** The cells with their days as the exchange form writes them, so that they mean the same whatever order the book is set to. */
export function plainCells({ cells, order }: Pick<TypedLine, 'cells' | 'order'>): Cells {
  const plain: Cells = { ...cells };
  for (const column of ['date', 'end_date'] as const) {
    const typed = cells[column];
    const day = typed === undefined ? null : dayFromTyped(typed, order);
    if (day !== null) plain[column] = day;
  }
  return plain;
}
