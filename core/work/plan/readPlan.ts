import type { Outing, PlanChoice, PlannedTask, PlannedTrouble, WeekLoad, WorkHours, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import { slotOn } from '../workHours.ts';
import type { BuiltProblem } from './buildProblem.ts';
import type { PlanDraft } from './planProblem.ts';

interface Reading {
  readonly today: Day;
  readonly hours: WorkHours;
  readonly choices: readonly PlanChoice[];
  /** The plan that was kept, which changes are counted against. */
  readonly kept: WorkPlan | null;
  readonly gap: number | null;
}

/** The numbers of a draft said again as days, yards and people. */
export function readPlan(built: BuiltProblem, draft: PlanDraft, { today, hours, choices, kept, gap }: Reading): WorkPlan {
  const { problem, jobTasks, roundTasks } = built;
  const late = roundsLate(built, draft);
  const before = new Set(kept?.outings.flatMap(({ day, visits }) => visits.map(({ yard }) => `${day}/${yard}`)) ?? []);
  const until = addDays(today, problem.days - 1);
  const outings = draft.outing.flatMap((choice, at): Outing[] => {
    const own = problem.outings[choice];
    const time = built.times[choice];
    if (own === undefined || time === undefined) return [];
    const day = addDays(today, at);
    const yards = own.yards.flatMap((yard) => built.yards[yard] ?? []);
    const out = built.ways.fromHome(yards[0]?.id ?? built.yards[0]!.id) ?? 0;
    let clock = time.from;
    const visits = yards.map(({ id }, step) => {
      if (step > 0) clock += built.ways.between(yards[step - 1]?.id ?? id, id) ?? 0;
      const tasks = [
        ...jobTasks.flatMap((task, job) => planned(task, draft.jobs[job]?.get(at) ?? 0, problem.jobs[job]?.each ?? 0, task.after === null ? Math.max(0, daysBetween(task.latest, day)) : 0)),
        ...roundTasks.flatMap((task, round) => planned(task, draft.rounds[round]?.get(at) ?? 0, problem.rounds[round]?.each[at] ?? 0, late.get(`${round}/${at}`) ?? 0)),
      ].filter(({ task }) => task.yard === id).map(({ row }) => row);
      const arrive = clock;
      clock += built.setUp + tasks.reduce((sum, { minutes }) => sum + minutes, 0) / own.crew.length;
      const hold = choices.find((one) => one.day === day && (one.kind === 'pin' || one.kind === 'lock') && (one.yard === id || tasks.some(({ key }) => key === one.task)));
      return { yard: id, arrive: round(arrive), leave: round(clock), tasks, held: hold === undefined ? null : (hold.kind as 'pin' | 'lock'), change: kept === null ? null : before.has(`${day}/${id}`) ? ('same' as const) : ('new' as const) };
    });
    const here = visits.flatMap(({ tasks }) => tasks);
    const behind = new Map([...jobTasks, ...roundTasks].map((task) => [task.key, task]));
    const weathers = new Set(here.map(({ key }) => behind.get(key)?.weather ?? 'any'));
    return [{
      day, people: own.crew.flatMap((one) => hours.people[one]?.name ?? []), leave: round(time.from - out), back: round(clock + (built.ways.fromHome(yards.at(-1)?.id ?? yards[0]!.id) ?? 0)),
      driving: own.driving, working: here.reduce((sum, { minutes }) => sum + minutes, 0), room: own.room, visits, bring: bringOf(here, behind), weather: weathers.has('flying') ? 'flying' : weathers.has('dry') ? 'dry' : 'any',
    }];
  });
  const visits = outings.flatMap(({ visits: own }) => own);
  const same = visits.filter(({ change }) => change === 'same').length;
  return {
    from: today, until, outings, home: built.home.map((task) => ({ day: homeDay(task, today, until, hours), task: rowOf(task, task.colonies.length, task.minutes, 0) })).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)),
    troubles: troublesOf(built, draft, today, outings), weeks: weeksOf(today, problem.days, hours, outings),
    driving: outings.reduce((sum, { driving }) => sum + driving, 0), naive: naiveDriving(built), gap,
    changes: kept === null ? null : { same, moved: visits.length - same, visits: visits.length }, remarks: [...built.remarks],
  };
}

function planned(task: WorkTask, units: number, each: number, late: number): { task: WorkTask; row: PlannedTask }[] {
  return units <= 0 ? [] : [{ task, row: rowOf(task, Math.min(units, task.colonies.length), Math.round(units * each * 10) / 10, late) }];
}

function rowOf({ key, what, colonies, people }: WorkTask, many: number, minutes: number, late: number): PlannedTask {
  return { key, what, colonies: many, of: colonies.length, minutes, people, late };
}

/** Days by which the colony seen longest ago is late on each day of each round, first due first seen. */
function roundsLate({ problem }: BuiltProblem, draft: PlanDraft): Map<string, number> {
  const late = new Map<string, number>();
  problem.rounds.forEach((one, at) => {
    const due = [...one.due];
    for (const [day, units] of [...(draft.rounds[at] ?? [])].toSorted(([a], [b]) => a - b)) {
      late.set(`${at}/${day}`, Math.max(0, day - (due[0] ?? day)));
      due.splice(0, units);
      for (let unit = 0; unit < units; unit += 1) due.push(one.again[day] ?? day);
    }
  });
  return late;
}

function bringOf(rows: readonly PlannedTask[], behind: ReadonlyMap<string, WorkTask>): Outing['bring'] {
  const found = new Map<string, number>();
  for (const { key, colonies, of } of rows) {
    for (const { item, count } of behind.get(key)?.bring ?? []) found.set(item, (found.get(item) ?? 0) + (of === 0 ? count : Math.ceil((count * colonies) / of)));
  }
  return [...found].map(([item, count]) => ({ item, count }));
}

