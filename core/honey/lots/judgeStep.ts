import { lotBook, type Lot, type LotBook, type LotEvent } from './lotBook.ts';
import type { LotFacts } from './lotFacts.ts';

export interface Found {
  readonly lot: Lot;
  readonly event: LotEvent;
}

/** What names an event wherever it stands in the order. */
function idOf({ of }: LotEvent): string {
  if ('harvest' in of) return `h${of.harvest.entry}`;
  if ('sale' in of) return `s${of.sale.entry}`;
  return `${of.step.key}${'pouredTo' in of ? ' out' : ''}`;
}

export function troublesOf(book: LotBook): Map<string, Found> {
  return new Map([...book.lots.values()].flatMap((lot) => lot.events.filter(({ trouble }) => trouble !== null).map((event): [string, Found] => [idOf(event), { lot, event }])));
}

/** The first thing that would no longer be right if the facts were these instead; null if nothing gets worse. */
export function firstNewTrouble(before: LotFacts, after: LotFacts): Found | null {
  const known = troublesOf(lotBook(before));
  for (const [id, found] of troublesOf(lotBook(after))) if (!known.has(id)) return found;
  return null;
}
