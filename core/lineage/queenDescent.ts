import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState, Reign } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';

export const birthWays = ['walk-away split', 'split with a cell', 'superseded', 'swarmed'] as const;

/** A queen that was raised here, as the record says it. */
export interface QueenBirth {
  readonly queen: EntryId;
  readonly day: Day;
  /** The queen whose brood she was raised from. */
  readonly mother: Reign;
  readonly how: (typeof birthWays)[number];
  /** The colony of her first reign. */
  readonly colony: ColonyId;
}

/**
 * Queens raised from the brood of a colony's queens: in a walk-away split or one with a cell, by supersedure, and from the
 * cells that a swarm left. A cell with another stated source than its colony's queen came from elsewhere, and so is no
 * daughter; of a queen that came mated or virgin the mother is not known. `entries`: those standing that name
 * the colony, in the journal's order.
 */
export function birthsIn(state: ColonyState, entries: readonly Entry[]): QueenBirth[] {
  const births: QueenBirth[] = [];
  const own = new Set(entries.map(({ id }) => id));
  // One that moved here with a split began her time here with the colony itself.
  const begun = new Map(state.reigns.map((reign) => [own.has(reign.queen) ? reign.queen : state.startEntry, reign]));
  const endings = new Set(state.reigns.flatMap(({ endEntry }) => (endEntry === null ? [] : [endEntry])));
  let current: Reign | null = null;
  for (const entry of entries) {
    if (current !== null) {
      const born = birthBy(entry, state.id, current);
      if (born !== null) births.push(born);
    }
    if (endings.has(entry.id)) current = null;
    current = begun.get(entry.id) ?? current;
  }
  return births;
}

function birthBy(entry: Entry, colony: ColonyId, mother: Reign): QueenBirth | null {
  if (entry.kind === 'queen') {
    const { what } = entry.body;
    return what === 'superseded' || what === 'swarmed' ? { queen: entry.id, day: entry.day, mother, how: what, colony } : null;
  }
  if (entry.kind !== 'split' || entry.body.colony !== colony) return null;
  const { newQueen, queenSource, queen, child } = entry.body;
  const where = queen === 'moves' ? colony : child;
  if (newQueen === 'walk-away') return { queen: entry.id, day: entry.day, mother, how: 'walk-away split', colony: where };
  if (newQueen !== 'cell' || (queenSource !== undefined && queenSource !== mother.source)) return null;
  return { queen: entry.id, day: entry.day, mother, how: 'split with a cell', colony: where };
}
