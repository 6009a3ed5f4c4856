import type { Column } from '#shared/entryForms.ts';
import { roundColumns, type RoundColumn } from '#shared/roundSheets.ts';

/** The few more fields that a split, a new queen or a combination needs; they stand under the row while its act is one of these. */
export const actKeys = ['newLabel', 'oldQueen', 'newQueen', 'splitBees', 'splitBrood', 'splitStores', 'toYard', 'queenYear', 'queenSource', 'supplier', 'into'] as const;
export type ActKey = (typeof actKeys)[number];

/** Every cell that a colony has, the columns in the order in which they can stand across the sheet. */
export const columnKeys = [...roundColumns, ...actKeys] as const;
export type ColumnKey = RoundColumn | ActKey;

/** What `act` can say beside the causes of a loss. */
export const acts = ['split', 'requeened', 'combined'] as const;
export type Act = (typeof acts)[number];

export const fieldsOf: Readonly<Record<Act, readonly ActKey[]>> = {
  split: ['newLabel', 'oldQueen', 'newQueen', 'splitBees', 'splitBrood', 'splitStores', 'toYard', 'queenYear', 'queenSource'],
  requeened: ['queenYear', 'queenSource', 'supplier'],
  combined: ['into'],
};

/** Which kind of entry a column goes into; a note goes with whatever the row has, and what `act` says decides over itself. */
export type ColumnEntry = 'inspection' | 'mites' | 'feed' | 'supers on' | 'supers off' | 'harvest' | 'stores' | 'treatment' | 'act' | 'note';

export interface SheetColumn {
  /** The columns of the exchange form that it is sent as; a plain value goes into the first. */
  readonly sentAs: readonly [Column, ...Column[]];
  readonly entry: ColumnEntry;
  readonly numeric: boolean;
}

const number = (entry: ColumnEntry, ...sentAs: [Column, ...Column[]]): SheetColumn => ({ sentAs, entry, numeric: true });
const text = (entry: ColumnEntry, ...sentAs: [Column, ...Column[]]): SheetColumn => ({ sentAs, entry, numeric: false });

export const sheetColumns: Readonly<Record<ColumnKey, SheetColumn>> = {
  bees: number('inspection', 'frames_bees'),
  brood: number('inspection', 'frames_brood'),
  stores: number('inspection', 'frames_stores'),
  eggs: text('inspection', 'eggs'),
  queen: text('inspection', 'queen_seen'),
  cells: text('inspection', 'queen_cells'),
  temper: number('inspection', 'temper'),
  mites: number('mites', 'mites'),
  sample: number('mites', 'bees'),
  feed: text('feed', 'feed', 'amount', 'unit'),
  supersOn: text('supers on', 'count', 'box'),
  supersOff: text('supers off', 'count', 'box'),
  full: number('harvest', 'gross', 'unit'),
  empty: number('harvest', 'tare'),
  moisture: number('harvest', 'moisture'),
  lot: text('harvest', 'lot'),
  weight: number('stores', 'weight', 'unit'),
  treat: text('treatment', 'active_ingredient', 'end_date'),
  act: text('act', 'cause'),
  note: text('note', 'note'),
  newLabel: text('act', 'new_colony'),
  oldQueen: text('act', 'queen'),
  newQueen: text('act', 'new_queen'),
  splitBees: number('act', 'frames_bees'),
  splitBrood: number('act', 'frames_brood'),
  splitStores: number('act', 'frames_stores'),
  toYard: text('act', 'to_yard'),
  queenYear: number('act', 'queen_year'),
  queenSource: text('act', 'queen_source'),
  supplier: text('act', 'supplier'),
  into: text('act', 'into'),
};

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

/** The columns of a sheet: those asked for, and any that hold typing already, so that nothing goes in unseen. */
export function columnsShown(asked: readonly RoundColumn[], typed: Typed): RoundColumn[] {
  const rows = Object.values(typed);
  return roundColumns.filter((key) => asked.includes(key) || rows.some((row) => (row[key] ?? '').trim() !== ''));
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

export function isActKey(key: ColumnKey): key is ActKey {
  return (actKeys as readonly string[]).includes(key);
}
