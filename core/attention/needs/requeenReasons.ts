import type { NeedRecord } from '#shared/contract/needs.ts';
import { addDays, dayInWords, daysBetween, yearOf, type Day } from '#shared/days.ts';
import { number } from '#shared/figures.ts';
import { seasonName, seasonOf } from '#shared/seasons.ts';
import type { Look, MiteCount, Reign } from '#core/journal/colonyState.ts';
import { miteRate } from '#core/mites/miteRate.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { ColonyFacts, NeedFacts } from './needRule.ts';
import { countWords, per100Words } from './needWords.ts';

export interface RequeenReason {
  /** In two words, beside a graver one. */
  readonly short: string;
  readonly because: string;
  readonly detail: string;
  readonly records: NeedRecord[];
}

/** The house rules that the reasons rest on. */
export const requeenNumbers = ['age', 'temper', 'spotty', 'brood', 'mites', 'swarms', 'others', 'settled'].map((key) => `needs.requeen.${key}`);

type Facts = Pick<NeedFacts, 'rules' | 'today' | 'entryOf' | 'borders'>;
/** A colony under a queen, with the first day on which what is seen of it is hers. */
type Headed = ColonyFacts & { readonly reign: Reign; readonly settled: Day };

/** Every reason that the record gives for a new queen, the gravest first; on any day of the year. */
export function requeenReasons(colony: ColonyFacts, facts: Facts): RequeenReason[] {
  const { reign } = colony;
  if (reign === null) return [];
  const headed = { ...colony, reign, settled: addDays(reign.since, numberRule(facts.rules, 'needs.requeen.settled')) };
  return [fierce(headed, facts), supersedure(headed, facts), spotty(headed, facts), littleBrood(headed, facts), old(headed, facts), mites(headed, facts), swarming(headed, facts)].filter((one) => one !== null);
}

function fierce({ state, reign }: Headed, { rules, entryOf }: Facts): RequeenReason | null {
  const least = numberRule(rules, 'needs.requeen.temper');
  const looks = state.looks.filter(({ day, temper }) => temper !== null && day >= reign.since).slice(-2);
  if (looks.length < 2 || looks.some(({ temper }) => (temper ?? 0) < least)) return null;
  return {
    short: 'temper', because: `Fierce at the last two looks that noted it: ${least} of 5 or more.`, detail: `temper ${looks.map(({ temper }) => temper).join(', ')}`,
    records: looks.map(({ day, temper }) => ({ day, words: `Temper ${temper ?? ''} of 5.`, entry: entryOf(state.id, 'inspection', day) })),
  };
}

/** Her own bees are replacing her; a later look without such cells says that they left it, or that it is done. */
function supersedure({ state, settled }: Headed, { rules, today, entryOf }: Facts): RequeenReason | null {
  const look = state.looks.findLast(({ queenCells }) => queenCells !== null);
  if (look?.queenCells !== 'supersedure' || look.day < settled || daysBetween(look.day, today) > numberRule(rules, 'attention.letGo')) return null;
  return {
    short: 'supersedure cells', because: 'Supersedure cells: her bees are replacing the queen.', detail: `on ${dayInWords(look.day)}; a new queen of your choice, or leave it to them`,
    records: [{ day: look.day, words: 'Supersedure cells.', entry: entryOf(state.id, 'inspection', look.day) }],
  };
}

const spottyWords = /\b(spotty|patchy|pepper[- ]?pot|shot(?:gun)?|scattered|poor) (?:brood|pattern)|\bbrood (?:is |was |pattern )?(?:spotty|patchy|scattered|poor)\b/i;

/** True for what a note of a look says of a brood pattern with many empty cells. */
export function tellsOfSpottyBrood(words: string): boolean {
  return spottyWords.test(words);
}

function spotty({ said, settled }: Headed, { rules }: Facts): RequeenReason | null {
  const least = numberRule(rules, 'needs.requeen.spotty');
  const seen = said().filter(({ day, words }) => day >= settled && tellsOfSpottyBrood(words));
  if (seen.length < least) return null;
  const times = seen.length === 1 ? 'once' : seen.length === 2 ? 'twice' : `${seen.length} times`;
  return {
    short: 'spotty brood', because: 'Spotty brood was written down. Brood disease looks the same: look for it first.', detail: times,
    records: seen.slice(-3).map(({ day, words, entry }) => ({ day, words: `“${words}”`, entry })),
  };
}

/** Days between two looks or counts that are held against each other. */
const sameRound = 7;
/** Shorter ago than this a colony was itself a small one. */
const grown = 90;

interface Beside {
  readonly look: Look;
  readonly own: number;
  readonly usual: number;
  readonly others: number;
}

