import type { ColonyId } from '#shared/brands.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { refold } from '#core/journal/refold.ts';

/** The operation as the given standing entries leave it: fold those up to a day to see it as it was that evening. */
export function statesAsOf(entries: readonly Entry[]): ColonyState[] {
  const entriesOf = new Map<ColonyId, Entry[]>();
  for (const entry of entries.toSorted(byOrder)) {
    for (const touch of rulesOf(entry.kind).touches(entry.body)) {
      const own = entriesOf.get(touch.colony);
      if (own === undefined) entriesOf.set(touch.colony, [entry]);
      else own.push(entry);
    }
  }
  return [...refold(entriesOf, () => null).states.values()].filter((state) => state !== null).toSorted((a, b) => a.id - b.id);
}
