import { z } from 'zod';
import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Paper } from '#core/book/store.ts';
import { placedOrders } from '#core/order/placedOrders.ts';
import type { Book } from './openBook.ts';

/** Which plan an order came from, by its entry; the order itself is the entry. */
const placedPaper = 'placed order';
const placedBody = z.strictObject({ plan: z.string() });

export function planOfOrder(entry: EntryId, plan: string): Paper {
  return { kind: placedPaper, key: String(entry), body: JSON.stringify({ plan } satisfies z.infer<typeof placedBody>) };
}

/** Orders by the standing entries, with the plans that they came from. */
export async function placedIn({ store }: Book, today: Day) {
  const entries = (await store.entries({ kinds: ['purchase', 'install', 'requeen', 'stock', 'note'] })).filter(({ struck }) => struck === null).map(({ entry }) => entry);
  const plans = new Map([...(await store.papers(placedPaper))].map(([key, body]) => [Number(key) as EntryId, placedBody.parse(JSON.parse(body)).plan]));
  return placedOrders(entries, plans, today);
}
