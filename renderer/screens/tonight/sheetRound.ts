import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Cells, Kind } from '#shared/entryForms.ts';
import type { RowFault } from '#shared/faults.ts';
import type { RoundKind } from '#shared/roundSheets.ts';
import { readCell } from './sheetCell.ts';
import { columnKeys, rowIsEmpty, sheetColumns, withCell, type ColumnKey, type Typed } from './sheetColumns.ts';
import { entriesOfRow, workCells } from './sheetEntries.ts';
import { readRow, type RowReadings, type SheetWide } from './sheetRow.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { words } from './words.ts';

export interface SheetColony {
  readonly colony: ColonyId;
  readonly label: string;
}

/** Everything that a sheet says before it is entered. */
export interface RoundSheet {
  readonly yard: { readonly code: string; readonly name: string };
  readonly day: Day;
  readonly kind: RoundKind;
  readonly colonies: readonly SheetColony[];
  readonly typed: Typed;
  readonly wide: SheetWide;
  readonly setting: SheetSetting;
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

/** The rows to send, and for each of them which colony's cells it was made of (no colony: the work of the whole round). */
export interface ComposedRound {
  readonly title: string;
  readonly rows: Cells[];
  readonly sources: readonly { readonly colony: ColonyId | null; readonly columns: readonly ColumnKey[] }[];
  readonly colonies: number;
  readonly lost: number;
}

/** All that cannot be read or is asked about, in the order of the sheet: down the colonies, across the columns. */
export function remarksOn(sheet: RoundSheet): Remark[] {
  return sheet.colonies.flatMap(({ colony }) => {
    const row = sheet.typed[colony];
    return row === undefined ? [] : remarksOnRow(colony, readRow(row, sheet.wide, sheet.setting));
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
 * Makes the entries of a round, colony by colony, as far as its row has them, and last the work if hours or miles are
 * given. Cells that cannot be read are left out: call it only when `remarksOn` has nothing refused.
 */
export function composeRound(sheet: RoundSheet): ComposedRound {
  const rows: Cells[] = [];
  const sources: { colony: ColonyId | null; columns: readonly ColumnKey[] }[] = [];
  let colonies = 0;
  let lost = 0;
  for (const { colony, label } of sheet.colonies) {
    const row = sheet.typed[colony];
    if (row === undefined || rowIsEmpty(row)) continue;
    const made = entriesOfRow(readRow(row, sheet.wide, sheet.setting), sheet.wide, sheet.setting);
    if (made.length === 0) continue;
    colonies += 1;
    if (made.some(({ kind }) => kind === 'loss')) lost += 1;
    for (const { kind, columns, cells } of made) {
      rows.push({ date: sheet.day, entry: kind, yard: sheet.yard.code, colony: label, ...cells });
      sources.push({ colony, columns });
    }
  }
  const work = workCells(sheet.wide, sheet.kind);
  if (work !== null) {
    rows.push({ date: sheet.day, entry: 'work', yard: sheet.yard.code, ...work });
    sources.push({ colony: null, columns: [] });
  }
  return { title: words.title(sheet.yard.name, colonies), rows, sources, colonies, lost };
}

/** What was entered, in one line: `Round at Larch Bend, 14 colonies: 14 inspections, 5 mite counts, 1 loss.` */
export function enteredLine(round: ComposedRound): string {
  const counts = new Map<Kind, number>();
  for (const { entry } of round.rows) counts.set(entry as Kind, (counts.get(entry as Kind) ?? 0) + 1);
  return words.entered(round.title, [...counts]);
}

/** Brings the desk's refusals back to the cells they are about; a sentence about the whole row goes to its first cell. */
export function placeFaults(faults: readonly RowFault[], sources: ComposedRound['sources']): Remark[] {
  return faults.flatMap((fault) => {
    const source = sources[fault.line];
    if (source === undefined || source.colony === null) return [];
    const named = source.columns.find((key) => (sheetColumns[key].sentAs as readonly (string | null)[]).includes(fault.column));
    return [{ colony: source.colony, column: named ?? source.columns[0] ?? 'note', state: 'refused' as const, sentence: fault.sentence }];
  });
}

/** The sheet with its short marks written out, as each cell is once the keyboard leaves it; the same object if nothing changes. */
export function writtenOut(typed: Typed, setting: SheetSetting): Typed {
  let out = typed;
  for (const [colony, row] of Object.entries(typed)) {
    for (const key of columnKeys) {
      const text = row[key];
      if (text !== undefined) out = withText(out, Number(colony), key, text, cellWrittenOut(key, text, setting));
    }
  }
  return out;
}

/** One cell's text with its marks written out; notes and what cannot be read stay as typed. */
export function cellWrittenOut(key: ColumnKey, text: string, setting: SheetSetting): string {
  const read = readCell(key, text, setting);
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
