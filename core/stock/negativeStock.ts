import { dayInWords, type Day } from '#shared/days.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Place } from '#core/journal/bodyParts.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { itemName } from './shedCounts.ts';

/** An item of which more left a place than it held. */
export interface StockTrouble {
  readonly item: string;
  readonly place: string;
  /** How many are there by the rows: below 0. */
  readonly count: number;
  readonly day: Day;
  /** The entry that first took it below 0. */
  readonly entry: number;
  readonly sentence: string;
}

/** Places that hold fewer than nothing by the rows, with the entry that first took them there. Entries in the journal's order. */
export function negativeStock(entries: readonly Entry[], names: Names): StockTrouble[] {
  const held = new Map<string, { item: string; place: string; count: number; first: Entry | null }>();
  const move = (item: string, place: Place, change: number, entry: Entry) => {
    if (place === 'supplier' || place === 'scrap') return;
    const called = typeof place === 'string' ? 'shed' : names.yard(place.yard).code;
    const key = `${called}|${item}`;
    const found = held.get(key) ?? { item, place: called, count: 0, first: null };
    found.count += change;
    // What was filled up again is no trouble any more; the next time below 0 begins anew.
    if (found.count >= 0) found.first = null;
    else found.first ??= entry;
    held.set(key, found);
  };
  for (const entry of entries) {
    if (entry.kind === 'stock') {
      const item = itemName(entry.body.item);
      move(item, entry.body.from, -entry.body.quantity, entry);
      move(item, entry.body.to, entry.body.quantity, entry);
    } else if (entry.kind === 'purchase' && entry.body.to !== undefined) move(itemName(entry.body.item), entry.body.to, entry.body.quantity ?? 1, entry);
  }
  return [...held.values()].flatMap(({ item, place, count, first }) => (first === null ? [] : [{
    item, place, count, day: first.day, entry: first.id,
    sentence: `By the stock rows ${place === 'shed' ? 'the shed' : place} holds ${count} of ${item}: the row of ${dayInWords(first.day)} took more than was there. It counts as none here; a row is missing or one is wrong.`,
  }]));
}
