import type { ColonyId } from '#shared/brands.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

/** Mother, her mother and so on, as far as the record goes. A split always follows its mother's start, so this ends. */
export function ancestorsOf(state: ColonyState, byId: ReadonlyMap<ColonyId, ColonyState>): ColonyState[] {
  const found: ColonyState[] = [];
  let mother = state.mother === null ? undefined : byId.get(state.mother);
  while (mother !== undefined) {
    found.push(mother);
    mother = mother.mother === null ? undefined : byId.get(mother.mother);
  }
  return found;
}
