import type { YardId } from '#shared/brands.ts';
import type { MoveDay } from '#shared/contract/moveDays.ts';
import type { PlanChoice, PlannedTask, PlannedVisit, WorkHours, WorkPlan, YardDistance } from '#shared/contract/work.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { drivingTimes } from './drivingTimes.ts';
import { possibleOutings, type PossibleOuting } from './plan/possibleOutings.ts';
import { phaseOn, roundOf } from './roundPhases.ts';
import { isRound, roundYard } from './roundTasks.ts';

export interface MoveFacts {
  readonly plan: WorkPlan;
  readonly choices: readonly PlanChoice[];
  readonly yards: readonly Yard[];
  readonly hours: WorkHours;
  readonly distances: readonly YardDistance[];
  readonly rules: RuleValues;
  readonly today: Day;
}

/**
 * The days to which a yard’s visit of a day can be carried, by the same outings that the plan is made of: there are hours and
 * daylight enough for the way there and some work, and with what is held on that day in one outing. Each with the room that
 * there is, and what is planned on it already.
 */
export function moveDays({ plan, choices, yards, hours, distances, rules, today }: MoveFacts, yard: YardId, from: Day): MoveDay[] {
  const first = plan.from > today ? plan.from : today;
  const days = daysBetween(first, plan.until) + 1;
  const driving = drivingTimes(yards, distances);
  const setUp = numberRule(rules, 'work.minutes.setUp');
  // The same yards are driven together on many days, and the shortest way round takes the longest.
  const known = new Map<string, ReadonlyMap<number, readonly PossibleOuting[]>>();
  const outingsTo = (ids: readonly YardId[]) => {
    const key = ids.toSorted((a, b) => a - b).join(',');
    const found = known.get(key) ?? Map.groupBy(possibleOutings(yards.filter(({ id }) => ids.includes(id)), driving, hours, first, Math.max(0, days), setUp).filter((outing) => outing.yards.length === ids.length), ({ day }) => day);
    known.set(key, found);
    return found;
  };
  const roomOf = (outings: readonly PossibleOuting[] = []) => outings.reduce<number | null>((most, { room }) => Math.max(most ?? 0, room), null);
  const own = plan.outings.filter(({ day }) => day === from).flatMap(({ visits }) => visits.filter((visit) => visit.yard === yard)).flatMap(({ tasks }) => tasks);
  const yardOf = new Map(plan.outings.flatMap(({ visits }) => visits.flatMap((visit) => visit.tasks.map(({ key }) => [key, visit.yard] as const))));
  // A round or task that somebody asked for on a day holds its yard there too, whether it has found room or not.
  const heldOn = (day: Day) => new Set(choices.flatMap(({ kind, day: on, yard: where, task }) => ((kind === 'pin' || kind === 'lock') && on === day ? [where ?? (task === null ? null : (roundYard(task) ?? yardOf.get(task) ?? null))] : [])));
  const eachOn = (day: Day) => roundOf(rules, phaseOn(rules, day)).each;
  return [...outingsTo([yard])].toSorted(([a], [b]) => a - b).flatMap(([at, outings]): MoveDay[] => {
    const day = addDays(first, at);
    if (day === from) return [];
    const forbidden = choices.some((one) => one.kind === 'forbid' && one.day === day && (one.task === null ? one.yard === yard : own.some(({ key }) => key === one.task)));
    const there = plan.outings.filter((outing) => outing.day === day).flatMap(({ visits }) => visits);
    const others = there.filter((visit) => visit.yard !== yard);
    const asked = heldOn(day);
    const stays = (visit: PlannedVisit) => visit.held !== null || asked.has(visit.yard);
    const held = [...new Set([...others.filter(stays).map((visit) => visit.yard), ...[...asked].filter((one) => one !== null && one !== yard && outingsTo([one]).has(at))])].filter((one) => one !== null);
    const withHeld = held.length === 0 ? roomOf(outings) : roomOf(outingsTo([yard, ...held]).get(at));
    if (withHeld === null) return [];
    const here = there.filter((visit) => visit.yard === yard).flatMap(({ tasks }) => tasks);
    // A round is made once on a day, and takes as long as rounds do then.
    const work = minutesOf(own.filter(({ key }) => !isRound(key))) + minutesOf(own.filter(({ key }) => isRound(key) && !here.some((one) => one.key === key))) * (eachOn(day) / Math.max(0.1, eachOn(from)));
    const all = [...new Set([...held, ...others.map((visit) => visit.yard)])];
    const together = all.length === held.length ? withHeld : roomOf(outingsTo([yard, ...all]).get(at));
    return [{
      day, room: together ?? withHeld, taken: Math.round(minutesOf(there.flatMap(({ tasks }) => tasks))), kept: Math.round(minutesOf([...here, ...others.filter(stays).flatMap(({ tasks }) => tasks)])), work: Math.round(work),
      beside: there.map((visit) => visit.yard), together: together !== null, elsewhere: together === null ? others.filter((visit) => !stays(visit)).map((visit) => visit.yard) : [], forbidden,
    }];
  });
}

function minutesOf(tasks: readonly PlannedTask[]): number {
  return tasks.reduce((sum, { minutes, people }) => sum + minutes * people, 0);
}