/** The first day from its earliest on which somebody has hours, but no later than its last. */
function homeDay({ earliest, latest }: WorkTask, today: Day, until: Day, { people }: WorkHours): Day {
  const first = earliest < today ? today : earliest;
  const last = latest < first ? first : latest > until ? until : latest;
  for (let day = first; day <= last; day = addDays(day, 1)) if (people.some((worker) => slotOn(worker, day) !== null)) return day;
  return first;
}

function troublesOf({ problem, jobTasks, roundTasks, unreachable }: BuiltProblem, draft: PlanDraft, today: Day, outings: readonly Outing[]): PlannedTrouble[] {
  const troubles: PlannedTrouble[] = unreachable.map(({ key, what, yard, minutes }) => ({ key, what, yard, kind: 'left', late: 0, minutes, reason: 'Nobody wrote down how long it takes to drive to this yard.', mend: 'Write the minutes down on the page of the yard.' }));
  jobTasks.forEach((task, at) => {
    const job = problem.jobs[at];
    if (job === undefined || task.after !== null || job.left === 0) return;
    const open = job.units - [...(draft.jobs[at]?.values() ?? [])].reduce((sum, units) => sum + units, 0);
    if (open <= 0) return;
    const there = problem.outings.filter(({ yards }) => yards.includes(job.yard));
    const enough = there.some(({ crew }) => crew.length >= job.people);
    const long = there.some(({ crew, room }) => crew.length >= job.people && room >= job.each);
    troubles.push({
      key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: Math.round(open * job.each),
      reason: there.length === 0 ? 'No day has hours that reach to this yard and back by daylight.' : !enough ? `It takes ${job.people} people, and never so many have hours together.` : !long ? 'It takes longer than any day has hours.' : 'Other work that is due sooner takes the hours.',
      mend: there.length === 0 || long ? 'Give more hours, or leave other work out.' : enough ? 'Give one day more hours, or write it down in parts.' : 'Ask somebody along and write their hours down.',
    });
  });
  roundTasks.forEach((task, at) => {
    if ((draft.rounds[at]?.size ?? 0) > 0 || !(problem.rounds[at]?.due.some((due) => due < problem.days) ?? false)) return;
    troubles.push({ key: task.key, what: task.what, yard: task.yard, kind: 'left', late: 0, minutes: task.minutes, reason: 'No day has the hours for it.', mend: 'Give more hours, or set the rounds further apart.' });
  });
  const latest = new Map<string, PlannedTrouble>();
  for (const { day, visits } of outings) {
    for (const { yard, tasks } of visits) {
      for (const { key, what, late, minutes } of tasks) {
        if (late <= 0 || (latest.get(key)?.late ?? 0) >= late) continue;
        latest.set(key, { key, what, yard, kind: 'late', late, minutes, reason: day === today ? 'It is past its last day already.' : 'The hours of the days before do not reach for it.', mend: 'Give more hours before that day, or leave other work out.' });
      }
    }
  }
  return [...troubles, ...latest.values()];
}

function weeksOf(today: Day, days: number, { people }: WorkHours, outings: readonly Outing[]): WeekLoad[] {
  return Array.from({ length: Math.ceil(days / 7) }, (_, week): WeekLoad => {
    const [from, end] = [addDays(today, 7 * week), addDays(today, Math.min(days, 7 * week + 7))];
    let have = 0;
    for (let day = from; day < end; day = addDays(day, 1)) {
      for (const worker of people) {
        const slot = slotOn(worker, day);
        if (slot !== null) have += slot.until - slot.from;
      }
    }
    const own = outings.filter(({ day }) => day >= from && day < end);
    return { from, have, out: own.reduce((sum, { leave, back, people: crew }) => sum + (back - leave) * crew.length, 0), working: own.reduce((sum, { working }) => sum + working, 0) };
  });
}

/** Driving with each task by itself on the first day that is free for it, each yard from home and back; a day's work in one yard shares the way. */
function naiveDriving({ problem, yards, ways }: BuiltProblem): number {
  const rooms = new Map<string, number>();
  for (const { day, yards: own, room } of problem.outings) if (own.length === 1) rooms.set(`${day}/${own[0]}`, Math.max(rooms.get(`${day}/${own[0]}`) ?? 0, room));
  const work = new Map<string, number>();
  const put = (yard: number, from: number, minutes: number): number | null => {
    for (let day = Math.max(0, from); day < problem.days; day += 1) {
      if (!rooms.has(`${day}/${yard}`)) continue;
      work.set(`${day}/${yard}`, (work.get(`${day}/${yard}`) ?? 0) + minutes);
      return day;
    }
    return null;
  };
  for (const { yard, earliest, units, each, left } of problem.jobs) if (left > 0) put(yard, earliest, units * each);
  for (const { yard, due, again, each, units } of problem.rounds) {
    let next = due[0] ?? problem.days;
    while (next < problem.days) {
      const day = put(yard, next, units * Math.min(each[next] ?? 0, 600));
      if (day === null) break;
      next = Math.max(day + 1, again[day] ?? problem.days);
    }
  }
  return [...work].reduce((sum, [key, minutes]) => sum + Math.ceil(minutes / (rooms.get(key) ?? minutes)) * 2 * (ways.fromHome(yards[Number(key.split('/')[1])]!.id) ?? 0), 0);
}

function round(minutes: number): number {
  return Math.max(0, Math.min(1440, Math.round(minutes)));
}
