import type { Store } from '#core/book/store.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { wholeYardKinds } from '#core/lineage/yardVisits.ts';
import { standingIn } from './standing.ts';

/**
 * The standing entries of `wholeYardKinds` that name no colony, and all treatments, in the journal's order. What names a
 * colony is in its state; of harvests alone a large book has a hundred thousand.
 */
export async function wholeYardEntries(store: Store): Promise<Entry[]> {
  return [
    ...(await standingIn(store, { kinds: ['treatment'] })),
    ...(await standingIn(store, { kinds: wholeYardKinds.filter((kind) => kind !== 'treatment'), ofNoColony: true })),
  ].toSorted(byOrder);
}
