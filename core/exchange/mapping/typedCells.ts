import { leftOut, type SheetMapping } from '#shared/contract/sheets.ts';
import type { Cells, Column } from '#shared/entryForms.ts';
import { oneUnit, readCell } from './applyMapping.ts';
import { isQuantity } from './findings.ts';
import { splitUnit, type AmountUnit } from './readNumbers.ts';
import type { SheetRow } from './sheet.ts';

/**
 * A row that cannot be read as a whole, for mending: each cell under what its column becomes, in the exchange form
 * where that can be read and else as typed. What finds no place of its own goes to the note under its header.
 */
export function typedCells(row: SheetRow, mapping: SheetMapping): Cells {
  const cells: Cells = {};
  const notes: string[] = [];
  const units = new Map<Column, AmountUnit>();
  const unreadFigures: [Column, AmountUnit][] = [];
  for (const [at, { header, becomes, unit }] of mapping.columns.entries()) {
    const cell = row.cells[at];
    if (cell == null || becomes === null || becomes === leftOut) continue;
    if (becomes === 'note' || cells[becomes] !== undefined) {
      notes.push(`${header}: ${cell.text}`);
      continue;
    }
    const read = readCell(cell, becomes, mapping);
    cells[becomes] = 'sentence' in read ? cell.text : read.text;
    if (!isQuantity(becomes)) continue;
    const own = splitUnit(cell.text).unit ?? unit;
    if (own === null) continue;
    if ('sentence' in read) unreadFigures.push([becomes, own]);
    else units.set(becomes, own);
  }
  for (const [column, text] of Object.entries(mapping.fixed) as [keyof Cells, string][]) if (text.trim() !== '') cells[column] ??= text;
  if (mapping.kind !== null) cells.entry ??= mapping.kind;
  oneUnit(cells, units);
  for (const [column, unit] of unreadFigures) {
    cells.unit ??= unit;
    // Mended in the row's unit it would mean something else, so it says its own.
    if (cells.unit !== unit && splitUnit(cells[column] ?? '').unit === null) cells[column] = `${cells[column] ?? ''} ${unit}`;
  }
  if (notes.length > 0) cells.note = [...(cells.note === undefined ? [] : [cells.note]), ...notes].join('; ');
  return cells;
}
