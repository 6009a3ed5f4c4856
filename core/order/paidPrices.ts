import type { PaidPrice } from '#shared/contract/offers.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { itemName } from '#core/stock/itemName.ts';
import { isOrdering } from './placedOrders.ts';

/** What was paid for bees, queens and equipment by the journal, newest first; installs of one day, seller and price are one line. */
export function paidPrices(entries: readonly Entry[]): PaidPrice[] {
  const lines = new Map<string, PaidPrice>();
  for (const entry of entries) {
    const line = paidLine(entry);
    if (line === null) continue;
    const key = `${line.day}|${line.kind}|${line.item}|${line.seller ?? ''}|${line.each}`;
    const before = lines.get(key);
    lines.set(key, before === undefined ? line : { ...before, quantity: before.quantity + line.quantity });
  }
  return [...lines.values()].toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
}

function paidLine(entry: Entry): PaidPrice | null {
  const { day } = entry;
  switch (entry.kind) {
    case 'install': {
      const { origin, price, supplier } = entry.body;
      const kind = origin === 'bought colony' ? 'colony' : origin;
      if (price === undefined || (kind !== 'package' && kind !== 'nuc' && kind !== 'colony')) return null;
      return { day, kind, item: kind, seller: supplier ?? null, quantity: 1, each: price };
    }
    case 'requeen': {
      const { price, supplier } = entry.body;
      return price === undefined ? null : { day, kind: 'queen', item: 'queen', seller: supplier ?? null, quantity: 1, each: price };
    }
    case 'purchase': {
      const { item, price, quantity, supplier } = entry.body;
      if (price === undefined || (quantity ?? 1) <= 0) return null;
      const name = itemName(item);
      const kind = name === 'queen' || name === 'package' || name === 'nuc' ? name : 'equipment';
      // What bees cost is told by the colony or queen that came of the order; equipment has no other row with a price.
      if (isOrdering(entry) && kind !== 'equipment') return null;
      // A purchase's price is for all of it.
      return { day, kind, item: name, seller: supplier ?? null, quantity: quantity ?? 1, each: price / (quantity ?? 1) };
    }
    default:
      return null;
  }
}
