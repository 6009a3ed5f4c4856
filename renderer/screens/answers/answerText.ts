import type { AnswerCell, AnswerRow, AnswerSheet } from '#shared/contract/answers.ts';
import { words } from './words.ts';

export function cellText(cell: AnswerCell): string {
  return cell.why === null ? cell.text : words.notKnown(cell.why);
}

/** One answer as a line; the cells of several columns with their names. */
export function rowText(sheet: AnswerSheet, row: AnswerRow): string {
  const [only] = row.cells;
  const cells = row.cells.length === 1 && only !== undefined ? cellText(only) : row.cells.map((cell, at) => `${sheet.columns[at] ?? ''}: ${cellText(cell)}`).join('; ');
  return `${row.label}: ${cells}`;
}

/** What the button of one answer copies: the bare answer where there is one column, tabs between several. */
export function bareText(row: AnswerRow): string {
  return row.cells.map(cellText).join('\t');
}

export function sheetText(sheet: AnswerSheet): string {
  return [sheet.title, sheet.when, ...sheet.rows.map((row) => rowText(sheet, row)), ...sheet.remarks, sheet.source].join('\n');
}

export function allText(head: string, sheets: readonly AnswerSheet[]): string {
  return `${[head, ...sheets.map(sheetText)].join('\n\n')}\n`;
}
