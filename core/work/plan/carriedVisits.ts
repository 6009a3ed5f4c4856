import type { YardId } from '#shared/brands.ts';
import type { PlanChoice, PlannedTask, WorkPlan } from '#shared/contract/work.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { roundKey } from '../roundTasks.ts';
import type { OutingChoice, Visit } from './planProblem.ts';

/** A visit is carried by no more days than this; further apart are two visits. */
const farthest = 28;

/** A visit that is held on a day (`to`), and the day near it on which the same yard was forbidden: from there it was carried. */
export interface Carried {
  readonly yard: YardId;
  readonly from: number | null;
  readonly to: number;
  /** Of its work what goes along: as much, in its order, as the longest outing of that day there has room for. */
  readonly along: ReadonlySet<string>;
}

export function carriedVisits(choices: readonly PlanChoice[], shown: WorkPlan | null, { days, yards, held, outings }: { days: readonly Day[]; yards: readonly Yard[]; held: readonly Visit[]; outings: readonly OutingChoice[] }): Carried[] {
  const own = choices.filter(({ task }) => task === null);
  return own.flatMap(({ kind, day, yard }): Carried[] => {
    const to = day === null ? -1 : days.indexOf(day);
    const at = yards.findIndex(({ id }) => id === yard);
    if ((kind !== 'pin' && kind !== 'lock') || yard === null || to < 0 || !held.some((visit) => visit.day === to && visit.yard === at)) return [];
    const forbidden = own.flatMap((one) => (one.kind === 'forbid' && one.yard === yard && one.day !== null && days.includes(one.day) ? [days.indexOf(one.day)] : []));
    const from = forbidden.filter((one) => Math.abs(one - to) <= farthest).toSorted((a, b) => Math.abs(a - to) - Math.abs(b - to))[0] ?? null;
    const room = Math.max(0, ...outings.filter((outing) => outing.day === to && outing.yards.includes(at)).map((outing) => outing.room));
    const work = (shown?.outings ?? []).flatMap((outing) => ([from, to].includes(days.indexOf(outing.day)) ? outing.visits.filter((visit) => visit.yard === yard).flatMap(({ tasks }) => tasks) : []));
    return [{ yard, from, to, along: fitting(work, room) }];
  });
}

/** What fits, one after the other; what does not is left free, to be done when there is time for it. */
function fitting(tasks: readonly PlannedTask[], room: number): Set<string> {
  const found = new Set<string>();
  let left = room;
  for (const { key, minutes, people } of tasks) {
    // The minutes of a plan are rounded.
    if (minutes * people > left + 1) continue;
    left -= minutes * people;
    found.add(key);
  }
  return found;
}

/** The work of a visit goes with it, and stays with it while it is held; what is only partly done there keeps its other days too. */
export function tasksCarried(carried: readonly Carried[], shown: WorkPlan | null, choices: readonly PlanChoice[], today: Day): PlanChoice[] {
  const found = (shown?.outings ?? []).flatMap(({ day, visits }) => visits.flatMap(({ yard, tasks }) => {
    const on = daysBetween(today, day);
    const visit = carried.find((one) => one.yard === yard && (one.to === on || one.from === on));
    return on < 0 ? [] : tasks.map(({ key }) => ({ key, goes: visit?.along.has(key) === true, to: visit?.to ?? on }));
  }));
  const gone = new Set(found.flatMap(({ key, goes }) => (goes && !choices.some(({ task }) => task === key) ? [key] : [])));
  return found.filter(({ key }) => gone.has(key)).map(({ key, to }): PlanChoice => ({ key: '', kind: 'pin', day: addDays(today, to), yard: null, task: key }));
}

/** A round goes with the visit that was carried: it is made there, and neither before that since the last one nor where the visit was. Days are counted from the first of the plan. */
export function roundCarried(yard: YardId, carried: readonly Carried[], shown: WorkPlan | null, today: Day): { never: ReadonlySet<number>; asked: ReadonlySet<number> } {
  const rounds = (shown?.outings ?? []).flatMap(({ day, visits }) => (visits.some((visit) => visit.yard === yard && visit.tasks.some(({ key }) => key === roundKey(yard))) ? [daysBetween(today, day)] : []));
  const never = new Set<number>();
  const asked = new Set<number>();
  for (const { yard: where, from, to, along } of carried) {
    if (where !== yard || from === null || (shown !== null && !along.has(roundKey(yard)))) continue;
    asked.add(to);
    const [first, last] = [Math.min(from, to), Math.max(from, to)];
    const since = shown === null ? first - 1 : Math.max(-1, ...rounds.filter((day) => day < first));
    for (let day = since + 1; day <= last; day += 1) never.add(day);
  }
  for (const day of asked) never.delete(day);
  return { never, asked };
}
