import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { inOrder, visitKinds, visitsOf, type WorkedVisit } from './workedVisits.ts';

/** Kinds of which a state keeps every day; a large book has so many of them that they take long to read again. */
const keptInStates: ReadonlySet<Kind> = new Set<Kind>(['inspection', 'mites', 'feed', 'stores']);
/** What has to be read beside the states. */
export const visitEntryKinds: readonly Kind[] = visitKinds.filter((kind) => !keptInStates.has(kind));

/** The visits that `visitsOf` counts over all kinds, those of inspections and the like from the states. `entries`: the standing ones of `visitEntryKinds`. */
export function allVisits(states: readonly ColonyState[], byId: ReadonlyMap<ColonyId, ColonyState>, entries: readonly Entry[]): WorkedVisit[] {
  const visits = visitsOf(entries, byId);
  const known = new Set(visits.map(({ day, yard }) => `${day} ${yard}`));
  for (const state of states) {
    for (const day of daysOf(state)) {
      const yard = yardOn(state, day);
      if (yard === null || known.has(`${day} ${yard}`)) continue;
      known.add(`${day} ${yard}`);
      visits.push({ day, yard, hours: null, people: null, miles: null });
    }
  }
  return visits.toSorted(inOrder);
}

function daysOf({ looks, miteCounts, feedings, storesWeights }: ColonyState): Set<Day> {
  return new Set([looks, miteCounts, feedings, storesWeights].flatMap((own) => own.map(({ day }) => day)));
}
