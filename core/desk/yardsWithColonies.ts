import type { Day } from '#shared/days.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Picture } from './picture.ts';

/** The yards in which colonies live on a day, by code, each with its colonies in the order they stand in. */
export function yardsWithColonies({ states, yardList, stands }: Picture, day: Day): { readonly yard: Yard; readonly states: readonly ColonyState[] }[] {
  const byYard = Map.groupBy(states.filter((state) => aliveOn(state, day)), (state) => yardOn(state, day));
  return yardList
    .toSorted((a, b) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0))
    .flatMap((yard) => {
      const standing = byYard.get(yard.id);
      return standing === undefined ? [] : [{ yard, states: standing.toSorted(byStand(stands.get(yard.id) ?? [])) }];
    });
}
