import type { AnswerCell, AnswerRow, AnswerSheet } from '#shared/contract/answers.ts';
import type { YardId } from '#shared/brands.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { periodDays, seasonName, type Season } from '#shared/seasons.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import { known, notKnown, plural, share, stretchOf, takenForGranted, unknownWhy, type AnswerFacts, type Stretch } from './answerFacts.ts';

const source = 'Colonies wintered and three ways of loss: van der Zee and others 2013, J Apic Res 52(4), doi 10.3896/IBRA.1.52.4.18, section 2.3; the three parts as in Gray and others 2020. What counts as a young queen is from memory.';

type Fate = 'dead' | 'queen' | 'disaster' | 'left' | 'united' | 'alive';

/** The wintered cohort, colony by colony; the winter is the book's own (a house rule), as the definition leaves it to the beekeeper. */
export function winteringSheet(facts: AnswerFacts, season: Season): AnswerSheet {
  const { from, until } = periodDays(season, 'winter', facts.borders);
  const stretch = stretchOf(facts, from, until);
  const why = unknownWhy(facts, stretch);
  // A colony taken in as already there belongs to the cohort though the book met it later.
  const cohort = facts.states.filter((state) => aliveBefore(state, from) || (state.origin === 'opening' && state.start >= from && state.start < stretch.stop));
  const yardOf = (state: ColonyState): YardId | undefined => (state.stays.findLast((stay) => stay.from < from) ?? state.stays[0])?.yard;
  const yards = facts.yards.filter(({ id }) => cohort.some((state) => yardOf(state) === id));
  const groups = [cohort, ...(yards.length > 1 ? yards.map(({ id }) => cohort.filter((state) => yardOf(state) === id)) : [])];
  const row = (key: string, label: string, definition: string, cell: (group: readonly ColonyState[]) => AnswerCell): AnswerRow => ({ key, label, definition, cells: groups.map((group) => (why === null ? cell(group) : notKnown(why))) });
  const fated = (...fates: Fate[]) => (group: readonly ColonyState[]) => group.filter((state) => fates.includes(fateOf(state, stretch)));
  const lost = fated('dead', 'queen', 'disaster');
  const count = (pick: (group: readonly ColonyState[]) => readonly ColonyState[]) => (group: readonly ColonyState[]) => known(pick(group).length);
  const queen = (which: QueenAge) => (group: readonly ColonyState[]) => group.filter((state) => queenAge(state, from, season) === which);
  const of = (part: (group: readonly ColonyState[]) => readonly ColonyState[], whole: (group: readonly ColonyState[]) => readonly ColonyState[], nothing: string) => (group: readonly ColonyState[]) => share(part(whole(group)).length, whole(group).length, nothing);
  return {
    key: 'wintering',
    title: `Wintering ${seasonName(season)}`,
    source,
    when: `${dayInWords(from)} to ${dayInWords(addDays(until, -1))}${stretch.complete ? '' : `, so far to ${dayInWords(facts.asOf)}`}`,
    running: !stretch.complete,
    columns: ['All', ...(groups.length > 1 ? yards.map(({ name }) => name) : [])],
    rows: [
      row('wintered', 'Colonies wintered', 'Alive as the winter began.', (group) => known(group.length)),
      row('dead', 'Lost: dead or empty', 'No living bees, or too few to live on; absconded ones and losses of unknown cause are here.', count(fated('dead'))),
      row('queen', 'Lost: queen problem not solved', 'Recorded lost with queen failure among its causes (drone layer, laying workers, queenless).', count(fated('queen'))),
      row('disaster', 'Lost: natural disaster', 'Recorded lost by flood, bear or vandal, whatever else is named.', count(fated('disaster'))),
      row('lost', 'Lost in all', 'The three together.', count(lost)),
      row('rate', 'Winter loss', 'Lost of those wintered. A weak colony that lives is not lost.', of(lost, (group) => group, 'No colony was wintered.')),
      row('united', 'United during the winter', 'Among those wintered, not among those lost.', count(fated('united'))),
      row('left', 'Sold or given away during the winter', 'Among those wintered, not among those lost.', count(fated('left'))),
      row('young', `Wintered with a queen of ${season}`, 'Her year is that of the autumn.', count(queen('young'))),
      row('older', 'Wintered with an older queen', 'Her year is an earlier one.', count(queen('older'))),
      row('ageUnknown', 'Wintered, queen’s age not recorded', 'No queen or no year is in the record; leave it open in an answer.', count(queen('unknown'))),
      row('youngShare', 'Share of young queens', 'Of those whose queen’s year is recorded.', of(queen('young'), (group) => group.filter((state) => queenAge(state, from, season) !== 'unknown'), 'No queen’s year is recorded.')),
      row('youngLost', 'Lost of those with young queens', '', of(lost, queen('young'), 'None was wintered with a queen known to be young.')),
      row('olderLost', 'Lost of those with older queens', '', of(lost, queen('older'), 'None was wintered with a queen known to be older.')),
    ],
    remarks: why === null ? [...takenForGranted(facts, stretch), ...remarksOn(cohort, stretch)] : [],
  };
}

function fateOf(state: ColonyState, { stop }: Stretch): Fate {
  if (state.end === null || state.end >= stop) return 'alive';
  switch (state.how) {
    case 'combined':
      return 'united';
    case 'sold':
    case 'given':
      return 'left';
    default:
      if (state.causes.includes('flood') || state.causes.includes('bear or vandal')) return 'disaster';
      return state.causes.includes('queen failure') ? 'queen' : 'dead';
  }
}

type QueenAge = 'young' | 'older' | 'unknown';

/** Age of the queen that was there as the winter began. */
function queenAge(state: ColonyState, from: Day, season: Season): QueenAge {
  const reign = state.reigns.find((one) => one.since < from && (one.until === null || one.until >= from)) ?? (state.start >= from ? state.reigns[0] : undefined);
  if (reign === undefined || reign.year === null) return 'unknown';
  return reign.year >= season ? 'young' : 'older';
}

function remarksOn(cohort: readonly ColonyState[], stretch: Stretch): string[] {
  const lost = cohort.filter((state) => ['dead', 'queen', 'disaster'].includes(fateOf(state, stretch)));
  const uncaused = lost.filter((state) => state.how === 'lost' && state.causes.every((cause) => cause === 'unknown')).length;
  const several = lost.filter((state) => state.causes.includes('queen failure') && state.causes.length > 1).length;
  return [
    ...(uncaused === 0 ? [] : [`${plural(uncaused, 'loss has', 'losses have')} no known cause; counted as dead or empty.`]),
    ...(several === 0 ? [] : [`${plural(several, 'loss names', 'losses name')} queen failure beside other causes; counted as a queen problem, unless a disaster is named.`]),
  ];
}
