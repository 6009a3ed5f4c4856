import type { Ending } from '#shared/contract/values.ts';
import { endReign, type ColonyState } from './colonyState.ts';
import type { EntryOf } from './kindRules.ts';

/** A colony's one end. */
export function endColony(state: ColonyState, entry: EntryOf<unknown>, how: Exclude<Ending, 'alive'>): void {
  state.end = entry.day;
  state.endPlace = entry.place;
  state.endEntry = entry.id;
  state.how = how;
  const stay = state.stays.at(-1);
  if (stay !== undefined) stay.until = entry.day;
  endReign(state, entry.day, entry.id, 'colony ended');
}
