import type { YardId } from '#shared/brands.ts';
import type { Outing, PlanChoice, PlannedTask, PlannedVisit, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { WorkDay } from '#shared/contract/workDays.ts';
import { addDays, dayNumber, type Day } from '#shared/days.ts';
import { hoursLack, type HoursLack } from '#shared/hoursLack.ts';

/** One visit of the plan with the outing that it belongs to. */
export interface BoardVisit {
  readonly visit: PlannedVisit;
  readonly outing: Outing;
}

/** 0 Monday to 6 Sunday; day 0, 1 January 1970, was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((dayNumber(day) + 3) % 7) + 7) % 7;
}

export function mondayOf(day: Day): Day {
  return addDays(day, -weekdayOf(day));
}

export function weekDays(monday: Day): Day[] {
  return [0, 1, 2, 3, 4, 5, 6].map((at) => addDays(monday, at));
}

/** A plan made today reaches so many days ahead, today among them. */
export const planDays = 56;

/** The Mondays of the weeks that a plan reaches into. */
export function weeksOf({ from, until }: Pick<WorkPlan, 'from' | 'until'>): Day[] {
  const weeks: Day[] = [];
  for (let monday = mondayOf(from); monday <= until; monday = addDays(monday, 7)) weeks.push(monday);
  return weeks;
}

export function visitsOn(plan: WorkPlan, day: Day, yard: YardId): BoardVisit[] {
  return plan.outings.filter((outing) => outing.day === day).flatMap((outing) => outing.visits.filter((visit) => visit.yard === yard).map((visit) => ({ visit, outing })));
}

/** How many visits of the plan that was kept, from the new one's first day on, have none in the new one that stands for them: beyond what goes to the same yard on another day. */
export function visitsGone(plan: WorkPlan, kept: WorkPlan): number {
  // Only days that both plans tell of.
  const until = kept.until < plan.until ? kept.until : plan.until;
  const byYard = (own: WorkPlan) => Map.groupBy(own.outings.filter(({ day }) => day >= plan.from && day <= until).flatMap(({ visits }) => visits), ({ yard }) => yard);
  const now = byYard(plan);
  return [...byYard(kept)].reduce((sum, [yard, visits]) => sum + Math.max(0, visits.length - (now.get(yard)?.length ?? 0)), 0);
}

/** Minutes worked and there to be worked on a day; null where nobody goes out. */
export function loadOn(plan: WorkPlan, day: Day): { working: number; room: number; driving: number } | null {
  const own = plan.outings.filter((outing) => outing.day === day);
  if (own.length === 0) return null;
  return {
    working: own.reduce((sum, { working }) => sum + working, 0), room: own.reduce((sum, { room }) => sum + room, 0), driving: own.reduce((sum, { driving }) => sum + driving, 0),
  };
}

/** Person-minutes planned at home on a day. */
export function homeOn({ home }: Pick<WorkPlan, 'home'>, on: Day): number {
  return home.reduce((sum, { day, task }) => sum + (day === on ? task.minutes * task.people : 0), 0);
}

/** What a day without a visit has left for one, once what is planned at home has its time; that takes first what is of no use at the hives. */
export function freeOn({ have, all }: Pick<WorkDay, 'have' | 'all'>, home: number): number {
  return Math.max(0, Math.min(have, all - home));
}

export interface WeekLoadHere {
  /** Out, driving included, and at home. */
  readonly out: number;
  readonly home: number;
  /** That there are for the bees, and in all. */
  readonly have: number;
  readonly all: number;
  /** By how much that is too much. */
  readonly over: number;
  /** Why none of them are for the bees. */
  readonly lack: HoursLack | null;
}

/** Person-minutes planned in the week from a Monday, and that there are from the first day of the plan on; null while the hours are not read. */
export function weekLoadOf(plan: WorkPlan, monday: Day, days: ReadonlyMap<Day, WorkDay>): WeekLoadHere | null {
  const own = weekDays(monday).filter((day) => day >= plan.from && day <= plan.until);
  if (!own.every((day) => days.has(day))) return null;
  const out = plan.outings.filter(({ day }) => own.includes(day)).reduce((sum, { leave, back, people }) => sum + (back - leave) * people.length, 0);
  const home = own.reduce((sum, day) => sum + homeOn(plan, day), 0);
  const have = own.reduce((sum, day) => sum + (days.get(day)?.have ?? 0), 0);
  const all = own.reduce((sum, day) => sum + (days.get(day)?.all ?? 0), 0);
  return { out, home, have, all, over: Math.max(0, out - have, out + home - all), lack: hoursLack(own.flatMap((day) => days.get(day) ?? [])) };
}

/** Why no visit can be put on a day as far as hours go; null where one can, or where the hours are not read yet. */
export function hoursRefusal(hours: ReadonlyMap<Day, WorkDay>, day: Day): 'nobody' | 'dark' | 'unled' | null {
  const there = hours.get(day);
  return there === undefined || there.have > 0 ? null : there.dark ? 'dark' : there.unled ? 'unled' : 'nobody';
}

/** The task that a visit is named by: what is asked for by itself before the round that is made anyway. */
export function chiefTask(visits: readonly BoardVisit[], tasks: ReadonlyMap<string, WorkTask>): PlannedTask | undefined {
  const all = visits.flatMap(({ visit }) => visit.tasks);
  return all.find(({ key }) => (tasks.get(key)?.source ?? 'round') !== 'round') ?? all[0];
}

/** What has to be said and unsaid for a visit to go from one day to another, its work by itself too: what of it was asked for on its day is asked for on the new one. */
export function moveChoices(choices: readonly PlanChoice[], yard: YardId, from: Day, to: Day, work: readonly string[] = []): { lift: string[]; choose: Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>[] } {
  const holds = ({ kind }: PlanChoice) => kind === 'pin' || kind === 'lock';
  const own = choices.filter((one) => one.yard === yard && one.task === null);
  const ofWork = choices.filter(({ task }) => task !== null && work.includes(task));
  const lift = [...own, ...ofWork].filter((one) => (one.day === from && holds(one)) || (one.day === to && one.kind === 'forbid')).map(({ key }) => key);
  const said = (kind: PlanChoice['kind'], day: Day) => own.some((one) => one.kind === kind && one.day === day);
  const goes = ofWork.filter((one) => one.day === from && holds(one) && !ofWork.some((other) => other.day === to && other.task === one.task && holds(other)));
  return {
    lift,
    choose: [
      ...(said('pin', to) ? [] : [{ kind: 'pin' as const, day: to, yard, task: null }]),
      ...(said('forbid', from) ? [] : [{ kind: 'forbid' as const, day: from, yard, task: null }]),
      ...goes.map((one) => ({ kind: one.kind, day: to, yard: one.yard, task: one.task })),
    ],
  };
}

/** `1 h 35`, `45 min`. */
export function spell(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole}\u00a0min`;
  return whole % 60 === 0 ? `${whole / 60}\u00a0h` : `${Math.floor(whole / 60)}\u00a0h\u00a0${String(whole % 60).padStart(2, '0')}`;
}

/** `17:30` */
export function clock(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(Math.round(minutes) % 60).padStart(2, '0')}`;
}
