import type { Outing, PlannedTask, PlannedTrouble, PlannedVisit, WeekLoad, WorkHours, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import { addDays, daysBetween, monthDayInWords, type Day } from '#shared/days.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { hoursOn } from '../hoursOn.ts';
import { slotOn } from '../workHours.ts';
import { roundKey, roundWeather, roundWords } from '../roundTasks.ts';
import { catchUp, type MadeProblem, type PlanFacts } from './makeProblem.ts';
import type { PlanDraft } from './planProblem.ts';
import { planTroubles } from './planTroubles.ts';
import { roundUnits } from './roundUnits.ts';
import { trimDraft } from './trimDraft.ts';

interface Bounds {
  readonly gap: number | null;
  readonly naive: number;
}

/** A draft as a plan: outings with their times, what is done at each yard, what comes late or finds no place, and the weeks. */
export function planAnswer(made: MadeProblem, found: PlanDraft, asked: PlanFacts, { gap, naive }: Bounds): WorkPlan {
  const { days } = made;
  const draft = trimDraft(made.problem, found);
  const before = asked.kept === null ? null : new Set(asked.kept.outings.flatMap(({ day, visits }) => visits.map(({ yard }) => `${day}/${yard}`)));
  const outings = draft.outing.flatMap((choice, day) => (choice < 0 ? [] : [outingOf(made, draft, asked, day, choice, before)]));
  const { home, troubles: homeTroubles } = atHome(made, asked.hours, outings);
  const visits = outings.flatMap(({ day, visits: own }) => own.map(({ yard }) => `${day}/${yard}`));
  const [from, until] = [days[0] as Day, days.at(-1) as Day];
  const same = before === null ? 0 : visits.filter((visit) => before.has(visit)).length;
  return {
    from, until, outings, home, troubles: [...planTroubles(made, draft, asked), ...homeTroubles], weeks: weeksOf(made, asked.hours, outings, home),
    driving: outings.reduce((sum, { driving }) => sum + driving, 0), naive, gap, changes: before === null ? null : { same, moved: visits.length - same, visits: visits.length }, remarks: [...made.remarks],
  };
}

function outingOf(made: MadeProblem, draft: PlanDraft, { facts: { rules }, hours, choices }: PlanFacts, on: number, choice: number, before: ReadonlySet<string> | null): Outing {
  const possible = made.outings[choice];
  const day = made.days[on];
  if (possible === undefined || day === undefined) throw new Error(`outing ${choice} of day ${on} is not in the problem`);
  const { tour, crew, slot } = possible;
  const done = possible.yards.map((yard) => tasksAt(made, draft, yard, on, rules));
  const working = done.flat().reduce((sum, { person }) => sum + person, 0);
  const setUp = (possible.end - possible.begin - tour.legs.reduce((sum, leg) => sum + leg, 0) - possible.room / crew.length) / possible.yards.length;
  let clock = possible.begin;
  const visits = possible.yards.map((at, stop): PlannedVisit => {
    const yard = made.yards[at];
    if (yard === undefined) throw new Error(`yard ${at} is not in the problem`);
    const arrive = clock + (stop === 0 ? 0 : (tour.legs[stop - 1] ?? 0));
    const leave = arrive + setUp + (done[stop] ?? []).reduce((sum, { person }) => sum + person, 0) / crew.length;
    clock = leave;
    const held = choices.find(({ kind, day: held, yard: where, task }) => (kind === 'pin' || kind === 'lock') && held === day && (where === yard.id || (done[stop] ?? []).some(({ planned }) => planned.key === task)));
    return {
      yard: yard.id, arrive: Math.round(arrive), leave: Math.round(leave), tasks: (done[stop] ?? []).map(({ planned }) => planned), held: held === undefined ? null : held.kind === 'lock' ? 'lock' : 'pin',
      change: before === null ? null : before.has(`${day}/${yard.id}`) ? 'same' : 'new',
    };
  });
  const tasks = done.flat();
  const bring = new Map<string, number>();
  for (const { task, share } of tasks) for (const { item, count } of task?.bring ?? []) bring.set(item, (bring.get(item) ?? 0) + Math.ceil(count * share));
  const weathers = tasks.map(({ task }) => task?.weather ?? roundWeather(rules, day));
  return {
    day, people: crew.map((at) => hours.people[at]?.name ?? ''), leave: Math.max(slot.from, possible.begin - tour.out), back: Math.min(1440, Math.round(clock + tour.back)), driving: tour.minutes,
    working: Math.round(working), room: possible.room, visits, bring: [...bring].map(([item, count]) => ({ item, count })), weather: weathers.includes('flying') ? 'flying' : weathers.includes('dry') ? 'dry' : 'any',
  };
}

interface DoneThere {
  readonly planned: PlannedTask;
  readonly task: WorkTask | null;
  /** Of all its units, and person-minutes. */
  readonly share: number;
  readonly person: number;
}

function tasksAt(made: MadeProblem, draft: PlanDraft, yard: number, on: number, rules: RuleValues): DoneThere[] {
  const { problem } = made;
  const jobs = problem.jobs.flatMap((job, at): DoneThere[] => {
    const many = draft.jobs[at]?.get(on) ?? 0;
    const task = made.jobTasks[at];
    if (job.yard !== yard || many === 0 || task === undefined) return [];
    const earlier = [...(draft.jobs[at] ?? [])].reduce((sum, [day, units]) => sum + (day < on ? units : 0), 0);
    const due = daysBetween(task.latest, made.days[on] ?? task.latest);
    const followed = job.after === null ? null : [...(draft.jobs[job.after.job] ?? [])].at(-1)?.[0];
    const late = followed === null || job.after === null ? due : on - (followed ?? on) - job.after.by;
    const person = many * job.each;
    return [{
      planned: { key: task.key, what: task.what, ...coloniesOf(task.colonies.length, job.units, earlier, many), minutes: Math.round(person / task.people), people: task.people, late: Math.max(0, late), by: null },
      task, share: many / job.units, person,
    }];
  });
  const rounds = problem.rounds.flatMap((round, at): DoneThere[] => {
    const many = draft.rounds[at]?.get(on) ?? 0;
    const about = made.roundYards[at];
    if (round.yard !== yard || many === 0 || about === undefined) return [];
    const earlier = [...(draft.rounds[at] ?? [])].reduce((sum, [day, units]) => sum + (day < on ? units : 0), 0) % round.units;
    const person = many * (round.each[on] ?? 0);
    const units = roundUnits(round, draft.rounds[at] ?? new Map()).map((unit, place) => ({ ...unit, overdue: place < round.overdue })).filter((unit) => unit.on === on);
    const due = Math.min(...units.map((unit) => unit.due));
    const by = units.some(({ overdue }) => overdue) || !Number.isFinite(due) ? null : addDays(made.days[0] as Day, due);
    return [{
      planned: { key: roundKey(about.yard.id), what: roundWords(rules, made.days[on] as Day), ...coloniesOf(about.colonies, round.units, earlier, many), minutes: Math.round(person), people: 1, late: Number.isFinite(due) ? Math.max(0, on - due) : 0, by },
      task: null, share: many / round.units, person,
    }];
  });
  return [...jobs, ...rounds];
}

/** Whole colonies in so many parts of a yard, so that all parts together are all colonies. */
function coloniesOf(colonies: number, units: number, earlier: number, many: number): { colonies: number; of: number } {
  const until = (parts: number) => Math.round((parts * colonies) / units);
  return { colonies: until(earlier + many) - until(earlier), of: colonies };
}

/** Tasks at home, each on the first day from its earliest on which somebody has minutes left for it. */
function atHome(made: MadeProblem, hours: WorkHours, outings: readonly Outing[]): { home: WorkPlan['home']; troubles: PlannedTrouble[] } {
  const free = made.days.map((day) => hours.people.reduce((sum, person) => {
    const slot = slotOn(person, day);
    const out = outings.find((one) => one.day === day && one.people.includes(person.name));
    return slot === null ? sum : sum + Math.max(0, slot.until - slot.from - (out === undefined ? 0 : out.back - out.leave));
  }, 0));
  const home: { day: Day; task: PlannedTask }[] = [];
  const troubles: PlannedTrouble[] = [];
  for (const task of made.home) {
    const first = Math.max(0, made.days.findIndex((day) => day >= task.earliest));
    let left = task.minutes;
    for (let at = first; at < made.days.length && left > 0; at += 1) {
      const day = made.days[at] as Day;
      const minutes = Math.min(left, free[at] ?? 0);
      if (minutes <= 0 || (task.minutes <= 60 && minutes < left)) continue;
      free[at] = (free[at] ?? 0) - minutes;
      left -= minutes;
      home.push({ day, task: { key: task.key, what: task.what, colonies: 0, of: 0, minutes: Math.round(minutes), people: task.people, late: Math.max(0, daysBetween(task.latest, day)), by: null } });
    }
    // As in the yards, what is overdue has some days to catch up before that is trouble.
    const by = task.latest < (made.days[0] ?? task.latest) ? made.days[catchUp] : task.latest;
    const late = home.reduce((most, { day, task: { key } }) => (key === task.key && by !== undefined ? Math.max(most, daysBetween(by, day)) : most), 0);
    const trouble = { key: task.key, what: task.what, yard: null, mend: 'Add an evening, or do it outside the hours written down.' };
    if (left > 0) troubles.push({ ...trouble, kind: 'left', late: 0, minutes: Math.round(left), reason: 'No day in the plan has that many minutes left at home.' });
    else if (late > 0 && by !== undefined) troubles.push({ ...trouble, kind: 'late', late, minutes: Math.round(task.minutes), reason: `Up to ${monthDayInWords(by)} not that many minutes are left at home.` });
  }
  return { home: home.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)), troubles };
}

function weeksOf({ days }: MadeProblem, hours: WorkHours, outings: readonly Outing[], home: WorkPlan['home']): WeekLoad[] {
  const weeks: WeekLoad[] = [];
  for (let at = 0; at < days.length; at += 7) {
    const own = days.slice(at, at + 7);
    const [from, last] = [own[0] as Day, own.at(-1) as Day];
    const here = outings.filter(({ day }) => day >= from && day <= last);
    weeks.push({
      from, have: hoursOn(hours, from, last).reduce((sum, { have }) => sum + have, 0),
      out: Math.round(here.reduce((sum, { people, leave, back }) => sum + people.length * (back - leave), 0)),
      working: Math.round(here.reduce((sum, { working }) => sum + working, 0) + home.reduce((sum, { day, task }) => sum + (day >= from && day <= last ? task.minutes : 0), 0)),
    });
  }
  return weeks;
}
