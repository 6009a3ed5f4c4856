import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { number } from '#shared/figures.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { inSeasonOf } from '#core/rules/yearWindow.ts';
import type { SpaceFacts } from './hiveBoxes.ts';
import { latestStrength } from './latestLook.ts';

/** What the queenless half of a split is given. */
export type SplitWay = 'mated' | 'cell' | 'walk-away';

export interface SplitDays {
  readonly from: Day;
  readonly frost: Day;
  /** The last day of each way, and the days reckoned from the split to its first eggs. */
  readonly latest: readonly { readonly way: SplitWay; readonly day: Day; readonly eggs: number }[];
}

/**
 * Until when a colony may be split in the season of a day: so many weeks before the first frost its young queen should
 * lay, and she lays so many days after the split as a caged queen, a ripe cell or a walk-away takes at the longest.
 */
export function splitDaysOfSeason(on: Day, rules: RuleValues): SplitDays {
  const frost = inSeasonOf(on, 'space.frost', rules);
  const rule = (key: string) => numberRule(rules, key);
  const eggs: Readonly<Record<SplitWay, number>> = {
    mated: rule('queens.cage.outBy') + rule('queens.cage.eggsBy'),
    cell: Math.max(0, rule('queens.eggs.by') - rule('queens.ripe')),
    'walk-away': rule('attention.walkAway.by'),
  };
  const lays = addDays(frost, -7 * rule('space.split.weeks'));
  return { from: inSeasonOf(on, 'space.split.from', rules), frost, latest: (['mated', 'cell', 'walk-away'] as const).map((way) => ({ way, eggs: eggs[way], day: addDays(lays, -eggs[way]) })) };
}

export interface SplitCandidate {
  readonly bees: number;
  readonly brood: number;
  readonly look: Day;
  /** The ways that are still open on that day. */
  readonly ways: readonly SplitWay[];
  readonly reason: string;
  readonly rests: RestsOn;
}

/** A colony strong enough to be split on that day, by a look that still holds; null if it is not, or nothing tells. */
export function splitCandidate(state: Pick<ColonyState, 'looks' | 'reigns'>, facts: Omit<SpaceFacts, 'boxes'>): SplitCandidate | null {
  const { day, rules, splitDays } = facts;
  const { from, latest } = splitDaysOfSeason(day, rules);
  const ways = latest.flatMap((one) => (day <= one.day ? [one.way] : []));
  if (day < from || ways.length === 0) return null;
  // A colony gives one split in a season: its crop and its winter come after it.
  if (splitDays.some((split) => split <= day && split >= inSeasonOf(day, 'season.start', rules))) return null;
  const strength = latestStrength(state, facts);
  if (strength === null || strength.past !== null) return null;
  const { look } = strength;
  const queen = state.reigns.some((reign) => reign.since <= day && (reign.until === null || reign.until > day));
  if (!queen || look.eggs === false || look.framesBrood === null) return null;
  if (look.framesBees < numberRule(rules, 'space.split.bees') || look.framesBrood < numberRule(rules, 'space.split.brood')) return null;
  return {
    bees: look.framesBees, brood: look.framesBrood, look: look.day, ways, rests: { kind: 'inspection', day: look.day },
    reason: `${number(look.framesBees, 2)} frames of bees and ${number(look.framesBrood, 2)} of brood on ${dayInWords(look.day)}${look.eggs === true ? ', eggs seen' : ''}.`,
  };
}
