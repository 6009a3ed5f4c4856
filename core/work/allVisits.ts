import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { whole, type Slices } from '#shared/slices.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { inOrder, visitKinds, visitsInSlices, type WorkedVisit } from './workedVisits.ts';

/** Kinds of which a state keeps every day; a large book has so many of them that they take long to read again. */
const keptInStates: ReadonlySet<Kind> = new Set<Kind>(['inspection', 'mites', 'feed', 'stores']);
/** What has to be read beside the states. */
export const visitEntryKinds: readonly Kind[] = visitKinds.filter((kind) => !keptInStates.has(kind));

const coloniesAtOnce = 500;

/** The visits that `visitsOf` counts over all kinds, those of inspections and the like from the states. `entries`: the standing ones of `visitEntryKinds`. */
export function allVisits(states: readonly ColonyState[], byId: ReadonlyMap<ColonyId, ColonyState>, entries: readonly Entry[]): WorkedVisit[] {
  return whole(allVisitsInSlices(states, byId, entries));
}

/** The same, some colonies at a time. A large book has a million days of single colonies, so no day is put into words with its yard. */
export function* allVisitsInSlices(states: readonly ColonyState[], byId: ReadonlyMap<ColonyId, ColonyState>, entries: readonly Entry[]): Slices<WorkedVisit[]> {
  const visits = yield* visitsInSlices(entries, byId);
  const known = new Map<Day, Set<YardId | null>>();
  const isNew = (day: Day, yard: YardId | null) => {
    const there = known.get(day);
    if (there === undefined) known.set(day, new Set([yard]));
    else if (there.has(yard)) return false;
    else there.add(yard);
    return true;
  };
  for (const { day, yard } of visits) isNew(day, yard);
  for (const [count, state] of states.entries()) {
    if (count % coloniesAtOnce === 0) yield;
    const [only] = state.stays.length === 1 ? state.stays : [];
    for (const own of [state.looks, state.miteCounts, state.feedings, state.storesWeights]) {
      for (const { day } of own) {
        const yard = only === undefined ? yardOn(state, day) : only.from <= day ? only.yard : null;
        if (yard !== null && isNew(day, yard)) visits.push({ day, yard, hours: null, people: null, miles: null });
      }
    }
  }
  return visits.toSorted(inOrder);
}
