import type { DateOrder } from '#shared/days.ts';
import type { RowFault } from '#shared/faults.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { labelClashSentence } from '#core/journal/refold.ts';
import { readRow } from '#core/journal/readRow.ts';
import type { TypedRow } from '#core/journal/typedRow.ts';
import type { WorkingSet } from '#core/journal/workingSet.ts';
import type { YardBook } from '#core/journal/yardBook.ts';
import { rowKey } from '#core/journal/writeRow.ts';
import { keyOf } from './keyOf.ts';
import type { YardId } from '#shared/brands.ts';
import type { CsvRow } from './readCsv.ts';

/** A row of the file that can be read by itself, with the text that tells whether it repeats another. */
export interface ReadableRow {
  readonly line: number;
  readonly row: TypedRow;
  readonly key: string;
}

export interface ReadRows {
  readonly rows: readonly ReadableRow[];
  /** Lines of unreadable rows that repeat an earlier one cell by cell. */
  readonly repeats: readonly number[];
  readonly toSortOut: readonly RowFault[];
}

export interface ImportOutcome {
  /** Entries in the order in which they apply, each with its row's text. */
  readonly entries: readonly { readonly entry: Entry; readonly key: string; readonly line: number }[];
  readonly repeats: readonly number[];
  readonly toSortOut: readonly RowFault[];
  readonly working: WorkingSet;
}

/** Reads every row of a file by itself. Rows come back in date order, rows of one day in the file's order. */
export function readRows(file: readonly CsvRow[], order: DateOrder, yards: YardBook): ReadRows {
  const rows: ReadableRow[] = [];
  const toSortOut: RowFault[] = [];
  const repeats: number[] = [];
  const unreadable = new Set<string>();
  const setAside = (text: string, fault: RowFault) => {
    if (unreadable.has(text)) repeats.push(fault.line);
    else toSortOut.push(fault);
    unreadable.add(text);
  };
  for (const { line, cells, stray } of file) {
    if (stray !== null) {
      const sentence = stray.column === '' ? `“${shown(stray.value)}” stands beyond the last column of the header. Move it into its column, or clear it.` : `The journal has no column called “${shown(stray.column)}”. Rename the column, or clear the cell.`;
      setAside(rowKey(cells) + stray.all, { line, column: stray.column === '' ? null : stray.column, value: shown(stray.value), sentence });
      continue;
    }
    const reading = readRow(cells, order);
    if (reading.ok) rows.push({ line, row: reading.row, key: keyOf(reading.row, yards) });
    else setAside(rowKey(cells), { line, column: reading.trouble.column, value: shown(reading.trouble.value), sentence: reading.trouble.sentence });
  }
  rows.sort((a, b) => (a.row.day < b.row.day ? -1 : a.row.day > b.row.day ? 1 : a.line - b.line));
  return { rows, repeats, toSortOut };
}

/** Names of yards that only installing rows may bring in. */
export function yardsNamedByInstalls(rows: readonly { readonly row: TypedRow }[]): string[] {
  const named = new Set<string>();
  for (const { row } of rows) if (row.kind === 'install') named.add(row.values.yard as string);
  return [...named];
}

/**
 * Enters the rows one by one into a working set. A row that repeats one in the book or earlier in the file is
 * set apart; one that contradicts the record goes to the list to sort out. Because a label that the book gives
 * to a later colony is only known to be free once all rows are in, rows that still clash at the end are refused
 * and the rest is entered again without them.
 * @param known texts of the rows that stand in the book
 */
export function importRows(read: ReadRows, known: ReadonlySet<string>, newWorkingSet: () => WorkingSet): ImportOutcome {
  const banned = new Map<number, string>();
  for (;;) {
    const outcome = enterRows(read, known, newWorkingSet(), banned);
    const clashes = outcome.working.clashes();
    if (clashes.length === 0) return outcome;
    for (const { created, sentenceAbout } of clashes) {
      const line = outcome.entries.find((one) => one.entry.id === created.id)?.line;
      if (line === undefined) throw new Error(`entry ${created.id} came from no row`);
      banned.set(line, labelClashSentence(sentenceAbout));
    }
  }
}

function enterRows(read: ReadRows, known: ReadonlySet<string>, working: WorkingSet, banned: ReadonlyMap<number, string>): ImportOutcome {
  const seen = new Set<string>();
  const entries: { entry: Entry; key: string; line: number }[] = [];
  const repeats: number[] = [...read.repeats];
  const toSortOut: RowFault[] = [...read.toSortOut];
  const firstLines = new Map<string, number>();
  for (const { line, key } of read.rows.toSorted((a, b) => a.line - b.line)) if (!firstLines.has(key)) firstLines.set(key, line);
  for (const { line, row, key } of read.rows) {
    if (known.has(key) || seen.has(key) || firstLines.get(key) !== line) {
      repeats.push(line);
      continue;
    }
    const ban = banned.get(line);
    const added = ban === undefined ? working.add(row) : null;
    if (added?.ok === true) {
      seen.add(key);
      entries.push({ entry: added.entry, key, line });
      continue;
    }
    const column = added === null ? (row.kind === 'split' ? 'new_colony' : 'colony') : added.refusal.column;
    const cell = column === null ? undefined : row.values[column];
    toSortOut.push({
      line,
      column,
      value: column === 'date' ? row.day : cell === undefined ? '' : shown(String(cell)),
      sentence: added === null ? (ban ?? '') : added.refusal.sentence,
    });
  }
  repeats.sort((a, b) => a - b);
  toSortOut.sort((a, b) => a.line - b.line);
  return { entries, repeats, toSortOut, working };
}

/** True when an entry names a yard that is not in the book yet, so that it must be kept with it. */
export function yardsUsed(entries: readonly { readonly entry: Entry }[]): Set<YardId> {
  const used = new Set<YardId>();
  for (const { entry } of entries) {
    for (const value of Object.values(entry.body)) {
      if (typeof value === 'object' && value !== null && 'yard' in value) used.add(value.yard as YardId);
    }
    const body = entry.body as { yard?: YardId; toYard?: YardId };
    if (body.yard !== undefined) used.add(body.yard);
    if (body.toYard !== undefined) used.add(body.toYard);
  }
  return used;
}

function shown(value: string): string {
  return value.length > 80 ? `${value.slice(0, 80)}…` : value;
}
