import { leftOut, type SheetMapping } from '#shared/contract/sheets.ts';
import { fields, type Cells, type Column } from '#shared/entryForms.ts';
import type { RowFault } from '#shared/faults.ts';
import { gramsFrom, massIn, millilitresFrom, volumeIn } from '#shared/units.ts';
import { figureOf, isDayColumn, isFigure, isQuantity } from './findings.ts';
import { readDay } from './readDays.ts';
import { isNumberLike, plainNumber, splitUnit, unitNamed, type AmountUnit } from './readNumbers.ts';
import type { Sheet, SheetCell, SheetRow } from './sheet.ts';
import { formValue, kindNamed, noWords, yesWords } from './synonyms.ts';

/** A row of the exchange form, with the line it has in its own file. */
export interface MappedRow {
  readonly line: number;
  readonly cells: Cells;
}

export interface MappedSheet {
  readonly rows: readonly MappedRow[];
  /** Rows with a cell that cannot be read as what its column becomes; nothing of them is taken. */
  readonly aside: readonly RowFault[];
}

/**
 * The sheet's rows in the exchange form: days ISO, figures with a point, weights in one unit a row. Every cell of a
 * mapped column is either in its row's cells or its row is set aside with a sentence; each row of the sheet is in one of the two lists.
 */
export function applyMapping(sheet: Sheet, mapping: SheetMapping): MappedSheet {
  const rows: MappedRow[] = [];
  const aside: RowFault[] = [];
  for (const row of sheet.rows) {
    const read = readSheetRow(row, mapping);
    if ('sentence' in read) aside.push(read);
    else rows.push(read);
  }
  return { rows, aside };
}

/** One row in the exchange form, or what stands in the way. */
export function readSheetRow(row: SheetRow, mapping: SheetMapping): MappedRow | RowFault {
  const cells: Cells = {};
  const notes: { header: string; text: string }[] = [];
  const units = new Map<Column, AmountUnit>();
  let any = false;
  for (const [at, { header, becomes, unit }] of mapping.columns.entries()) {
    const cell = row.cells[at];
    if (cell == null || becomes === null || becomes === leftOut) continue;
    any = true;
    if (becomes === 'note') {
      notes.push({ header, text: cell.text });
      continue;
    }
    const read = readCell(cell, becomes, mapping);
    if ('sentence' in read) return { line: row.line, column: header, value: shown(cell.text), sentence: read.sentence };
    if (cells[becomes] !== undefined) return { line: row.line, column: header, value: shown(cell.text), sentence: `Two columns become the same, and both are filled here. Choose another for “${header}”, or clear one of the cells.` };
    cells[becomes] = read.text;
    if (isQuantity(becomes)) {
      const own = splitUnit(cell.text).unit ?? unit;
      if (own !== null) units.set(becomes, own);
    }
  }
  if (!any) return { line: row.line, column: null, value: shown(row.cells.find((cell) => cell !== null)?.text ?? ''), sentence: 'The row holds nothing in the columns that are read. Let one of them be read, or clear the row.' };
  if (notes.length > 0) cells.note = notes.length === 1 ? (notes[0]?.text ?? '') : notes.map(({ header, text }) => `${header}: ${text}`).join('; ');
  for (const [column, text] of Object.entries(mapping.fixed) as [Column, string][]) {
    if (text.trim() === '' || cells[column] !== undefined) continue;
    // What holds for every row is typed on the page; where the sheet has no decimal sign of its own, with a point.
    const read = column === 'note' ? { text } : readCell({ type: 'text', text }, column, { ...mapping, decimal: mapping.decimal ?? 'point' });
    if ('sentence' in read) return { line: row.line, column: null, value: text, sentence: read.sentence };
    cells[column] = read.text;
  }
  if (mapping.kind !== null && cells.entry === undefined) cells.entry = mapping.kind;
  const trouble = oneUnit(cells, units);
  return trouble === null ? { line: row.line, cells } : { line: row.line, column: null, value: trouble.value, sentence: trouble.sentence };
}

type CellReading = { readonly text: string } | { readonly sentence: string };

export function readCell(cell: SheetCell, column: Column, mapping: SheetMapping): CellReading {
  if (isDayColumn(column)) {
    const day = readDay(cell, mapping.dateOrder);
    if (day === null && mapping.dateOrder === null && readDay(cell, 'day-first') !== readDay(cell, 'month-first')) return { sentence: `“${shown(cell.text)}” is read once it is said whether the month or the day stands first.` };
    return day === null ? { sentence: `“${shown(cell.text)}” is no day of the calendar${mapping.dateOrder === null ? '' : ` with the ${mapping.dateOrder === 'day-first' ? 'day' : 'month'} first`}. Mend it in the sheet.` } : { text: day };
  }
  if (column === 'entry') return { text: kindNamed(cell.text) ?? cell.text };
  if (isFigure(column)) {
    if (cell.type === 'number') return { text: cell.text };
    const typed = figureOf(column, cell.text);
    if (mapping.decimal === null && isNumberLike(typed) && plainNumber(typed, 'point') !== plainNumber(typed, 'comma')) return { sentence: `“${shown(cell.text)}” is read once it is said which sign parts the decimals.` };
    const figure = plainNumber(typed, mapping.decimal ?? 'point');
    return figure === null ? { sentence: `“${shown(cell.text)}” is not a number${mapping.decimal === 'comma' ? ' with a decimal comma' : ''}. Write digits only, as ${mapping.decimal === 'comma' ? '4,5' : '4.5'}.` } : { text: figure };
  }
  const field = fields[column as Exclude<Column, 'date' | 'entry'>];
  if (field.type === 'yes-no') {
    const typed = cell.text.trim().toLowerCase();
    return { text: yesWords.has(typed) ? 'yes' : noWords.has(typed) ? 'no' : cell.text };
  }
  if (field.type === 'causes') return { text: cell.text.split(/[;,/]/).map((part) => part.trim()).filter((part) => part !== '').map((part) => formValue(column, part)).join(';') || cell.text };
  if (column === 'unit') return { text: unitNamed(cell.text) ?? cell.text };
  return { text: formValue(column, cell.text) };
}

/** The exchange form has one unit a row: the first weighed column's; the others are brought to it. */
export function oneUnit(cells: Cells, units: ReadonlyMap<Column, AmountUnit>): { value: string; sentence: string } | null {
  const first = [...units.values()][0];
  if (first === undefined) return null;
  const said = cells.unit;
  if (said === undefined) cells.unit = first;
  else if (![...units.values()].every((unit) => unit === said)) return { value: said, sentence: `The row says “${said}”, and its figures are in ${[...new Set(units.values())].join(' and ')}. Let one of the two be read.` };
  for (const [column, unit] of units) {
    const target = cells.unit as AmountUnit;
    const figure = cells[column];
    if (unit === target || figure === undefined) continue;
    const converted = inUnit(Number(figure), unit, target);
    if (converted === null) return { value: figure, sentence: `A figure in ${unit} cannot be brought to ${target}. Mend the units in the sheet.` };
    cells[column] = String(converted);
  }
  return null;
}

function inUnit(figure: number, from: AmountUnit, to: AmountUnit): number | null {
  if ((from === 'lb' || from === 'kg') && (to === 'lb' || to === 'kg')) return massIn(gramsFrom(figure, from), to);
  if ((from === 'gal' || from === 'l') && (to === 'gal' || to === 'l')) return volumeIn(millilitresFrom(figure, from), to);
  return null;
}

function shown(text: string): string {
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
}
