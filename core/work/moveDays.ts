import type { YardId } from '#shared/brands.ts';
import type { MoveDay } from '#shared/contract/moveDays.ts';
import type { PlanChoice, WorkHours, WorkPlan, YardDistance } from '#shared/contract/work.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { drivingTimes } from './drivingTimes.ts';
import { possibleOutings, type PossibleOuting } from './plan/possibleOutings.ts';

export interface MoveFacts {
  readonly plan: WorkPlan;
  readonly choices: readonly PlanChoice[];
  readonly yards: readonly Yard[];
  readonly hours: WorkHours;
  readonly distances: readonly YardDistance[];
  /** Minutes at each yard before the work begins. */
  readonly setUp: number;
  readonly today: Day;
}

/**
 * The days to which a yard’s visit of a day can be carried, by the same outings that the plan is made of: there are hours and
 * daylight enough for the way there and some work, and with what is held on that day in one outing. Each with the room that
 * there is, and what is planned on it already.
 */
export function moveDays({ plan, choices, yards, hours, distances, setUp, today }: MoveFacts, yard: YardId, from: Day): MoveDay[] {
  const first = plan.from > today ? plan.from : today;
  const days = daysBetween(first, plan.until) + 1;
  const driving = drivingTimes(yards, distances);
  // The same yards are driven together on many days, and the shortest way round takes the longest.
  const known = new Map<string, ReadonlyMap<number, readonly PossibleOuting[]>>();
  const outingsTo = (ids: readonly YardId[]) => {
    const key = ids.toSorted((a, b) => a - b).join(',');
    const found = known.get(key) ?? Map.groupBy(possibleOutings(yards.filter(({ id }) => ids.includes(id)), driving, hours, first, Math.max(0, days), setUp).filter((outing) => outing.yards.length === ids.length), ({ day }) => day);
    known.set(key, found);
    return found;
  };
  const roomOf = (outings: readonly PossibleOuting[] = []) => outings.reduce<number | null>((most, { room }) => Math.max(most ?? 0, room), null);
  const own = plan.outings.filter(({ day }) => day === from).flatMap(({ visits }) => visits.filter((visit) => visit.yard === yard));
  const work = own.flatMap(({ tasks }) => tasks).reduce((sum, { minutes, people }) => sum + minutes * people, 0);
  return [...outingsTo([yard])].toSorted(([a], [b]) => a - b).flatMap(([at, outings]): MoveDay[] => {
    const day = addDays(first, at);
    const forbidden = choices.some((one) => one.kind === 'forbid' && one.task === null && one.yard === yard && one.day === day);
    if (day === from) return [];
    const there = plan.outings.filter((outing) => outing.day === day).flatMap(({ visits }) => visits);
    const others = there.filter((visit) => visit.yard !== yard);
    const held = others.filter((visit) => visit.held !== null).map((visit) => visit.yard);
    const withHeld = held.length === 0 ? roomOf(outings) : roomOf(outingsTo([yard, ...held]).get(at));
    if (withHeld === null) return [];
    const taken = there.flatMap(({ tasks }) => tasks).reduce((sum, { minutes, people }) => sum + minutes * people, 0);
    const together = others.length === held.length ? withHeld : roomOf(outingsTo([yard, ...others.map((visit) => visit.yard)]).get(at));
    // What is planned there and not held goes elsewhere where both are too much for one outing.
    return [{ day, room: together ?? withHeld, taken: Math.round(taken), work: Math.round(work), beside: there.map((visit) => visit.yard), together: together !== null, forbidden }];
  });
}
