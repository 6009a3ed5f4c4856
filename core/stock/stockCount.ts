import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { PlaceKey } from './places.ts';

/*
 * A count is a stock row like any other, so that the exchange form holds it: what was missing goes to scrap, what was
 * found comes from the supplier, and the note says that it was a count and what the book had. A count that agrees is
 * a row of none, so that the book knows when it was last counted.
 */

/** A count that stands in the book. */
export interface Counted {
  readonly entry: EntryId;
  readonly day: Day;
  readonly place: PlaceKey;
  readonly item: string;
  readonly counted: number;
  /** What the book had by the note. */
  readonly noted: number;
  /** What this book has before the row, at the end of that day. */
  readonly had: number;
}

export function countNote(counted: number, had: number, words: string): string {
  return [`counted ${counted}, the book had ${had}`, words].filter((part) => part !== '').join('; ');
}

export function readCountNote(note: string | undefined): { readonly counted: number; readonly had: number } | null {
  const found = /^counted (\d+(?:\.\d+)?), the book had (-?\d+(?:\.\d+)?)(?:;|$)/.exec(note ?? '');
  return found === null ? null : { counted: Number(found[1]), had: Number(found[2]) };
}

/** The row's quantity and way: missing ones are written off, found ones come in. */
export function countMovement(counted: number, had: number, place: string): { readonly quantity: number; readonly from: string; readonly to: string } {
  return counted <= had ? { quantity: had - counted, from: place, to: 'scrap' } : { quantity: counted - had, from: 'supplier', to: place };
}
