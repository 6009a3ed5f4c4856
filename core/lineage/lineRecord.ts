import type { ColonyId } from '#shared/brands.ts';
import type { LineRow, LinesPicture } from '#shared/contract/lines.ts';
import type { Slices } from '#shared/slices.ts';
import { addDays, yearOf, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { few, fits, inHundred } from '#core/losses/lossWords.ts';
import { proportion } from '#core/stats/proportion.ts';
import { lineTraits, noTraits, type LineTraits } from './lineTraits.ts';
import { fateIn, wintersOver } from './winterFates.ts';

interface Counts {
  colonies: Set<ColonyId>;
  alive: number;
  wintered: number;
  lost: number;
}

/** Name of a founding line: the founder's label with what it was and when. */
export function familyName(founder: ColonyState): string {
  return `${founder.label}, ${founder.origin === 'opening' ? 'in the book since' : founder.origin} ${yearOf(founder.start)}`;
}

/**
 * How each line did, grouped three ways. A colony counts once in every winter that is over and that it went into
 * alive: lost if it died or absconded in it. One sold, given away or united during a winter is left out of that
 * winter, as its fate is not known. For queens, the one in the colony as the winter began counts.
 * Interval: Wilson, 95 %, taking colonies and winters as independent of each other.
 */
export function* lineRecord(states: readonly ColonyState[], familyOf: ReadonlyMap<ColonyId, ColonyState>, borders: Borders, today: Day): Slices<LinesPicture['lines']> {
  const winters = wintersOver(states, borders, today);
  const all = newCounts();
  const groups = { family: new Map<ColonyId, Counts>(), bees: new Map<string, Counts>(), queen: new Map<string, Counts>() };
  for (const [count, state] of states.entries()) {
    if (count % 500 === 0) yield;
    const founder = familyOf.get(state.id) ?? state;
    const own = [all, countsOf(groups.family, founder.id), countsOf(groups.bees, beesFrom(state))];
    for (const counts of own) counts.colonies.add(state.id);
    for (const reign of state.reigns) countsOf(groups.queen, queenFrom(reign.source)).colonies.add(state.id);
    if (aliveOn(state, today)) for (const counts of [...own, queensOf(groups.queen, state, addDays(today, 1))]) if (counts !== null) counts.alive += 1;
    for (const winter of winters) {
      const fate = fateIn(state, winter);
      if (fate === null) continue;
      for (const counts of [...own, queensOf(groups.queen, state, winter.from)]) {
        if (counts === null) continue;
        counts.wintered += 1;
        if (fate === 'lost') counts.lost += 1;
      }
    }
  }
  const names = new Map(states.map((state) => [state.id, familyName(state)]));
  yield;
  const family = lineTraits(states, (state) => familyOf.get(state.id)?.id ?? state.id, borders, today);
  yield;
  const bees = lineTraits(states, beesFrom, borders, today);
  yield;
  const traits = { family, bees, queen: lineTraits(states, queenSourceOn, borders, today) };
  yield;
  const total = rowOf('All colonies', all, traits.bees.all, null, 0);
  const rows = <Key>(counted: ReadonlyMap<Key, Counts>, own: ReadonlyMap<Key, LineTraits>, nameOf: (key: Key) => string): LineRow[] => {
    const list = [...counted];
    return list.map(([key, counts]) => rowOf(nameOf(key), counts, own.get(key) ?? noTraits, total, list.length)).toSorted((a, b) => b.colonies - a.colonies || b.wintered - a.wintered || compareNames(a.name, b.name));
  };
  return {
    family: rows(groups.family, traits.family.lines, (id) => names.get(id) ?? ''),
    bees: rows(groups.bees, traits.bees.lines, (name) => name),
    queen: rows(groups.queen, traits.queen.lines, (name) => name),
    all: total,
  };
}

function newCounts(): Counts {
  return { colonies: new Set(), alive: 0, wintered: 0, lost: 0 };
}

function countsOf<Key>(groups: Map<Key, Counts>, key: Key): Counts {
  const counts = groups.get(key) ?? newCounts();
  groups.set(key, counts);
  return counts;
}

/** Of the source of the queen that was in the colony as that day began; null where it had none. */
function queensOf(groups: Map<string, Counts>, state: ColonyState, day: Day): Counts | null {
  const reign = state.reigns.findLast((one) => one.since < day && (one.until === null || one.until >= day));
  return reign === undefined ? null : countsOf(groups, queenFrom(reign.source));
}

/** The source of the queen that was in the colony at the end of that day; null where it had none. */
function queenSourceOn(state: ColonyState, day: Day): string | null {
  const reign = state.reigns.findLast((one) => one.since <= day && (one.until === null || one.until > day));
  return reign === undefined ? null : queenFrom(reign.source);
}

function queenFrom(source: string | null): string {
  return source ?? 'not written down';
}

function beesFrom(state: ColonyState): string {
  switch (state.origin) {
    case 'split':
      return 'own split';
    case 'opening':
      return 'in the book from the beginning';
    default:
      return state.supplier === null ? state.origin : `${state.origin} from ${state.supplier}`;
  }
}

function rowOf(name: string, { colonies, alive, wintered, lost }: Counts, traits: LineTraits, all: LineRow | null, lines: number): LineRow {
  const share = proportion(lost, wintered);
  const wilson = share.wilson === null ? null : ([share.wilson.lower, share.wilson.upper] as [number, number]);
  return { name, colonies: colonies.size, alive, wintered, lost, rate: share.rate, wilson, says: saysOf(wintered, wilson, all, lines), ...traits };
}

function saysOf(wintered: number, wilson: [number, number] | null, all: LineRow | null, lines: number): string {
  if (wilson === null) return 'No winter that is over was gone into.';
  if (wintered < few) return `So few that ${fits(wilson[0], wilson[1])}.`;
  if (all === null || all.rate === null || lines < 2) return `A${fits(wilson[0], wilson[1]).slice(1)}.`;
  if (wilson[0] <= all.rate && all.rate <= wilson[1]) return `Fits with the whole operation, ${inHundred(all.rate)}.`;
  const side = wilson[0] > all.rate ? 'More' : 'Fewer';
  return `${side} than the whole operation, ${inHundred(all.rate)}; of ${lines} lines, about one in twenty is as far off by chance.`;
}
