import type { EntryQuery, Store, StoredEntry } from '#core/book/store.ts';
import type { Entry } from '#core/journal/kinds.ts';

/** Of what is stored the entries that stand, in its order. */
export function standing(stored: readonly StoredEntry[]): Entry[] {
  return stored.flatMap(({ entry, struck }) => (struck === null ? [entry] : []));
}

/** The standing entries that are asked for, in the journal's order. */
export async function standingIn(store: Pick<Store, 'entries'>, query: EntryQuery): Promise<Entry[]> {
  return standing(await store.entries(query));
}
