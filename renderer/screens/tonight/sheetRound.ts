import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Cells, Kind } from '#shared/entryForms.ts';
import type { RowFault } from '#shared/faults.ts';
import { readCell } from './sheetCell.ts';
import { columnKeys, columnSentAs, rowIsEmpty, sheetColumns, withCell, type ColumnKey, type Typed } from './sheetColumns.ts';
import { readRow, sampleOf, type RowReadings, type SheetWide } from './sheetRow.ts';
import { words } from './words.ts';

export interface SheetColony {
  readonly colony: ColonyId;
  readonly label: string;
}

/** Everything that a sheet says before it is entered. */
export interface RoundSheet {
  readonly yard: { readonly code: string; readonly name: string };
  readonly day: Day;
  readonly colonies: readonly SheetColony[];
  readonly typed: Typed;
  readonly wide: SheetWide;
}

/** Where a sentence belongs on the sheet. */
export interface Place {
  readonly colony: ColonyId;
  readonly column: ColumnKey;
}

export interface Remark extends Place {
  readonly state: 'refused' | 'question';
  readonly sentence: string;
}

/** The rows to send, and for each of them which colony's cells it was made of. */
export interface ComposedRound {
  readonly title: string;
  readonly rows: Cells[];
  readonly sources: readonly { readonly colony: ColonyId; readonly columns: readonly ColumnKey[] }[];
  readonly colonies: number;
  readonly lost: number;
}

/** All that cannot be read or is asked about, in the order of the sheet: down the colonies, across the columns. */
export function remarksOn(sheet: RoundSheet): Remark[] {
  return sheet.colonies.flatMap(({ colony }) => {
    const row = sheet.typed[colony];
    return row === undefined ? [] : remarksOnRow(colony, readRow(row, sheet.wide));
  });
}

export function remarksOnRow(colony: ColonyId, read: RowReadings): Remark[] {
  const remarks: Remark[] = [];
  for (const column of columnKeys) {
    const cell = read[column];
    if (cell.state === 'refused') remarks.push({ colony, column, state: 'refused', sentence: cell.sentence });
    else if (cell.state === 'read' && cell.question !== undefined) remarks.push({ colony, column, state: 'question', sentence: cell.question });
  }
  return remarks;
}

/**
 * Makes the entries of a round: by colony one inspection, one mite count and one loss, as far as the row has them.
 * The loss comes last, so that the day's look at the colony still stands. A note goes with the inspection, else with
 * the loss, else with the mite count, and is an entry of its own only when it stands alone.
 * Cells that cannot be read are left out: call it only when `remarksOn` has nothing refused.
 */
export function composeRound(sheet: RoundSheet): ComposedRound {
  const rows: Cells[] = [];
  const sources: { colony: ColonyId; columns: ColumnKey[] }[] = [];
  let colonies = 0;
  let lost = 0;
  for (const { colony, label } of sheet.colonies) {
    const row = sheet.typed[colony];
    if (row === undefined || rowIsEmpty(row)) continue;
    const read = readRow(row, sheet.wide);
    const kinds = kindsOf(read);
    if (kinds.length === 0) continue;
    colonies += 1;
    if (kinds.includes('loss')) lost += 1;
    const noteWith = (['inspection', 'loss', 'mites', 'note'] as const).find((kind) => kinds.includes(kind));
    for (const kind of kinds) {
      const columns = columnKeys.filter((key) => read[key].state === 'read' && (key === 'note' ? kind === noteWith : sheetColumns[key].entry === kind));
      rows.push({ date: sheet.day, entry: kind, yard: sheet.yard.code, colony: label, ...cellsOf(kind, columns, read, sheet.wide) });
      sources.push({ colony, columns });
    }
  }
  return { title: words.title(sheet.yard.name, colonies), rows, sources, colonies, lost };
}

/** Brings the desk's refusals back to the cells they are about; a sentence about the whole row goes to its first cell. */
export function placeFaults(faults: readonly RowFault[], sources: ComposedRound['sources']): Remark[] {
  return faults.flatMap((fault) => {
    const source = sources[fault.line];
    if (source === undefined) return [];
    const named = columnSentAs(fault.column);
    const column = named !== null && source.columns.includes(named) ? named : (source.columns[0] ?? 'note');
    return [{ colony: source.colony, column, state: 'refused' as const, sentence: fault.sentence }];
  });
}

/** The sheet with its short marks written out, as each cell is once the keyboard leaves it; the same object if nothing changes. */
export function writtenOut(typed: Typed): Typed {
  let out = typed;
  for (const [colony, row] of Object.entries(typed)) {
    for (const key of columnKeys) {
      const text = row[key];
      if (text !== undefined) out = withText(out, Number(colony), key, text, cellWrittenOut(key, text));
    }
  }
  return out;
}

/** One cell's text with its marks written out; notes and what cannot be read stay as typed. */
export function cellWrittenOut(key: ColumnKey, text: string): string {
  const read = readCell(key, text);
  if (key === 'note' || read.state === 'refused') return text;
  return read.state === 'read' ? read.value : '';
}

function withText(typed: Typed, colony: number, key: ColumnKey, before: string, after: string): Typed {
  return before === after ? typed : withCell(typed, colony, key, after);
}

/** How many rows have anything typed, for "9 of 14 filled". */
export function filledRows(sheet: Pick<RoundSheet, 'colonies' | 'typed'>): number {
  return sheet.colonies.filter(({ colony }) => !rowIsEmpty(sheet.typed[colony])).length;
}

function kindsOf(read: RowReadings): (Kind & ('inspection' | 'mites' | 'loss' | 'note'))[] {
  const has = (kind: string) => columnKeys.some((key) => key !== 'note' && key !== 'sample' && sheetColumns[key].entry === kind && read[key].state === 'read');
  const kinds = (['inspection', 'mites', 'loss'] as const).filter(has);
  return kinds.length === 0 && read.note.state === 'read' ? ['note'] : kinds;
}

function cellsOf(kind: Kind, columns: readonly ColumnKey[], read: RowReadings, wide: SheetWide): Cells {
  const cells: Cells = {};
  for (const key of columns) {
    const cell = read[key];
    if (cell.state === 'read') cells[sheetColumns[key].sentAs] = cell.value;
  }
  if (kind === 'mites') {
    const sample = sampleOf(read.sample, wide);
    if (sample.state === 'read') cells.bees = sample.value;
    if (wide.method !== '') cells.method = wide.method;
  }
  return cells;
}
