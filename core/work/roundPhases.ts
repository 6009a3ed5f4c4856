import { addDays, day as dayOf, yearOf, type Day } from '#shared/days.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';

export type Phase = 'buildUp' | 'swarm' | 'flow' | 'late' | 'winter';

/** Days after the first frost on which the rounds of autumn end; where there is none, after the flow. */
const closeDown = 21;
const closeDownAfterFlow = 100;

export const phaseWords: Readonly<Record<Phase, string>> = {
  buildUp: 'while colonies build up', swarm: 'in swarm season', flow: 'in the flow', late: 'after the flow', winter: 'in winter',
};

export interface SeasonDays {
  readonly buildUp: Day;
  readonly swarm: Day;
  readonly flowRounds: Day;
  readonly flowFrom: Day;
  readonly flowUntil: Day;
  /** Null where there is no frost. */
  readonly frost: Day | null;
  readonly winter: Day;
}

/** The days of a year at the person’s place, by the house rules; each no earlier than the one before it. */
export function seasonDays(rules: RuleValues, year: number): SeasonDays {
  let years = known.get(rules);
  if (years === undefined) known.set(rules, (years = new Map()));
  const found = years.get(year) ?? workedOut(rules, year);
  years.set(year, found);
  return found;
}

/** Asked for day by day through a year, and the same for all of them. */
const known = new WeakMap<RuleValues, Map<number, SeasonDays>>();

function workedOut(rules: RuleValues, year: number): SeasonDays {
  const on = (key: string) => dayOf(`${String(year).padStart(4, '0')}-${textRule(rules, key)}`);
  const [flowFrom, flowEnd] = [on('work.flow.from'), on('work.flow.until')];
  const flowUntil = flowEnd < flowFrom ? flowFrom : flowEnd;
  const buildUp = addDays(flowFrom, -numberRule(rules, 'work.buildUp.before'));
  const swarm = addDays(flowFrom, -numberRule(rules, 'work.swarm.before'));
  const frost = numberRule(rules, 'work.frost') >= 0.5 ? on('work.frost.first') : null;
  const winter = frost === null ? addDays(flowUntil, closeDownAfterFlow) : addDays(frost, closeDown);
  return {
    buildUp, swarm: later(buildUp, swarm), flowRounds: addDays(flowFrom, numberRule(rules, 'work.swarm.after')), flowFrom, flowUntil, frost,
    winter: later(winter, flowUntil),
  };
}

export function phaseOn(rules: RuleValues, day: Day): Phase {
  const days = seasonDays(rules, yearOf(day));
  if (day < days.buildUp || day >= days.winter) return 'winter';
  if (day >= later(days.flowUntil, days.flowRounds)) return 'late';
  if (day >= days.flowRounds) return 'flow';
  return day >= days.swarm ? 'swarm' : 'buildUp';
}

/** Every so many days a round in the phase, and its minutes a colony. */
export function roundOf(rules: RuleValues, phase: Phase): { every: number; each: number } {
  const minutes = { buildUp: 'round', swarm: 'swarm', flow: 'flow', late: 'round', winter: 'winter' } as const;
  return { every: numberRule(rules, `work.rounds.${phase}`), each: numberRule(rules, `work.minutes.${minutes[phase]}`) };
}

/**
 * For each day from a first one, by when a colony seen on it is to be seen again: after as many days as its phase says, but no
 * later than if it were seen in a later phase that comes round more often. Never falls from one day to the next.
 */
export function seenAgainBy(rules: RuleValues, from: Day, days: number): number[] {
  const far = 200;
  const by = Array.from({ length: days + far }, (_, at) => at + roundOf(rules, phaseOn(rules, addDays(from, at))).every);
  for (let at = by.length - 2; at >= 0; at -= 1) by[at] = Math.min(by[at] ?? 0, by[at + 1] ?? 0);
  return by.slice(0, days);
}

/** By when a colony that was seen on a day is to be seen again, as `seenAgainBy` says of that day. */
export function dueAfter(rules: RuleValues, seen: Day): Day {
  let by = Number.POSITIVE_INFINITY;
  for (let at = 0; at < by; at += 1) by = Math.min(by, at + roundOf(rules, phaseOn(rules, addDays(seen, at))).every);
  return addDays(seen, by);
}

function later(one: Day, other: Day): Day {
  return one > other ? one : other;
}
