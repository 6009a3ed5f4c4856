import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

/** The yard a colony stands in at the end of that day, or last stood in; null before it began. */
export function yardOn(state: ColonyState, day: Day): YardId | null {
  return state.stays.findLast((stay) => stay.from <= day)?.yard ?? null;
}
