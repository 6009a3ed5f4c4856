import type { PlanChoice, WorkHours, WorkPlan, WorkTask, YardDistance } from '#shared/contract/work.ts';
import { addDays, dayInWords, daysBetween, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { drivingTimes } from '../drivingTimes.ts';
import type { OwnPace } from '../ownMinutes.ts';
import { phaseOn, roundOf, seenAgainBy } from '../roundPhases.ts';
import { roundKey, yardRounds } from '../roundTasks.ts';
import { planWeeks, type WorkFacts } from '../workFacts.ts';
import { carriedVisits, roundCarried, tasksCarried } from './carriedVisits.ts';
import { costs, type Job, type PlanProblem, type Round, type Visit } from './planProblem.ts';
import { possibleOutings, type PossibleOuting } from './possibleOutings.ts';
import { lackOf, whyNotHeld } from './whyNot.ts';

/** How long after its last day a task is still worth doing in the plan, and within how many days what is overdue should be done. */
const worthDoing = 14;
export const catchUp = 8;
/** Of the five steps of gravity the one that costs as it stands in `costs`. */
const usualGrave = 3;
/** A yard is worked through in at most so many parts. */
const mostParts = 4;

export interface PlanFacts {
  readonly facts: WorkFacts;
  readonly tasks: readonly WorkTask[];
  readonly pace: OwnPace;
  readonly hours: WorkHours;
  readonly distances: readonly YardDistance[];
  readonly choices: readonly PlanChoice[];
  /** The plan that was kept, which changes are counted against. */
  readonly kept: WorkPlan | null;
  /** The plan that is to change as little as possible: the one that was last shown, else the kept one. */
  readonly before: WorkPlan | null;
}

/** A task that no outing can serve. */
interface Unreached {
  readonly task: WorkTask;
  readonly reason: string;
  readonly mend: string | null;
}

/** The plan as numbers, with what each number stands for. */
export interface MadeProblem {
  readonly problem: PlanProblem;
  readonly days: readonly Day[];
  readonly yards: readonly Yard[];
  readonly outings: readonly PossibleOuting[];
  /** The task of each job; of each round its colonies. */
  readonly jobTasks: readonly WorkTask[];
  readonly roundYards: readonly { readonly yard: Yard; readonly colonies: number }[];
  /** Tasks at home, and those that no outing can serve, with why. */
  readonly home: readonly WorkTask[];
  readonly unreached: readonly Unreached[];
  readonly remarks: readonly string[];
}

export function makeProblem({ facts, tasks, pace, hours, distances, choices, before: shown }: PlanFacts): MadeProblem {
  const { today, yards, rules } = facts;
  const length = 7 * planWeeks;
  const days = Array.from({ length }, (_, at) => addDays(today, at));
  const remarks: string[] = [];
  const driving = drivingTimes(yards, distances);
  const setUp = numberRule(rules, 'work.minutes.setUp');
  const forbidden = new Set(choices.flatMap(({ kind, day, yard, task }) => (kind === 'forbid' && task === null && day !== null ? [`${day}/${yard}`] : [])));
  const outings = possibleOutings(yards, driving, hours, today, length, setUp).filter(({ day, yards: set }) => !set.some((at) => forbidden.has(`${days[day]}/${yards[at]?.id}`)));
  if (outings.length === 0 && yards.length === 0) remarks.push('There are no yards yet, so there is nowhere to go.');
  else if (outings.length === 0 && yards.some(({ id }) => driving.fromHome(id) !== null)) remarks.push(noOutings(days, hours));
  const yardAt = new Map(yards.map(({ id }, at) => [id, at]));
  const partRoom = partRooms(yards, outings);

  const held = heldVisits(choices, { days, yards, tasks, outings, remarks, whyNot: (yard, day) => whyNotHeld(yard, day, { hours, choices, fromHome: driving.fromHome(yard.id) }) });
  const carried = carriedVisits(choices, shown, { days, yards, held, outings });
  const withVisit = tasksCarried(carried, shown, choices, today);
  const wasOn = daysOf(shown, today, length);
  const dropped = new Set(choices.flatMap(({ kind, task }) => (kind === 'drop' && task !== null ? [task] : [])));
  const home: WorkTask[] = [];
  const unreached: Unreached[] = [];
  const jobs: Job[] = [];
  const jobTasks: WorkTask[] = [];
  const place = new Map<string, number>();
  const followed = new Set(tasks.flatMap(({ after }) => (after === null ? [] : [after.key])));
  const mostCrew = Math.max(0, ...outings.map(({ crew }) => crew.length));
  for (const task of chainOrder(tasks)) {
    if (dropped.has(task.key) || task.source === 'round') continue;
    const at = task.yard === null ? -1 : (yardAt.get(task.yard) ?? -1);
    if (at < 0) {
      home.push(task);
      continue;
    }
    const yard = yards[at] as Yard;
    if (driving.fromHome(yard.id) === null) {
      unreached.push(withoutWay(task, yard));
      continue;
    }
    if (task.people > mostCrew && outings.length > 0) {
      unreached.push({ task, reason: `It takes ${task.people} people, and there ${mostCrew === 1 ? 'is one' : `are ${mostCrew} at most`} on any day of the plan.`, mend: 'Add the hours of a helper, or say that fewer can do it.' });
      continue;
    }
    const after = task.after === null ? null : (place.get(task.after.key) ?? null);
    if (task.after !== null && after === null) {
      unreached.push({ task, reason: 'What it follows is not in the plan.', mend: null });
      continue;
    }
    const minutes = task.minutes * task.people;
    const single = task.after !== null || followed.has(task.key);
    const units = single ? 1 : partsFor(minutes, partRoom[at] ?? [], Math.max(1, task.colonies.length));
    place.set(task.key, jobs.length);
    jobs.push(jobOf(task, at, units, minutes / units, after, { today, length, choices: [...choices, ...withVisit], wasOn }));
    jobTasks.push(task);
  }

  const again = seenAgainBy(rules, today, length);
  const rounds: Round[] = [];
  const roundYards: { yard: Yard; colonies: number }[] = [];
  for (const { yard, colonies } of yardRounds(facts)) {
    const at = yardAt.get(yard.id) ?? -1;
    const task = tasks.find(({ key }) => key === roundKey(yard.id));
    if (dropped.has(roundKey(yard.id)) || task === undefined) continue;
    if (driving.fromHome(yard.id) === null) {
      unreached.push(withoutWay(task, yard));
      continue;
    }
    const own = roundCarried(yard.id, carried, shown, today);
    // A round that is itself held on a day is asked for there, due or not.
    const asked = new Set([...own.asked, ...choices.flatMap(({ kind, task: about, day }) => ((kind === 'pin' || kind === 'lock') && about === task.key && day !== null ? [daysBetween(today, day)] : []))]);
    const never = new Set([...own.never, ...choices.flatMap(({ kind, task: about, day }) => (kind === 'forbid' && about === task.key && day !== null ? [daysBetween(today, day)] : []))]);
    const whole = days.map((day) => roundOf(rules, phaseOn(rules, day)).each * pace.factor * colonies.length);
    const units = partsFor(Math.max(...whole), partRoom[at] ?? [], colonies.length);
    const due = Array.from({ length: units }, (_, part) => daysBetween(today, colonies[Math.floor((part * colonies.length) / units)]?.due ?? today));
    const next = due[0] ?? 0;
    rounds.push({ yard: at, units, each: whole.map((minutes) => minutes / units), again, due: next < 0 ? due.map((day) => Math.max(Math.min(catchUp, again[0] ?? catchUp), day)) : due, next, overdue: due.filter((day) => day < 0).length, asked, was: wasOn.get(task.key) ?? null, never });
    roundYards.push({ yard, colonies: colonies.length });
  }

  const before = shown === null ? null : shown.outings.flatMap(({ day, visits }) => visits.map(({ yard }): Visit => ({ day: daysBetween(today, day), yard: yardAt.get(yard) ?? -1 }))).filter(({ day, yard }) => day >= 0 && day < length && yard >= 0);
  const without = yards.filter(({ id }) => driving.fromHome(id) === null);
  if (without.length > 0) remarks.push(`${without.map(({ name }) => name).join(', ')}: the minutes from home are not written down, so nothing can be planned there.`);
  return { problem: { days: length, yards: yards.length, jobs, rounds, outings, held, before }, days, yards, outings, jobTasks, roundYards, home, unreached, remarks };
}

/** The days, counted from the first, on which a plan has each task. */
function daysOf(plan: WorkPlan | null, today: Day, length: number): Map<string, Set<number>> {
  const found = new Map<string, Set<number>>();
  for (const { day, visits } of plan?.outings ?? []) {
    const on = daysBetween(today, day);
    if (on < 0 || on >= length) continue;
    for (const { key } of visits.flatMap(({ tasks }) => tasks)) found.set(key, (found.get(key) ?? new Set()).add(on));
  }
  return found;
}

function withoutWay(task: WorkTask, { name }: Yard): Unreached {
  return { task, reason: `The minutes from home to ${name} are not written down.`, mend: 'Write them down on the yard’s line in Book.' };
}

function noOutings(days: readonly Day[], hours: WorkHours): string {
  return lackOf({ days }, hours)?.reason ?? 'No day has enough hours in daylight to reach a yard and work there.';
}

function jobOf(task: WorkTask, yard: number, units: number, each: number, after: number | null, { today, length, choices, wasOn }: { today: Day; length: number; choices: readonly PlanChoice[]; wasOn: ReadonlyMap<string, ReadonlySet<number>> }): Job {
  const on = (day: Day) => daysBetween(today, day);
  const earliest = Math.max(0, on(task.earliest));
  const latest = on(task.latest) < 0 ? Math.max(earliest, catchUp) : Math.max(earliest, on(task.latest));
  const own = choices.filter((choice) => choice.task === task.key && choice.day !== null);
  // What was held on a day that is over, and is still to be done, is free again.
  const pins = own.filter(({ kind }) => kind === 'pin' || kind === 'lock').map(({ day }) => on(day as Day)).filter((day) => day >= 0);
  const weight = task.grave / usualGrave;
  const waits = task.latest < today ? weight * costs.lateDay : 0;
  const canWait = latest >= length;
  const last = Math.min(length - 1, canWait ? length - 1 : latest + worthDoing);
  return {
    yard, units, each: Math.max(0.1, each), people: task.people, earliest: pins.length > 0 ? Math.max(0, Math.min(earliest, ...pins)) : earliest, latest: Math.max(latest, ...pins),
    last: Math.max(last, ...pins), weight, waits, left: canWait ? 2 : weight * (costs.late + costs.lateDay * (worthDoing + 6)) + waits * last,
    after: task.after === null || after === null ? null : { job: after, from: task.after.from, by: task.after.by },
    only: pins.length > 0 ? new Set(pins) : null, was: pins.length > 0 ? null : (wasOn.get(task.key) ?? null), never: new Set(own.filter(({ kind }) => kind === 'forbid').map(({ day }) => on(day as Day))),
  };
}

/** The room of one yard alone by the kind of day: most days’ first, then the longest. */
function partRooms(yards: readonly Yard[], outings: readonly PossibleOuting[]): number[][] {
  return yards.map((_, at) => {
    const rooms = outings.filter(({ yards: set, crew }) => set.length === 1 && set[0] === at && crew.length === 1).map(({ room }) => room).toSorted((a, b) => a - b);
    const all = rooms.length > 0 ? rooms : outings.filter(({ yards: set }) => set.length === 1 && set[0] === at).map(({ room }) => room).toSorted((a, b) => a - b);
    const usual = all[Math.floor(all.length / 3)];
    return usual === undefined ? [] : [usual, all.at(-1) ?? usual];
  });
}

/** Parts that fit into a usual day, else into the longest; a colony is never halved. */
function partsFor(minutes: number, rooms: readonly number[], colonies: number): number {
  for (const room of rooms) {
    const parts = Math.ceil(minutes / room - 1e-9);
    if (parts <= mostParts) return Math.max(1, Math.min(parts, colonies));
  }
  return Math.max(1, Math.min(mostParts, colonies));
}

function heldVisits(choices: readonly PlanChoice[], { days, yards, tasks, outings, remarks, whyNot }: { days: readonly Day[]; yards: readonly Yard[]; tasks: readonly WorkTask[]; outings: readonly PossibleOuting[]; remarks: string[]; whyNot(yard: Yard, day: Day): string }): Visit[] {
  const held: Visit[] = [];
  for (const { kind, day, yard, task } of choices) {
    if ((kind !== 'pin' && kind !== 'lock') || day === null) continue;
    const where = yard ?? tasks.find(({ key }) => key === task)?.yard ?? null;
    const [at, on] = [yards.findIndex(({ id }) => id === where), days.indexOf(day)];
    const there = yards[at];
    if (there === undefined || on < 0 || held.some((one) => one.day === on && one.yard === at)) continue;
    if (outings.some((outing) => outing.day === on && outing.yards.includes(at))) held.push({ day: on, yard: at });
    else {
      const why = whyNot(there, day);
      // The visit and a task of it may both be held there.
      if (!remarks.includes(why)) remarks.push(why);
    }
  }
  // Visits held on one day have to fit into one outing; the later choice gives way.
  return held.filter((visit, at) => {
    const earlier = held.slice(0, at).filter(({ day }) => day === visit.day).map(({ yard }) => yard);
    const fits = outings.some((outing) => outing.day === visit.day && [...earlier, visit.yard].every((one) => outing.yards.includes(one)));
    if (!fits) remarks.push(`${yards[visit.yard]?.name} does not fit on ${dayInWords(days[visit.day] as Day)} beside what is held there already.`);
    return fits;
  });
}

/** Tasks that others follow come before them. */
function chainOrder(tasks: readonly WorkTask[]): WorkTask[] {
  const byKey = new Map(tasks.map((task) => [task.key, task]));
  const depth = (task: WorkTask, seen = 0): number => {
    const before = task.after === null || seen > 10 ? undefined : byKey.get(task.after.key);
    return before === undefined ? 0 : 1 + depth(before, seen + 1);
  };
  return tasks.toSorted((a, b) => depth(a) - depth(b));
}
