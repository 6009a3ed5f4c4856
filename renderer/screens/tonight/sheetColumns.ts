import type { Column } from '#shared/entryForms.ts';

/** The questions of a yard round, in the order in which they stand across the sheet. */
export const columnKeys = ['bees', 'brood', 'stores', 'eggs', 'queen', 'cells', 'temper', 'mites', 'sample', 'lost', 'note'] as const;
export type ColumnKey = (typeof columnKeys)[number];

/** Which kind of entry a column goes into; a note goes with whatever the row has. */
export type ColumnEntry = 'inspection' | 'mites' | 'loss' | 'note';

export interface SheetColumn {
  readonly key: ColumnKey;
  /** The column of the exchange form that it is sent as. */
  readonly sentAs: Column;
  readonly entry: ColumnEntry;
  readonly numeric: boolean;
}

export const sheetColumns: Readonly<Record<ColumnKey, SheetColumn>> = {
  bees: { key: 'bees', sentAs: 'frames_bees', entry: 'inspection', numeric: true },
  brood: { key: 'brood', sentAs: 'frames_brood', entry: 'inspection', numeric: true },
  stores: { key: 'stores', sentAs: 'frames_stores', entry: 'inspection', numeric: true },
  eggs: { key: 'eggs', sentAs: 'eggs', entry: 'inspection', numeric: false },
  queen: { key: 'queen', sentAs: 'queen_seen', entry: 'inspection', numeric: false },
  cells: { key: 'cells', sentAs: 'queen_cells', entry: 'inspection', numeric: false },
  temper: { key: 'temper', sentAs: 'temper', entry: 'inspection', numeric: true },
  mites: { key: 'mites', sentAs: 'mites', entry: 'mites', numeric: true },
  sample: { key: 'sample', sentAs: 'bees', entry: 'mites', numeric: true },
  lost: { key: 'lost', sentAs: 'cause', entry: 'loss', numeric: false },
  note: { key: 'note', sentAs: 'note', entry: 'note', numeric: false },
};

export function columnSentAs(sentAs: string | null): ColumnKey | null {
  return columnKeys.find((key) => sheetColumns[key].sentAs === sentAs) ?? null;
}

/** What is typed for one colony; an absent or empty cell is not recorded. */
export type TypedRow = Partial<Record<ColumnKey, string>>;

/** What is typed on a sheet, by colony id. */
export type Typed = Readonly<Record<string, Readonly<TypedRow>>>;

export function rowIsEmpty(row: Readonly<TypedRow> | undefined): boolean {
  return row === undefined || columnKeys.every((key) => (row[key] ?? '').trim() === '');
}

/** How many rows have anything typed. */
export function filledIn(typed: Typed): number {
  return Object.values(typed).filter((row) => !rowIsEmpty(row)).length;
}

/** The sheet with one cell changed; a row left empty is taken out, so that an untouched sheet equals a cleared one. */
export function withCell(typed: Typed, colony: number, key: ColumnKey, text: string): Typed {
  const row: TypedRow = { ...typed[colony], [key]: text };
  if (text === '') delete row[key];
  const next: Record<string, Readonly<TypedRow>> = { ...typed };
  if (Object.keys(row).length === 0) delete next[colony];
  else next[colony] = row;
  return next;
}
