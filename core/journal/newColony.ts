import type { ColonyId, YardId } from '#shared/brands.ts';
import type { ColonyState } from './colonyState.ts';
import type { EntryOf } from './kindRules.ts';
import type { Origin } from './kinds/install.ts';

/** The state of a colony as its first entry leaves it, before any queen is known. */
export function newColony(
  entry: EntryOf<unknown>,
  born: { id: ColonyId; label: string; origin: Origin | 'split'; yard: YardId; mother: ColonyId | null; supplier: string | null; price: number | null },
): ColonyState {
  return {
    id: born.id,
    label: born.label,
    origin: born.origin,
    supplier: born.supplier,
    price: born.price,
    start: entry.day,
    startPlace: entry.place,
    startEntry: entry.id,
    end: null,
    endPlace: null,
    endEntry: null,
    how: 'alive',
    causes: [],
    mother: born.mother,
    into: null,
    daughters: [],
    unitedFrom: [],
    stays: [{ yard: born.yard, from: entry.day, fromPlace: entry.place, until: null }],
    reigns: [],
    supers: { deep: 0, medium: 0, shallow: 0 },
    looks: [],
    miteCounts: [],
    harvests: [],
    treatments: [],
    feedings: [],
    storesWeights: [],
    lastDay: entry.day,
  };
}
