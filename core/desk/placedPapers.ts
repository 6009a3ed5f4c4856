import { z } from 'zod';
import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Paper } from '#core/book/store.ts';
import { isOrdering, placedOrders } from '#core/order/placedOrders.ts';
import type { Book } from './openBook.ts';

/** Which plan an order came from, by its entry; the order itself is the entry. */
const placedPaper = 'placed order';
const placedBody = z.strictObject({ plan: z.string() });

export function planOfOrder(entry: EntryId, plan: string): Paper {
  return { kind: placedPaper, key: String(entry), body: JSON.stringify({ plan } satisfies z.infer<typeof placedBody>) };
}

/** Orders by the standing entries, with the plans that they came from. */
export async function placedIn({ store }: Book, today: Day) {
  const read = async (kinds: readonly Kind[]) => (await store.entries({ kinds })).filter(({ struck }) => struck === null).map(({ entry }) => entry);
  // What may be a delivery is read only where something was ordered: a large book has tens of thousands of queens and hives.
  if (!(await read(['purchase'])).some(isOrdering)) return [];
  const entries = await read(['purchase', 'install', 'requeen', 'stock', 'note']);
  const plans = new Map([...(await store.papers(placedPaper))].map(([key, body]) => [Number(key) as EntryId, placedBody.parse(JSON.parse(body)).plan]));
  return placedOrders(entries, plans, today);
}
