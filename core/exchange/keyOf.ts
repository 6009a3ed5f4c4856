import { fixedPlaces, type Column } from '#shared/entryForms.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { bodyKey } from '#core/journal/resolveRow.ts';
import type { TypedRow } from '#core/journal/typedRow.ts';
import { rowKey, writeRow } from '#core/journal/writeRow.ts';
import type { YardBook } from '#core/journal/yardBook.ts';

/** The text of a row as the journal writes it, whatever name a yard was given by; rows equal in every cell share it. */
export function keyOf(row: TypedRow, yards: YardBook): string {
  const body: Record<string, unknown> = {};
  for (const [column, value] of Object.entries(row.values) as [Column, unknown][]) {
    const name = column === 'new_colony' || (column === 'colony' && row.kind === 'install') ? 'label' : bodyKey(column);
    body[name] = (column === 'from' || column === 'to') && !isFixedPlace(value) ? { yard: value } : value;
  }
  return rowKey(writeRow({ day: row.day, kind: row.kind, body } as unknown as Entry, asTyped(yards)));
}

/** A row's own words stand where an entry has ids. */
function asTyped(yards: YardBook): Names {
  return {
    colony: (id) => id as unknown as string,
    yard: (id) => {
      const typed = id as unknown as string;
      return yards.find(typed) ?? { code: typed, name: typed };
    },
    massUnit: 'lb',
  };
}

function isFixedPlace(value: unknown): boolean {
  return typeof value === 'string' && (fixedPlaces as readonly string[]).includes(value.toLowerCase());
}
