import type { PaperCell, PaperTable } from '#shared/contract/paper.ts';
import { quote } from './writeCsv.ts';

/**
 * A table as a CSV file: UTF-8, commas, LF, shares from 0 to 1, an empty cell where nothing is known; every
 * number in a column of its own. A text that a
 * spreadsheet would take for a formula gets a single quote before it.
 */
export function tableCsv({ columns, rows }: PaperTable): string {
  const own = columns.flatMap(({ only }, at) => (only === 'paper' ? [] : [at]));
  return `${[columns.map(({ label }) => label), ...rows].map((row) => own.map((at) => row[at] ?? null)).map((row) => row.map((cell) => quote(written(cell))).join(',')).join('\n')}\n`;
}

function written(cell: PaperCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(Math.round(cell * 1e6) / 1e6);
  return /^[=+@\t\r-]/.test(cell) ? `'${cell}` : cell;
}
