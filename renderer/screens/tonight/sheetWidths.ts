import type { RoundColumn } from '#shared/roundSheets.ts';

/** Widths in CSS pixels at the sheet's own type size; the note takes what is left, at least its own. */
const widths: Readonly<Record<RoundColumn, number>> = {
  bees: 50, brood: 50, stores: 50, eggs: 40, queen: 48, cells: 86, temper: 54, mites: 44, sample: 44, feed: 120, supersOn: 88, supersOff: 88, full: 66, empty: 66, moisture: 54,
  lot: 88, weight: 66, treat: 100, act: 84, note: 90,
};
const label = 62;
const queen = 98;

/** Null for the column that stretches: the note, or without one the last. */
export function columnWidth(column: RoundColumn, columns: readonly RoundColumn[]): number | undefined {
  const stretches = columns.includes('note') ? 'note' : columns.at(-1);
  return column === stretches ? undefined : widths[column];
}

/** The narrowest that the sheet gets; in a narrower window it scrolls inside. */
export function sheetWidth(columns: readonly RoundColumn[]): number {
  return columns.reduce((sum, column) => sum + widths[column], label + queen);
}
