import type { ColonyId, YardId } from '#shared/brands.ts';
import { columns, type Column } from '#shared/entryForms.ts';
import type { OrderKey } from './colonyState.ts';
import { rulesOf, type Body } from './kinds.ts';
import type { Refusal } from './kindRules.ts';
import type { TypedRow } from './typedRow.ts';

/** Looks names up at a point of the journal's order; answers the id or why there is none. */
export interface Lookup {
  readonly yard: (name: string) => YardId | null;
  readonly colony: (label: string, key: OrderKey, row: TypedRow) => { id: ColonyId } | { sentence: string };
  readonly newColony: () => ColonyId;
}

/** The key of the body that a column is kept under: `frames_bees` becomes `framesBees`. */
export function bodyKey(column: Column): string {
  return column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

export type Resolved = { ok: true; body: Body } | { ok: false; refusal: Refusal };

/** Turns a row that was read into the body of an entry: names become ids, a new colony gets one. */
export function resolveRow(row: TypedRow, key: OrderKey, lookup: Lookup): Resolved {
  const body: Record<string, unknown> = {};
  for (const column of columns) {
    const value = row.values[column];
    if (value === undefined) continue;
    if (column === 'yard' || column === 'to_yard') {
      const yard = lookup.yard(value as string);
      if (yard === null) return refuse(column, unknownYard(value as string));
      body[bodyKey(column)] = yard;
    } else if (column === 'from' || column === 'to') {
      const place = placeOf(value as string, lookup);
      if (place === null) return refuse(column, `“${value as string}” is no place known here. Write shed, supplier, scrap, or the code of a yard.`);
      body[column] = place;
    } else if (column === 'new_colony' || (column === 'colony' && row.kind === 'install')) {
      body.label = value;
    } else if (column === 'colony' || column === 'into') {
      const found = lookup.colony(value as string, key, row);
      if ('sentence' in found) return refuse(column, found.sentence);
      body[column] = found.id;
    } else {
      body[bodyKey(column)] = value;
    }
  }
  // Ids are taken last, so that a refused row uses none up.
  if (row.kind === 'install') body.colony = lookup.newColony();
  if (row.kind === 'split') body.child = lookup.newColony();
  const parsed = rulesOf(row.kind).body.safeParse(body);
  if (!parsed.success) throw new Error(`a row of kind ${row.kind} passed the reader but not its own shape: ${parsed.error.message}`);
  return { ok: true, body: parsed.data };
}

function placeOf(text: string, lookup: Lookup): 'shed' | 'supplier' | 'scrap' | { yard: YardId } | null {
  const name = text.toLowerCase();
  if (name === 'shed' || name === 'supplier' || name === 'scrap') return name;
  const yard = lookup.yard(text);
  return yard === null ? null : { yard };
}

export function unknownYard(name: string): string {
  return `No yard is called “${name}”. Correct the name, or add the yard first.`;
}

function refuse(column: Column, sentence: string): Resolved {
  return { ok: false, refusal: { column, sentence } };
}
