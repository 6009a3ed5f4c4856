import { fold } from '#shared/fold.ts';
import { compareNames } from '#shared/nameOrder.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { bestOf } from './bestOf.ts';
import { matchRank } from './matchRank.ts';

const folded = new WeakMap<ColonyState, string>();

/** A colony's label as searching sees it. */
export function foldedLabel(state: ColonyState): string {
  let label = folded.get(state);
  if (label === undefined) folded.set(state, (label = fold(state.label)));
  return label;
}

/** Colonies by label, living and ended: the best fit first, the living before the ended, the later of two of one label first. */
export function findColonies(states: Iterable<ColonyState>, words: readonly string[], limit: number): { rows: ColonyState[]; total: number } {
  const fitting = function* () {
    for (const state of states) {
      const rank = matchRank(foldedLabel(state), words);
      if (rank !== null) yield { state, rank };
    }
  };
  const found = bestOf(fitting(), limit, (a, b) =>
    a.rank - b.rank || Number(a.state.end !== null) - Number(b.state.end !== null) || compareNames(a.state.label, b.state.label) || (a.state.start < b.state.start ? 1 : a.state.start > b.state.start ? -1 : a.state.id - b.state.id));
  return { rows: found.rows.map(({ state }) => state), total: found.total };
}
