import type { MassUnit } from '#shared/units.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import type { Store } from '#core/book/store.ts';

/** How ids are called in sentences and cells of one book. */
export async function namesOf(store: Store, yards?: YardBook): Promise<Names> {
  const book = yards ?? new YardBook(await store.yards());
  const labels = await store.labels();
  const unit = (await store.settings()).get('massUnit');
  return {
    colony: (id) => labels.get(id) ?? `colony ${id}`,
    yard: (id) => book.get(id),
    massUnit: (unit === 'kg' ? 'kg' : 'lb') satisfies MassUnit,
  };
}
