import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { byStand } from './standOrder.ts';
import { yardOn } from './yardOn.ts';

/** The colonies of a yard on a day as every sheet has them, on paper and on the screen: those alive there, in the order in which they stand. */
export function sheetColonies(states: readonly ColonyState[], stands: ReadonlyMap<YardId, readonly ColonyId[]>, yard: YardId, day: Day): ColonyState[] {
  return states.filter((state) => aliveOn(state, day) && yardOn(state, day) === yard).toSorted(byStand(stands.get(yard) ?? []));
}
