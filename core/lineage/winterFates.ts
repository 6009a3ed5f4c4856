import { addDays, type Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';

export interface Winter {
  readonly from: Day;
  readonly until: Day;
}

/** Every winter that is over, from the first colony's on. It is over on the evening of its last day, as in the loss rates. */
export function wintersOver(states: readonly ColonyState[], borders: Borders, today: Day): Winter[] {
  const first = states.reduce<Day | null>((least, { start }) => (least === null || start < least ? start : least), null);
  if (first === null) return [];
  const tomorrow = addDays(today, 1);
  const season = seasonOf(first, borders);
  return Array.from({ length: Math.max(0, seasonOf(today, borders) - season + 1) }, (_, at) => periodDays(season + at, 'winter', borders)).filter(({ until }) => until <= tomorrow);
}

/** Null: it did not go into that winter alive, or its fate is not known, as it was sold, given away or united meanwhile. */
export function fateIn(state: ColonyState, { from, until }: Winter): 'lost' | 'lived' | null {
  if (!aliveBefore(state, from)) return null;
  if (state.end === null || state.end >= until) return 'lived';
  return state.how === 'lost' || state.how === 'absconded' ? 'lost' : null;
}
