import { addDays, dayInWords, monthDayInWords, yearOf, type Day } from '#shared/days.ts';
import { number, percent } from '#shared/figures.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf, inYearWindow } from '#core/rules/yearWindow.ts';
import { deepFramesIn, type SpaceFacts } from './hiveBoxes.ts';
import { lastLook, latestStrength, swarmedOn } from './latestLook.ts';

/** One thing that speaks for a swarm, or against one where the points are below 0. */
export interface RiskReason {
  readonly words: string;
  readonly points: number;
  /** Key of the house rule that the points come from. */
  readonly rule: string;
  readonly rests: RestsOn | null;
}

/**
 * How likely a colony is to swarm, as a sum of points. It ranks colonies for a keeper who cannot look at all of them
 * today; it is no chance, and nothing published weighs these things against each other.
 */
export interface SwarmRisk {
  readonly level: 'high' | 'some' | 'low';
  readonly points: number;
  readonly reasons: readonly RiskReason[];
  /** What the record does not tell. */
  readonly unknown: readonly string[];
  /** The last day for the next look: so many days after the last one; today where it was never looked into this season. */
  readonly nextLook: Day;
  readonly lastLook: Day | null;
}

type Watched = Pick<ColonyState, 'looks' | 'reigns'>;

/** Null outside the house's swarm season. */
export function swarmRisk(state: Watched, facts: SpaceFacts): SwarmRisk | null {
  const { day, rules } = facts;
  if (!inYearWindow(day, 'space.swarm.from', 'space.swarm.until', rules)) return null;
  const found = [seasonReason(facts), queenReason(state, facts), crowdReason(state, facts), cellsReason(state, facts), splitReason(facts)];
  const reasons = found.filter((one): one is RiskReason => one !== null && 'points' in one && one.points !== 0).toSorted((a, b) => b.points - a.points);
  const unknown = found.flatMap((one) => (one !== null && !('points' in one) ? [one.unknown] : []));
  const points = Math.max(0, reasons.reduce((sum, one) => sum + one.points, 0));
  const level = points >= numberRule(rules, 'space.risk.high') ? 'high' : points >= numberRule(rules, 'space.risk.some') ? 'some' : 'low';
  const last = lastLook(state, day)?.day ?? null;
  const first = inSeasonOf(day, 'space.swarm.from', rules);
  const due = last === null ? day : addDays(last, numberRule(rules, level === 'high' ? 'space.swarm.lookHigh' : 'space.swarm.look'));
  return { level, points, reasons, unknown, lastLook: last, nextLook: due < first ? first : due };
}

type Found = RiskReason | { readonly unknown: string } | null;

function seasonReason({ rules }: SpaceFacts): RiskReason {
  return { words: 'It is swarm season.', points: numberRule(rules, 'space.risk.season'), rule: 'space.risk.season', rests: null };
}

function queenReason(state: Watched, { day, rules }: SpaceFacts): Found {
  const reign = state.reigns.findLast((one) => one.since <= day && (one.until === null || one.until > day)) ?? null;
  if (reign === null) {
    const swarmed = swarmedOn(state, day);
    if (swarmed === null) return { unknown: 'No queen is in the record.' };
    const cast = addDays(swarmed, numberRule(rules, 'space.swarm.cast'));
    return { unknown: `It swarmed on ${dayInWords(swarmed)}; a cast may follow from ${monthDayInWords(cast)} until its new queen lays.` };
  }
  if (reign.year === null) return { unknown: 'The queen’s year was not written down.' };
  const age = yearOf(day) - reign.year;
  if (age <= 0) return null;
  const rule = age === 1 ? 'space.risk.lastYear' : 'space.risk.older';
  return { words: age === 1 ? `Queen of ${reign.year}, in her second summer.` : `Queen of ${reign.year}, in her ${ordinal(age + 1)} summer.`, points: numberRule(rules, rule), rule, rests: null };
}

function crowdReason(state: Watched, facts: SpaceFacts): Found {
  const strength = latestStrength(state, facts);
  if (strength === null) return { unknown: 'No look has told how strong it is.' };
  const { look, past } = strength;
  // A swarm is spoken of with the queen, a split by itself.
  if (past === 'split' || past === 'swarmed') return null;
  if (past === 'old') return { unknown: `How full it is was last told on ${dayInWords(look.day)}.` };
  if (facts.boxes === null) return { unknown: 'The account knows of no box under it.' };
  const share = look.framesBees / deepFramesIn(facts.boxes);
  const rule = share >= numberRule(facts.rules, 'space.packed') - 1e-9 ? 'space.risk.packed' : share >= numberRule(facts.rules, 'space.full') - 1e-9 ? 'space.risk.full' : null;
  if (rule === null) return null;
  const words = share > 1 ? `More bees than combs: ${number(look.framesBees, 2)} frames of bees on ${dayInWords(look.day)}.` : `Bees on ${percent(share)} of its combs on ${dayInWords(look.day)}.`;
  return { words, points: numberRule(facts.rules, rule), rule, rests: { kind: 'inspection', day: look.day } };
}

function cellsReason(state: Watched, { day, rules, splitDays }: SpaceFacts): Found {
  const look = state.looks.findLast((one) => one.day <= day && one.queenCells !== null);
  if (look === undefined || look.day < inSeasonOf(day, 'season.start', rules)) return { unknown: 'No look of this season has told of queen cells.' };
  if (look.queenCells !== 'swarm') return null;
  const swarmed = swarmedOn(state, day);
  const answered = splitDays.some((split) => split >= look.day && split <= day) || (swarmed !== null && swarmed >= look.day);
  if (answered) return null;
  return { words: `Swarm cells on ${dayInWords(look.day)}.`, points: numberRule(rules, 'space.risk.cells'), rule: 'space.risk.cells', rests: { kind: 'inspection', day: look.day } };
}

function splitReason({ day, rules, splitDays }: SpaceFacts): RiskReason | null {
  const split = splitDays.findLast((one) => one <= day && one >= inSeasonOf(day, 'season.start', rules));
  if (split === undefined) return null;
  return { words: `Split on ${dayInWords(split)}.`, points: -numberRule(rules, 'space.risk.split'), rule: 'space.risk.split', rests: { kind: 'split', day: split } };
}

function ordinal(count: number): string {
  return ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'][count] ?? `${count}th`;
}
