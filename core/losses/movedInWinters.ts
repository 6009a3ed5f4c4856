import type { Day } from '#shared/days.ts';
import { periodDays, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

/**
 * How many colonies went to another yard in the course of a winter, summed over the winters. The turnover rule
 * counts such a colony in the yard where it ended, a comparison of groups in the one where the winter found it.
 */
export function movedInWinters({ states, borders, asOf }: { readonly states: readonly ColonyState[]; readonly borders: Borders; readonly asOf: Day }, winters: readonly Season[]): number {
  return winters.reduce((sum, season) => {
    const { from, until } = periodDays(season, 'winter', borders);
    return sum + states.filter(({ stays }) => stays.slice(1).some((stay) => stay.from >= from && stay.from < until && stay.from <= asOf)).length;
  }, 0);
}
