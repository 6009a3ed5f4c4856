import type { ColonyId, YardId } from '#shared/brands.ts';
import { dayInWords } from '#shared/days.ts';
import { fold } from '#shared/fold.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

const endings: Readonly<Record<ColonyState['how'], string>> = { alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'combined', absconded: 'absconded' };

/**
 * Each colony by its label; where several of those given have it, in any case and with or without accents, with its days and
 * its end as well, then with the yard it last stood in, and where that is the same too, with its number in the book, as tags have it.
 */
export function tellApart(states: Iterable<ColonyState>, yardName: (id: YardId) => string): ReadonlyMap<ColonyId, string> {
  const names = new Map<ColonyId, string>();
  const name = (own: readonly ColonyState[], ways: readonly ((state: ColonyState) => string)[]) => {
    const [way, ...rest] = ways;
    for (const [, same] of Map.groupBy(own, (state) => fold(names.get(state.id) ?? state.label))) {
      for (const state of same) names.set(state.id, same.length === 1 || way === undefined ? (names.get(state.id) ?? state.label) : `${names.get(state.id) ?? state.label}, ${way(state)}`);
      if (same.length > 1 && way !== undefined) name(same, rest);
    }
  };
  name([...states], [
    ({ start, end, how }) => (end === null ? `since ${dayInWords(start)}` : `${dayInWords(start)} to ${dayInWords(end)}, ${endings[how]}`),
    ({ stays }) => {
      const last = stays.at(-1);
      return last === undefined ? '' : yardName(last.yard);
    },
    ({ id }) => `number ${id} of the book`,
  ]);
  return names;
}
