import { z } from 'zod';
import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Paper } from '#core/book/store.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { isOrdering, placedOrders } from '#core/order/placedOrders.ts';
import type { Book } from './openBook.ts';
import { standingIn } from './standing.ts';

/** Which plan an order came from, by its entry; the order itself is the entry. */
const placedPaper = 'placed order';
const placedBody = z.strictObject({ plan: z.string() });

export function planOfOrder(entry: EntryId, plan: string): Paper {
  return { kind: placedPaper, key: String(entry), body: JSON.stringify({ plan } satisfies z.infer<typeof placedBody>) };
}

/** Orders by the standing entries, with the plans that they came from. */
export async function placedIn({ store }: Book, today: Day) {
  const bought = await standingIn(store, { kinds: ['purchase'] });
  // What may be a delivery is read only where something was ordered: a large book has tens of thousands of queens and hives.
  if (!bought.some(isOrdering)) return [];
  const entries = [...bought, ...(await standingIn(store, { kinds: ['install', 'requeen', 'stock', 'note'] }))].toSorted(byOrder);
  const plans = new Map([...(await store.papers(placedPaper))].map(([key, body]) => [Number(key) as EntryId, placedBody.parse(JSON.parse(body)).plan]));
  return placedOrders(entries, plans, today);
}
