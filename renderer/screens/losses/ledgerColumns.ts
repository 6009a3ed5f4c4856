import type { LedgerRow } from '#shared/contract/losses.ts';

/** The account's columns in order: what comes into a yard, then what goes out of it. */
export const cameColumns = ['packages', 'nucs', 'swarms', 'splits', 'boughtColonies', 'movedIn'] as const;
export const wentColumns = ['movedOut', 'sold', 'given', 'combined', 'absconded', 'lostSummer', 'lostWinter'] as const;

export type FlowColumn = (typeof cameColumns)[number] | (typeof wentColumns)[number];

export function cameTo(row: LedgerRow): number {
  return cameColumns.reduce((sum, column) => sum + row[column], 0);
}

export function wentFrom(row: LedgerRow): number {
  return wentColumns.reduce((sum, column) => sum + row[column], 0);
}

/** Columns in which any yard has an entry, and those that are left out. */
export function usedColumns(rows: readonly LedgerRow[]): { came: FlowColumn[]; went: FlowColumn[]; leftOut: FlowColumn[] } {
  const used = (column: FlowColumn) => rows.some((row) => row[column] !== 0);
  const keep = (column: FlowColumn) => used(column) || column === 'lostSummer' || column === 'lostWinter';
  return {
    came: cameColumns.filter(keep),
    went: wentColumns.filter(keep),
    leftOut: [...cameColumns, ...wentColumns].filter((column) => !keep(column)),
  };
}
