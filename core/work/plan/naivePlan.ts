import { openOn, type OutingChoice, type PlanProblem } from './planProblem.ts';

interface Waiting {
  readonly yard: number;
  readonly each: (day: number) => number;
  readonly people: number;
  readonly from: number;
  readonly open: (day: number) => boolean;
  /** Of a round: by when it is to be seen again after a day. */
  readonly again: ((day: number) => number) | null;
}

/**
 * Driving without a plan, in minutes: each task by itself on the earliest day that has room for it, in the order of their
 * earliest days. Each round waits until the first of its colonies is due, and is made at once where it is overdue. Whatever falls on the same day
 * is driven to by the shortest way round, but nothing is put off, or brought forward, so that it could be done with something else.
 */
export function naiveDriving(problem: PlanProblem): number {
  const { days, jobs, rounds } = problem;
  const longest = longestRooms(problem);
  const chosen: { yards: readonly number[]; used: number; driving: number; crew: number }[] = Array.from({ length: days }, () => ({ yards: [], used: 0, driving: 0, crew: 0 }));
  let waiting: Waiting[] = [
    ...jobs.flatMap((job) => (job.left <= small ? [] : Array.from({ length: job.units }, (): Waiting => ({ yard: job.yard, each: () => job.each, people: job.people, from: Math.max(0, job.earliest), open: (day) => openOn(job, day), again: null })))),
    ...rounds.flatMap(({ yard, units, each, next, again, never }) => Array.from({ length: units }, (): Waiting => ({ yard, each: (day) => each[day] ?? 1, people: 1, from: Math.max(0, next), open: (day) => !never.has(day), again: (day) => again[day] ?? days }))),
  ];
  while (waiting.length > 0) {
    const first = waiting.reduce((one, other) => (other.from < one.from ? other : one));
    waiting = waiting.filter((one) => one !== first);
    for (let day = first.from; day < days; day += 1) {
      const own = chosen[day];
      if (own === undefined || !first.open(day)) continue;
      const yards = own.yards.includes(first.yard) ? own.yards : [...own.yards, first.yard];
      const people = Math.max(first.people, own.crew);
      const way = longest.get(wayKey(day, yards))?.find(({ crew }) => crew.length >= people);
      if (way === undefined || way.room < own.used + first.each(day)) continue;
      chosen[day] = { yards, used: own.used + first.each(day), driving: way.driving, crew: people };
      if (first.again !== null && first.again(day) < days) waiting.push({ ...first, from: Math.max(day + 1, first.again(day)) });
      break;
    }
  }
  return chosen.reduce((sum, { driving }) => sum + driving, 0);
}

/** What costs less to leave than this may wait for the next plan. */
const small = 10;

/** The outings to the same yards on the same day, the one with most room first. */
function longestRooms({ outings }: PlanProblem): Map<string, OutingChoice[]> {
  const found = new Map<string, OutingChoice[]>();
  for (const outing of outings.toSorted((a, b) => b.room - a.room)) {
    const key = wayKey(outing.day, outing.yards);
    const same = found.get(key);
    if (same === undefined) found.set(key, [outing]);
    else same.push(outing);
  }
  return found;
}

function wayKey(day: number, yards: readonly number[]): string {
  return `${day}/${yards.toSorted((a, b) => a - b).join(',')}`;
}
