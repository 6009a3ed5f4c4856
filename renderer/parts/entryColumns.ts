import { amountUnits, entryForms, massUnits, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import type { MassUnit } from '#shared/units.ts';
import { plainCells } from './typedCells.ts';

/**
 * The columns asked for, the needed ones first and the note last. Where the colony must be named its yard follows from the
 * book, so it is not asked; only an install says where.
 */
export function columnsOf(kind: Kind): readonly Column[] {
  const form = entryForms[kind];
  const yardFollows = kind !== 'install' && form.must.includes('colony');
  const may = form.may.filter((column) => !(yardFollows && column === 'yard'));
  const rest: readonly Column[] = form.must.includes('note') ? [] : ['note'];
  return [...form.must, ...may, ...rest];
}

/** What stands in a fresh form: the unit the book counts honey and stores in. */
export function freshCells(kind: Kind, massUnit: MassUnit): Cells {
  return isWeighed(kind) ? { unit: massUnit } : {};
}

/** The units that a record of that kind can be in: feed by volume too, honey and stores by weight alone. */
export function unitsOf(kind: Kind): readonly string[] {
  return isWeighed(kind) ? massUnits : amountUnits;
}

/** What stands in the form when its kind is changed. The unit of a feed is none for a weight, nor the other way round. */
export function cellsAsKind(next: Kind, before: Kind, cells: Cells, massUnit: MassUnit): Cells {
  const { unit, ...rest } = cells;
  return { ...freshCells(next, massUnit), ...rest, ...(unit !== undefined && isWeighed(next) === isWeighed(before) ? { unit } : {}) };
}

function isWeighed(kind: Kind): boolean {
  return kind === 'harvest' || kind === 'stores';
}

/** Columns that hold from one record to the next of the same kind: where and when, and what all of a delivery share. */
const carried: readonly Column[] = ['date', 'yard', 'origin', 'supplier', 'queen_year', 'queen_source', 'unit', 'active_ingredient', 'end_date', 'box', 'feed'];

export function nextCells(kind: Kind, cells: Cells, massUnit: MassUnit): Cells {
  const next: Cells = freshCells(kind, massUnit);
  for (const column of carried) {
    const value = cells[column];
    if (value !== undefined && value !== '') next[column] = value;
  }
  return next;
}

/** Only what the kind knows is sent, numbers as the desk reads them; text typed under another kind stays in the form, not in the record. */
export function rowOf(kind: Kind, cells: Cells): Cells {
  const row: Cells = { date: cells.date ?? '', entry: kind };
  for (const column of columnsOf(kind)) {
    const value = cells[column]?.trim();
    if (value) row[column] = value;
  }
  return plainCells(row);
}
