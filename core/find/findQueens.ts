import { fold } from '#shared/fold.ts';
import type { ColonyState, Reign } from '#core/journal/colonyState.ts';
import { queenColour } from '#core/lineage/queenColour.ts';
import { bestOf } from './bestOf.ts';
import { foldedLabel } from './findColonies.ts';

const folded = new WeakMap<Reign, string>();

/** "queen 2025 blue karst ridge queens" */
function queenText(reign: Reign): string {
  let text = folded.get(reign);
  if (text === undefined) {
    const colour = reign.year === null ? '' : queenColour(reign.year);
    folded.set(reign, (text = fold(`queen ${reign.year ?? ''} ${colour} ${reign.source ?? ''}`)));
  }
  return text;
}

/**
 * Queens by year, colour and source, each in each colony she reigned in: those that reign before those gone, the latest
 * first. A label among the words narrows them, but does not by itself find every queen of a colony.
 */
export function findQueens(states: Iterable<ColonyState>, words: readonly string[], limit: number): { rows: { state: ColonyState; reign: Reign }[]; total: number } {
  const fitting = function* () {
    for (const state of states) {
      for (const reign of state.reigns) {
        const text = queenText(reign);
        if (words.some((word) => text.includes(word)) && words.every((word) => text.includes(word) || foldedLabel(state).includes(word))) yield { state, reign };
      }
    }
  };
  return bestOf(fitting(), limit, (a, b) => {
    const gone = Number(a.reign.until !== null) - Number(b.reign.until !== null);
    return gone || (a.reign.since < b.reign.since ? 1 : a.reign.since > b.reign.since ? -1 : a.state.id - b.state.id);
  });
}
