import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { QueenLink, QueenStory } from '#shared/contract/queens.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { seasonOf, type Borders } from '#shared/seasons.ts';
import { gramsPerPound, roundTo } from '#shared/units.ts';
import type { ColonyState, Reign } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { queenView } from './colonyWords.ts';
import { birthsIn, type QueenBirth } from './queenDescent.ts';
import { queenRecord, reignsOf } from './queenRecord.ts';

export interface QueenOf {
  readonly states: readonly ColonyState[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly names: Names;
  readonly borders: Borders;
}

/** Colonies whose entries `queenStory` needs beside those she was in: the mother colony of a split that made her. */
export function mothersOf(founding: Entry | undefined): ColonyId[] {
  return founding?.kind === 'split' ? [founding.body.colony] : [];
}

/**
 * All that is known of one queen. `entries`: the standing entries of the colonies she was in and of `mothersOf`, each in
 * the journal's order. Null: no colony has or had her.
 */
export function queenStory(id: EntryId, { states, byId, names, borders }: QueenOf, entries: ReadonlyMap<ColonyId, readonly Entry[]>, today: Day): QueenStory | null {
  const reigns = reignsOf(states, id);
  const [first] = reigns;
  const last = reigns.at(-1);
  if (first === undefined || last === undefined) return null;
  const birthsOf = (colony: ColonyId) => {
    const state = byId.get(colony);
    return state === undefined ? [] : birthsIn(state, entries.get(colony) ?? []);
  };
  const founding = (entries.get(first.state.id) ?? []).find((entry) => entry.id === id);
  const colonies = [...new Set(reigns.map(({ state }) => state.id))];
  const birth = [...mothersOf(founding), first.state.id].flatMap(birthsOf).find(({ queen }) => queen === id);
  const daughters = colonies.flatMap(birthsOf).filter(({ mother }) => mother.queen === id);
  return {
    queen: { ...queenView(last.reign), marked: reigns.some(({ reign }) => reign.marked), since: first.reign.since },
    sentence: cameWords(founding, first.state, first.reign, birth, names),
    mother: birth === undefined ? null : linkTo(birth.mother.queen, states),
    motherSays: birth === undefined ? unknownMother(founding) : raisedWords[birth.how],
    daughters: daughters.flatMap((one) => {
      const link = linkTo(one.queen, states);
      return link === null ? [] : [{ ...link, day: one.day, how: one.how }];
    }),
    reigns: reigns.map(({ state, reign }) => ({
      colony: { id: state.id, label: state.label },
      yards: [...new Set(state.stays.flatMap((stay) => ((reign.until === null || stay.from <= reign.until) && (stay.until === null || stay.until >= reign.since) ? [names.yard(stay.yard).name] : [])))],
      from: reign.since, until: reign.until, ending: reign.ending,
      colonyEnd: reign.ending === 'colony ended' ? `${endings[state.how]}${state.causes.length === 0 ? '' : `: ${state.causes.join('; ')}`}` : null,
    })),
    ...queenRecord(reigns, states, borders, today),
    honey: honeyUnder(reigns, borders),
  };
}

const endings: Readonly<Record<ColonyState['how'], string>> = { alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'united into another', absconded: 'absconded' };

const raisedWords: Readonly<Record<QueenBirth['how'], string>> = {
  'walk-away split': 'Raised by a walk-away split, so she is a daughter of the queen that the mother colony had that day.',
  'split with a cell': 'Raised from a cell of the mother colony, so she is a daughter of the queen it had that day.',
  superseded: 'The record says that she superseded her mother.',
  swarmed: 'Raised in the colony from the cells that the swarm left, so she is a daughter of the queen that went with it.',
};

/** Any queen by the first colony she was in. */
function linkTo(queen: EntryId, states: readonly ColonyState[]): QueenLink | null {
  const [first] = reignsOf(states, queen);
  return first === undefined ? null : { queen: queenView(first.reign), colony: { id: first.state.id, label: first.state.label } };
}

function cameWords(founding: Entry | undefined, state: ColonyState, reign: Reign, birth: QueenBirth | undefined, names: Names): string {
  const day = dayInWords(reign.since);
  const from = reign.source === null ? '' : `, ${reign.source}`;
  switch (founding?.kind) {
    case 'install':
      return `Came with ${state.label}${from}, on ${day}${state.supplier === null || state.supplier === reign.source ? '' : `, from ${state.supplier}`}.`;
    case 'requeen':
      return `Given to ${state.label} on ${day}${from}${founding.body.supplier === undefined || founding.body.supplier === reign.source ? '' : `, from ${founding.body.supplier}`}.`;
    case 'split': {
      const mother = names.colony(founding.body.colony);
      if (birth !== undefined) {
        return state.id === founding.body.child ? `Raised in ${state.label}, which was split from ${mother} on ${day}.` : `Raised in ${state.label}, after its queen went with the split ${founding.body.label} on ${day}.`;
      }
      return `Came to ${state.label} with the split of ${day}${founding.body.newQueen === undefined ? '' : ` (${founding.body.newQueen})`}${from}.`;
    }
    case 'queen':
      return founding.body.what === 'marked' ? `First written down when she was marked in ${state.label} on ${day}.` : `Raised in ${state.label} by itself; in the book since ${day}.`;
    default:
      return `In ${state.label} since ${day}${from}.`;
  }
}

function unknownMother(founding: Entry | undefined): string {
  if (founding?.kind === 'split' && founding.body.newQueen === 'cell') return 'Her mother is not in the record: the cell has another source than the queen of the mother colony, or no queen of it is written down.';
  if (founding?.kind === 'split' && founding.body.newQueen === 'walk-away') return 'Her mother is not in the record: no queen of the mother colony is written down for that day.';
  if (founding?.kind === 'split' && founding.body.newQueen === undefined) return 'Her mother is not in the record: it does not say how the split got its queen.';
  if (founding?.kind === 'queen') return 'Her mother is not in the record.';
  return 'Her mother is not in the record; she came from the source that is stated.';
}

function honeyUnder(reigns: readonly { state: ColonyState; reign: Reign }[], borders: Borders): QueenStory['honey'] {
  const seasons = new Map<number, { grams: number; harvests: number }>();
  for (const { state, reign } of reigns) {
    for (const { day, grams } of state.harvests) {
      if (day < reign.since || (reign.until !== null && day >= reign.until)) continue;
      const season = seasonOf(day, borders);
      const sum = seasons.get(season) ?? { grams: 0, harvests: 0 };
      seasons.set(season, { grams: sum.grams + grams, harvests: sum.harvests + 1 });
    }
  }
  return [...seasons].toSorted(([a], [b]) => a - b).map(([season, { grams, harvests }]) => ({ season, lb: roundTo(grams / gramsPerPound, 4), harvests }));
}
