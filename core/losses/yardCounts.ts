import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

/** What happened to the colonies of one yard in a stretch of days; whole numbers of colonies. */
export interface YardCounts {
  opening: number;
  packages: number;
  nucs: number;
  swarms: number;
  splits: number;
  boughtColonies: number;
  movedIn: number;
  movedOut: number;
  sold: number;
  given: number;
  combined: number;
  absconded: number;
  lost: number;
  closing: number;
}

export const noCounts: Readonly<YardCounts> = {
  opening: 0, packages: 0, nucs: 0, swarms: 0, splits: 0, boughtColonies: 0, movedIn: 0, movedOut: 0, sold: 0, given: 0, combined: 0, absconded: 0, lost: 0, closing: 0,
};

/**
 * The account of every yard from `from` to the day before `until`. Opening is what stood there as the first day
 * began; a colony taken into the book as an opening balance within the stretch counts as opening too. Closing is
 * counted by itself, from the record, so that `balances` is a check and not a definition.
 */
export function yardCounts(states: readonly ColonyState[], yards: readonly YardId[], from: Day, until: Day): Map<YardId, YardCounts> {
  const counts = new Map<YardId, YardCounts>(yards.map((yard) => [yard, { ...noCounts }]));
  for (const state of states) {
    for (const [at, stay] of state.stays.entries()) {
      const yard = counts.get(stay.yard);
      if (yard === undefined) throw new Error(`colony ${state.id} stands in a yard that is not in the book`);
      // Each day is held against each border once; this runs over every colony for every season of a long book.
      const before = stay.from < from;
      const within = !before && stay.from < until;
      const reached = stay.until === null || stay.until >= from;
      const outlasted = stay.until === null || stay.until >= until;
      if (before && reached) yard.opening += 1;
      if ((before || within) && outlasted) yard.closing += 1;
      if (within) yard[at === 0 ? beginning(state) : 'movedIn'] += 1;
      if (reached && !outlasted) yard[at === state.stays.length - 1 ? ending(state) : 'movedOut'] += 1;
    }
  }
  return counts;
}

function beginning(state: ColonyState): keyof YardCounts {
  switch (state.origin) {
    case 'package':
      return 'packages';
    case 'nuc':
      return 'nucs';
    case 'swarm':
      return 'swarms';
    case 'split':
      return 'splits';
    case 'bought colony':
      return 'boughtColonies';
    case 'opening':
      return 'opening';
  }
}

function ending(state: ColonyState): keyof YardCounts {
  switch (state.how) {
    case 'lost':
    case 'sold':
    case 'given':
    case 'combined':
    case 'absconded':
      return state.how;
    case 'alive':
      throw new Error(`colony ${state.id} left its last yard and is alive`);
  }
}

/** opening + installed + split off + caught + moved in - sold - given - combined away - moved out - absconded - lost = closing */
export function balances(counts: YardCounts): boolean {
  const { opening, packages, nucs, swarms, splits, boughtColonies, movedIn, movedOut, sold, given, combined, absconded, lost, closing } = counts;
  return opening + packages + nucs + swarms + splits + boughtColonies + movedIn - movedOut - sold - given - combined - absconded - lost === closing;
}

export function addCounts(all: Iterable<YardCounts>): YardCounts {
  const sum: YardCounts = { ...noCounts };
  for (const counts of all) for (const key of Object.keys(sum) as (keyof YardCounts)[]) sum[key] += counts[key];
  return sum;
}