/** Much less brood than the others of its yard at its last two looks that counted brood. */
function littleBrood({ state, yard, settled, space }: Headed, { rules, today, entryOf }: Facts): RequeenReason | null {
  const since = addDays(today, -grown);
  const looks = state.looks.filter(({ framesBrood, day }) => framesBrood !== null && day >= since).slice(-2);
  const [first] = looks;
  if (first === undefined || looks.length < 2 || first.day < settled || first.day < addDays(state.start, grown)) return null;
  const splits = space().splitDays;
  if (splits.some((split) => split >= addDays(first.day, -grown))) return null;
  const share = numberRule(rules, 'needs.requeen.brood');
  const found = looks.flatMap((look) => besides(look, yard.standing.filter((one) => one.state.id !== state.id), rules));
  if (found.length < 2 || found.some(({ own, usual }) => own >= share * usual)) return null;
  return {
    short: 'little brood', because: 'Much less brood than its neighbours at two looks in a row.', detail: found.map(({ own, usual }) => `${number(own, 1)} against ${number(usual, 1)} frames`).join(', '),
    records: found.map(({ look, own, usual, others }) => ({ day: look.day, words: `${number(own, 1)} frames of brood; the middle of ${others} others was ${number(usual, 1)}.`, entry: entryOf(state.id, 'inspection', look.day) })),
  };
}

function besides(look: Look, others: readonly ColonyFacts[], rules: Facts['rules']): Beside[] {
  const brood = others.flatMap(({ state }) => {
    const near = state.looks.findLast(({ day, framesBrood }) => framesBrood !== null && Math.abs(daysBetween(day, look.day)) <= sameRound);
    return near === undefined || near.framesBrood === null ? [] : [near.framesBrood];
  });
  if (look.framesBrood === null || brood.length < numberRule(rules, 'needs.requeen.others')) return [];
  const sorted = brood.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const usual = ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
  return usual === 0 ? [] : [{ look, own: look.framesBrood, usual, others: brood.length }];
}

const ordinals: Readonly<Record<number, string>> = { 2: 'second', 3: 'third' };

function old({ reign }: Headed, { rules, today }: Facts): RequeenReason | null {
  const summer = reign.year === null ? 0 : yearOf(today) - reign.year + 1;
  const least = numberRule(rules, 'needs.requeen.age');
  if (summer < least) return null;
  return {
    short: 'an old queen', because: `The queen is in her ${ordinals[least] ?? `${least}th`} summer or older.`, detail: `queen of ${reign.year ?? ''}`,
    records: [{ day: reign.since, words: `Queen of ${reign.year ?? ''}, in the colony since ${dayInWords(reign.since)}.`, entry: reign.queen }],
  };
}

/** Her last two counts both lay above those of the yard on the same days, by the house's times and by more than chance. */
function mites({ state, yard, settled }: Headed, { rules, entryOf }: Facts): RequeenReason | null {
  const counts = state.miteCounts.filter(({ day, bees }) => day >= settled && bees > 0).slice(-2);
  if (counts.length < 2) return null;
  const times = numberRule(rules, 'needs.requeen.mites');
  const others = yard.standing.filter((one) => one.state.id !== state.id);
  const found = counts.flatMap((count) => {
    const beside = others.flatMap((one) => one.state.miteCounts.filter(({ day, bees }) => bees > 0 && Math.abs(daysBetween(day, count.day)) <= sameRound).slice(-1));
    if (beside.length < numberRule(rules, 'needs.requeen.others')) return [];
    const rest = (100 * sumOf(beside, 'mites')) / sumOf(beside, 'bees');
    const { per100, limits } = miteRate(count);
    return per100 >= times * rest && limits.lower > rest ? [{ count, per100, rest, others: beside.length }] : [];
  });
  if (found.length < 2) return null;
  return {
    short: 'mites', because: 'More mites than its neighbours at two counts in a row.', detail: found.map(({ count, rest, others: beside }) => `${countWords(count)}, against ${per100Words(rest)} of ${beside} others`).join('; '),
    records: found.map(({ count, per100, rest, others: beside }) => ({ day: count.day, words: `${count.mites} mites in ${count.bees} bees: ${per100Words(per100)} in 100; ${beside} others together ${per100Words(rest)}.`, entry: entryOf(state.id, 'mites', count.day) })),
  };
}

function sumOf(counts: readonly MiteCount[], what: 'mites' | 'bees'): number {
  return counts.reduce((sum, count) => sum + count[what], 0);
}

/**
 * Seasons in which she raised swarm cells, and the one in which the queen left whose daughter she is. Cells of her first
 * weeks are those of the queen before her, and are not laid to her account twice.
 */
function swarming({ state, reign, settled }: Headed, { rules, borders, entryOf }: Facts): RequeenReason | null {
  const seen = new Map<number, NeedRecord>();
  const left = state.reigns.find(({ ending, until }) => ending === 'swarmed' && until === reign.since);
  if (left?.until != null) seen.set(seasonOf(left.until, borders), { day: left.until, words: 'The queen left with a swarm, and this is her daughter.', entry: left.endEntry });
  for (const { day, queenCells } of state.looks) {
    const season = seasonOf(day, borders);
    if (queenCells === 'swarm' && day >= settled && !seen.has(season)) seen.set(season, { day, words: 'Swarm cells.', entry: entryOf(state.id, 'inspection', day) });
  }
  if (seen.size < numberRule(rules, 'needs.requeen.swarms')) return null;
  return { short: 'swarming', because: 'She or her mother made ready to swarm in more than one season.', detail: [...seen.keys()].toSorted().map(seasonName).join(', '), records: [...seen.values()].toSorted((a, b) => (a.day < b.day ? -1 : 1)) };
}
