import type { SheetMapping, Target } from '#shared/contract/sheets.ts';
import { fields, type Column } from '#shared/entryForms.ts';
import { hasTime, orderOfDays, type DayFinding } from './readDays.ts';
import { decimalOf, splitUnit, type DecimalFinding } from './readNumbers.ts';
import type { Sheet, SheetCell } from './sheet.ts';

/** Columns whose figures have a unit. */
const quantities: ReadonlySet<string> = new Set(['amount', 'gross', 'tare', 'weight']);

export function isQuantity(target: Target): boolean {
  return quantities.has(target);
}

export function isDayColumn(target: Target | null): boolean {
  return target === 'date' || target === 'end_date';
}

/** True for columns whose cells are figures with a possible decimal sign. */
export function isFigure(target: Target | null): target is Column {
  if (target === null || target === 'left out' || target === 'date' || target === 'entry') return false;
  const { type } = fields[target];
  return type === 'number' || type === 'money';
}

/** The cells that hold something in the column at that place, the first `most` of them. */
export function dataOf(sheet: Sheet, at: number, most = Number.POSITIVE_INFINITY): SheetCell[] {
  const cells: SheetCell[] = [];
  for (const row of sheet.rows) {
    const cell = row.cells[at];
    if (cell != null) cells.push(cell);
    if (cells.length >= most) break;
  }
  return cells;
}

/** The figure as typed, without a unit or a sign of money. */
export function figureOf(target: Column, text: string): string {
  return isQuantity(target) ? splitUnit(text).figure : fields[target as Exclude<Column, 'date' | 'entry'>].type === 'money' ? text.replace(/^\s*[$€£]\s*|\s*[$€£]\s*$/g, '') : text;
}

export interface Findings {
  readonly days: DayFinding;
  readonly decimal: DecimalFinding;
  /** Cells of days that have a time of day, too. */
  readonly times: number;
}

/** What all rows say about the order of days and the decimal sign, over the columns that hold days and figures by the mapping. */
export function findings(sheet: Sheet, mapping: SheetMapping): Findings {
  const days: SheetCell[] = [];
  const figures: string[] = [];
  mapping.columns.forEach(({ becomes }, at) => {
    if (isDayColumn(becomes)) days.push(...dataOf(sheet, at));
    else if (isFigure(becomes)) for (const cell of dataOf(sheet, at)) if (cell.type === 'text') figures.push(figureOf(becomes, cell.text));
  });
  return { days: orderOfDays(days), decimal: decimalOf(figures), times: days.filter((cell) => hasTime(cell.text)).length };
}
