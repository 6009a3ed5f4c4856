import type { YardId } from '#shared/brands.ts';
import type { PlanChoice, WorkHours, WorkPlan, WorkSlot, WorkTask, YardDistance } from '#shared/contract/work.ts';
import { addDays, dayInWords, daysBetween, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { drivingTimes, type DrivingTimes } from '../drivingTimes.ts';
import type { OwnPace } from '../ownMinutes.ts';
import { phaseOn, roundOf, seenAgainBy } from '../roundPhases.ts';
import { yardRounds } from '../roundTasks.ts';
import type { WorkFacts } from '../workFacts.ts';
import { costs, type Job, type PlanProblem, type Round, type Visit } from './planProblem.ts';
import { outingsOf } from './planOutings.ts';

export interface PlanFacts {
  readonly facts: WorkFacts;
  readonly tasks: readonly WorkTask[];
  readonly pace: OwnPace;
  readonly hours: WorkHours;
  readonly distances: readonly YardDistance[];
  readonly choices: readonly PlanChoice[];
  /** The plan that is to change as little as possible, if there is one. */
  readonly before: WorkPlan | null;
}

/** The plan as numbers, and what its numbers stand for. */
export interface BuiltProblem {
  readonly problem: PlanProblem;
  readonly yards: readonly Yard[];
  readonly jobTasks: readonly WorkTask[];
  readonly roundTasks: readonly WorkTask[];
  readonly ways: DrivingTimes;
  /** Of each outing, by its place: when the bees can be worked, by the clock. */
  readonly times: readonly WorkSlot[];
  readonly setUp: number;
  readonly home: readonly WorkTask[];
  /** Tasks of yards that nobody said how to get to. */
  readonly unreachable: readonly WorkTask[];
  readonly remarks: readonly string[];
}

export function buildProblem({ facts, tasks: all, pace, hours, distances, choices, before }: PlanFacts): BuiltProblem {
  const { today, until, rules } = facts;
  const days = daysBetween(today, until) + 1;
  const dropped = new Set(choices.flatMap(({ kind, task }) => (kind === 'drop' && task !== null ? [task] : [])));
  const tasks = all.filter(({ key }) => !dropped.has(key));
  const ways = drivingTimes(facts.yards, distances);
  const asked = new Set([...tasks.map(({ yard }) => yard), ...choices.map(({ yard }) => yard)]);
  const yards = facts.yards.filter(({ id }) => asked.has(id) && ways.fromHome(id) !== null);
  const place = new Map(yards.map(({ id }, at) => [id, at]));
  const here = tasks.filter(({ yard }) => yard !== null && place.has(yard));
  const jobTasks = here.filter(({ source }) => source !== 'round');
  const roundTasks = here.filter(({ source }) => source === 'round');
  const setUp = numberRule(rules, 'work.minutes.setUp');
  const on = (day: Day) => daysBetween(today, day);
  const chosen = (kind: PlanChoice['kind'], task: string) => new Set(choices.flatMap((one) => (one.kind === kind && one.task === task && one.day !== null ? [on(one.day)] : [])));

  const jobs = jobTasks.map((task): Job => {
    const [first, latest] = [Math.max(0, on(task.earliest)), on(task.latest)];
    const units = Math.max(1, task.colonies.length);
    const pins = new Set([...chosen('pin', task.key), ...chosen('lock', task.key)]);
    const after = task.after === null ? -1 : jobTasks.findIndex(({ key }) => key === task.after?.key);
    return {
      yard: place.get(task.yard as YardId) ?? 0, units, each: Math.max(0.1, task.minutes / units), people: task.people, earliest: pins.size === 0 ? first : 0, latest, last: days - 1,
      // Work whose days reach past the plan may wait for the next.
      left: latest >= days ? 0 : 2 * costs.late + costs.lateDay * (days - Math.max(latest, -28)),
      after: task.after === null || after < 0 ? null : { job: after, from: task.after.from, by: task.after.by }, only: pins.size === 0 ? null : pins, never: chosen('forbid', task.key),
    };
  });
  const again = seenAgainBy(rules, today, days);
  const due = new Map(yardRounds(facts).map((round) => [round.yard.id, round.colonies.map((one) => Math.max(0, on(one.due)))]));
  const rounds = roundTasks.map((task): Round => {
    const never = chosen('forbid', task.key);
    return {
      yard: place.get(task.yard as YardId) ?? 0, units: task.colonies.length, again, due: due.get(task.yard as YardId) ?? [],
      each: Array.from({ length: days }, (_, at) => (never.has(at) ? 1e6 : Math.max(0.1, roundOf(rules, phaseOn(rules, addDays(today, at))).each * pace.factor))),
    };
  });

  const shut = new Set(choices.flatMap((one) => (one.kind === 'forbid' && one.task === null && one.day !== null && one.yard !== null ? [`${on(one.day)}/${place.get(one.yard) ?? -1}`] : [])));
  const crewMost = Math.max(1, ...tasks.map(({ people }) => people));
  const found = outingsOf({ today, days, yards, ways, hours, setUp, shut, crewMost });
  const remarks = [...found.remarks];
  const held: Visit[] = [];
  for (const { kind, day, yard, task } of choices) {
    if ((kind !== 'pin' && kind !== 'lock') || day === null) continue;
    const own = place.get(yard ?? tasks.find(({ key }) => key === task)?.yard ?? (-1 as YardId));
    const at = on(day);
    if (own === undefined || at < 0 || at >= days || held.some((one) => one.day === at && one.yard === own)) continue;
    const wanted = [...held.filter((one) => one.day === at).map((one) => one.yard), own];
    if (found.outings.some((outing) => outing.day === at && wanted.every((one) => outing.yards.includes(one)))) held.push({ day: at, yard: own });
    else remarks.push(`${yards[own]?.name ?? 'A yard'} is held for ${dayInWords(day)}, but the hours or the daylight of that day do not reach. Lift it, or give the day more hours.`);
  }
  // A day with a held visit has only outings that make it.
  const fitting = found.outings.map((outing) => held.every((visit) => visit.day !== outing.day || outing.yards.includes(visit.yard)));
  const outings = found.outings.filter((_, at) => fitting[at]);
  const earlier = before === null ? null : before.outings.flatMap((outing) => outing.visits.flatMap(({ yard }): Visit[] => {
    const own = place.get(yard);
    const at = on(outing.day);
    return own === undefined || at < 0 || at >= days ? [] : [{ day: at, yard: own }];
  }));
  const unreachable = tasks.filter(({ yard }) => yard !== null && !place.has(yard));
  const without = facts.yards.filter(({ id }) => unreachable.some(({ yard }) => yard === id)).map(({ name }) => name);
  if (without.length > 0) remarks.push(`Minutes of driving from home are missing for ${without.join(', ')}; nothing can be planned there. Write them down on the page of the yard.`);
  return {
    problem: { days, yards: yards.length, jobs, rounds, outings, held, before: earlier }, yards, jobTasks, roundTasks, ways, setUp,
    times: found.times.filter((_, at) => fitting[at]), home: tasks.filter(({ yard }) => yard === null), unreachable, remarks,
  };
}
