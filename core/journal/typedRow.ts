import type { Grams, Millilitres, Minor } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Column, Kind } from '#shared/entryForms.ts';

/** An amount of feed keeps the unit it was typed in, so that it comes back as typed. */
export type Amount =
  | { readonly measure: 'mass'; readonly grams: Grams }
  | { readonly measure: 'volume'; readonly millilitres: Millilitres };

export type CellValue = string | number | boolean | readonly string[] | Grams | Minor | Amount;

/** One row understood by itself: a real day, a known kind, each cell read by its column. Names are not yet looked up. */
export interface TypedRow {
  readonly day: Day;
  readonly kind: Kind;
  readonly values: Readonly<Partial<Record<Column, CellValue>>>;
}

/** Why a row cannot be taken: the column, what was typed there, and a sentence with what would mend it. */
export interface RowTrouble {
  readonly column: Column | null;
  readonly value: string;
  readonly sentence: string;
}
