import { MilpBuilder, type MilpModel, type Term } from '#core/order/milp.ts';
import type { DayWork } from './dayCuts.ts';
import { costs, elsewhereCost, lateCost, openOn, outingCost, visitSet, type PlanDraft, type PlanProblem } from './planProblem.ts';

export interface PlanModel {
  readonly milp: MilpModel;
  /** Part of the cost that no choice changes; the programme counts without it. */
  readonly base: number;
  readonly toDraft: (values: ArrayLike<number>) => PlanDraft;
  /** The variable of each outing. */
  readonly outingVariables: readonly number[];
  /** For each day what can happen on it, from which rows can be made that the programme may need. */
  readonly dayWork: readonly DayWork[];
  /** A draft as values of the variables, to start from. */
  readonly fromDraft: (draft: PlanDraft) => Float64Array;
}

/** Variables by the day on which a unit is done. */
type ByDay = ReadonlyMap<number, number>;

/**
 * The whole-number programme: for each day at most one outing of those that are possible; units of a job only on days
 * with an outing to its yard, within the people’s minutes; each unit once, or left at a cost. A round wants, for each day,
 * all units seen within the days before it, or short at a cost. What follows another job is tied to it by running
 * totals: by each day no more than were ready, and those that should be done by then, or short at a cost.
 */
export function planModel(problem: PlanProblem): PlanModel {
  const { jobs, rounds, outings, days, held } = problem;
  const model = new MilpBuilder();
  const before = visitSet(problem.before);
  const go = outings.map((outing, at) => model.whole(`go${at}`, 0, 1, outingCost(outing, before)));
  const base = (before === null ? 0 : costs.change * before.size) + costs.asked * rounds.reduce((sum, { asked }) => sum + [...asked].filter((day) => day >= 0 && day < days).length, 0);
  const byDay: number[][] = Array.from({ length: days }, () => []);
  outings.forEach(({ day }, at) => byDay[day]?.push(at));

  const visitsOf = (yard: number, day: number, people: number, each: number) => (byDay[day] ?? []).filter((at) => {
    const outing = outings[at];
    return outing !== undefined && outing.yards.includes(yard) && outing.crew.length >= people && Math.floor(outing.room / each + 1e-9) >= 1;
  });
  const work: DayWork['work'][number][][] = Array.from({ length: days }, () => []);
  /** Units on a day, no more than an outing of that day has room for. */
  const unitsOn = (name: string, day: number, yard: number, units: number, each: number, people: number, cost: number): number | null => {
    const visits = visitsOf(yard, day, people, each);
    if (visits.length === 0) return null;
    const variable = model.whole(`${name}-${day}`, 0, units, cost);
    model.row(`there-${name}-${day}`, [[variable, 1], ...visits.map((at): Term => [go[at] ?? 0, -Math.min(units, Math.floor((outings[at]?.room ?? 0) / each + 1e-9))])], null, 0);
    work[day]?.push({ variable, yard, people, units, each });
    return variable;
  };
  const jobDays = jobs.map((job, at): ByDay => {
    const own = new Map<number, number>();
    for (let day = Math.max(0, job.earliest); day <= Math.min(days - 1, job.last); day += 1) {
      const variable = openOn(job, day) ? unitsOn(`job${at}`, day, job.yard, job.units, job.each, job.people, lateCost(job, day) + elsewhereCost(job, day)) : null;
      if (variable !== null) own.set(day, variable);
    }
    return own;
  });
  const roundDays = rounds.map((round, at): ByDay => {
    const own = new Map<number, number>();
    for (let day = 0; day < days; day += 1) {
      const variable = round.never.has(day) ? null : unitsOn(`round${at}`, day, round.yard, round.units, round.each[day] ?? 1, 1, costs.early * (days - day) + elsewhereCost(round, day));
      if (variable !== null) own.set(day, variable);
    }
    return own;
  });
  byDay.forEach((here, day) => {
    if (here.length === 0) return;
    model.row(`one${day}`, here.map((at): Term => [go[at] ?? 0, 1]), null, 1);
    const own = work[day] ?? [];
    if (own.length > 0) model.row(`room${day}`, [...own.map(({ variable, each }): Term => [variable, each]), ...here.map((at): Term => [go[at] ?? 0, -(outings[at]?.room ?? 0)])], null, 0);
  });

  const lefts = jobs.map((job, at) => {
    const own = allOf(jobDays[at]);
    if (job.after !== null) {
      model.row(`most${at}`, own, null, job.units);
      return null;
    }
    const left = model.real(`left${at}`, 0, job.units, job.left);
    model.row(`all${at}`, [...own, [left, 1]], job.units, job.units);
    const inTime = [...(jobDays[at] ?? [])].filter(([day]) => day <= job.latest);
    const visits = inTime.flatMap(([day]) => visitsOf(job.yard, day, job.people, job.each).map((choice) => ({ go: go[choice] ?? 0, fit: Math.min(job.units, Math.floor((outings[choice]?.room ?? 0) / job.each + 1e-9)) })));
    enoughVisits(model, `job${at}`, visits, [[left, 1], ...[...(jobDays[at] ?? [])].filter(([day]) => day > job.latest).map(([, one]): Term => [one, 1])], job.units);
    return left;
  });
  const follows = followRows(model, problem, jobDays);
  const shorts = rounds.flatMap((round, at) => Array.from({ length: days }, (_, day) => {
    const lacking = round.due.filter((due) => due < day + 1).length;
    if (lacking === 0) return null;
    const variable = model.real(`short${at}-${day}`, 0, round.units, costs.unitDay);
    const fresh = (on: number) => on <= day && (round.again[on] ?? 0) > day;
    const seen = [...(roundDays[at] ?? [])].filter(([on]) => fresh(on)).map(([, one]): Term => [one, 1]);
    model.row(`seen${at}-${day}`, [...seen, [variable, 1]], lacking, null);
    const visits = [...(roundDays[at] ?? [])].filter(([on]) => fresh(on)).flatMap(([on]) => visitsOf(round.yard, on, 1, round.each[on] ?? 1).map((choice) => ({ choice, fit: Math.min(round.units, Math.floor((outings[choice]?.room ?? 0) / (round.each[on] ?? 1) + 1e-9)) })));
    enoughVisits(model, `${at}-${day}`, visits.map(({ choice, fit }) => ({ go: go[choice] ?? 0, fit })), [[variable, 1]], lacking);
    return { variable, at, lacking, fresh };
  }).filter((one) => one !== null));
  const waits = rounds.flatMap(({ due, overdue, units }, at) => Array.from({ length: Math.min(days, Math.max(0, ...due.slice(0, overdue))) }, (_, day) => {
    const lacking = due.slice(0, overdue).filter((by) => day < by).length;
    const variable = model.real(`wait${at}-${day}`, 0, units, costs.roundWaits);
    model.row(`waits${at}-${day}`, [...[...(roundDays[at] ?? [])].filter(([on]) => on <= day).map(([, one]): Term => [one, 1]), [variable, 1]], lacking, null);
    return { variable, at, lacking, fresh: (on: number) => on <= day };
  }));
  const made = rounds.flatMap(({ asked }, at) => [...asked].flatMap((day) => {
    const units = roundDays[at]?.get(day);
    if (units === undefined) return [];
    const variable = model.real(`made${at}-${day}`, 0, 1, -costs.asked);
    model.row(`made${at}-${day}`, [[variable, 1], [units, -1]], null, 0);
    return [{ variable, at, day }];
  }));
  // A visit of the plan before counts as made where something is done on it, or somebody holds it.
  const stays = [...before ?? []].flatMap((key) => {
    const [day = -1, yard = -1] = key.split('/').map(Number);
    const visits = (byDay[day] ?? []).filter((at) => outings[at]?.yards.includes(yard) === true);
    if (visits.length === 0) return [];
    const variable = model.real(`stays${day}-${yard}`, 0, 1, -costs.change);
    model.row(`stays${day}-${yard}`, [[variable, 1], ...visits.map((at): Term => [go[at] ?? 0, -1])], null, 0);
    const done = held.some((visit) => visit.day === day && visit.yard === yard) ? null : (work[day] ?? []).filter((one) => one.yard === yard);
    if (done !== null) model.row(`done${day}-${yard}`, [[variable, 1], ...done.map((one): Term => [one.variable, -1])], null, 0);
    return [{ variable, visits: new Set(visits), day, done }];
  });
  for (const { day, yard } of held) {
    const visits = (byDay[day] ?? []).filter((at) => outings[at]?.yards.includes(yard) === true);
    if (visits.length > 0) model.row(`held${day}-${yard}`, visits.map((at): Term => [go[at] ?? 0, 1]), 1, 1);
  }

  const toDraft = (values: ArrayLike<number>): PlanDraft => ({
    outing: byDay.map((here) => here.find((at) => (values[go[at] ?? -1] ?? 0) > 0.5) ?? -1),
    jobs: jobDays.map((own) => unitsBy(own, values)),
    rounds: roundDays.map((own) => unitsBy(own, values)),
    cost: base + model.variables.reduce((sum, variable, at) => sum + variable.cost * (values[at] ?? 0), 0),
  });
  const fromDraft = (draft: PlanDraft): Float64Array => {
    const values = new Float64Array(model.variables.length);
    const put = (own: ByDay, done: ReadonlyMap<number, number> | undefined) => {
      for (const [day, many] of done ?? []) values[own.get(day) ?? -1] = many;
    };
    for (const choice of draft.outing) if (choice >= 0) values[go[choice] ?? 0] = 1;
    jobDays.forEach((own, at) => put(own, draft.jobs[at]));
    roundDays.forEach((own, at) => put(own, draft.rounds[at]));
    lefts.forEach((left, at) => {
      if (left !== null) values[left] = (jobs[at]?.units ?? 0) - upTo(draft.jobs[at], days);
    });
    for (const { variable, first, own, day, by } of follows) {
      values[variable] = Math.max(0, Math.min(jobs[own]?.units ?? 0, upTo(draft.jobs[first], day)) - upTo(draft.jobs[own], day + by));
    }
    for (const { variable, at, lacking, fresh } of [...shorts, ...waits]) {
      values[variable] = Math.max(0, lacking - [...(draft.rounds[at] ?? [])].reduce((sum, [on, many]) => sum + (fresh(on) ? many : 0), 0));
    }
    for (const { variable, visits, day, done } of stays) {
      values[variable] = visits.has(draft.outing[day] ?? -1) && (done === null || done.some((one) => (values[one.variable] ?? 0) > 0)) ? 1 : 0;
    }
    for (const { variable, at, day } of made) values[variable] = Math.min(1, draft.rounds[at]?.get(day) ?? 0);
    return values;
  };
  const dayWork = byDay.map((here, day): DayWork => ({
    outings: here.flatMap((at) => {
      const outing = outings[at];
      return outing === undefined ? [] : [{ variable: go[at] ?? 0, yards: outing.yards, crew: outing.crew.length, room: outing.room }];
    }),
    work: work[day] ?? [],
  }));
  return { milp: { variables: model.variables, rows: model.rows }, base, outingVariables: go, dayWork, toDraft, fromDraft };
}

/**
 * Visits in a stretch of days have room for so many units each; all together for those that are lacking, or they are short.
 * Divided by what a small visit fits and rounded up (Chvátal 1973) that says how many visits there must be at least: it
 * takes no plan away, and brings the bound near to what is possible.
 */
function enoughVisits(model: MilpBuilder, name: string, visits: readonly { readonly go: number; readonly fit: number }[], short: readonly Term[], lacking: number): void {
  for (const by of new Set(visits.map(({ fit }) => fit))) {
    if (by < 2 || by >= lacking) continue;
    model.row(`visits${name}-${by}`, [...visits.map(({ go, fit }): Term => [go, Math.ceil(fit / by)]), ...short], Math.ceil(lacking / by), null);
  }
}

interface Follow {
  readonly variable: number;
  readonly first: number;
  readonly own: number;
  readonly day: number;
  readonly by: number;
}

function followRows(model: MilpBuilder, { jobs, days }: PlanProblem, jobDays: readonly ByDay[]): Follow[] {
  const found: Follow[] = [];
  jobs.forEach((job, own) => {
    if (job.after === null) return;
    const { job: first, from, by } = job.after;
    const until = (at: number, day: number): Term[] => [...(jobDays[at] ?? [])].filter(([on]) => on <= day).map(([, variable]): Term => [variable, 1]);
    for (const day of jobDays[own]?.keys() ?? []) {
      model.row(`ready${own}-${day}`, [...until(own, day), ...until(first, day - from).map(([variable]): Term => [variable, -1])], null, 0);
    }
    for (let day = Math.max(0, jobs[first]?.earliest ?? 0); day + by < days; day += 1) {
      const done = until(first, day);
      if (done.length === 0) continue;
      const variable = model.real(`late${own}-${day}`, 0, job.units, costs.unitDay);
      model.row(`by${own}-${day}`, [...until(own, day + by), [variable, 1], ...done.map(([one]): Term => [one, -1])], 0, null);
      found.push({ variable, first, own, day, by });
    }
  });
  return found;
}

function allOf(own: ByDay | undefined): Term[] {
  return [...(own ?? [])].map(([, variable]): Term => [variable, 1]);
}

function unitsBy(own: ByDay, values: ArrayLike<number>): Map<number, number> {
  const done = new Map<number, number>();
  for (const [day, variable] of own) {
    const many = Math.round(values[variable] ?? 0);
    if (many > 0) done.set(day, many);
  }
  return done;
}

/** Units done up to and with a day. */
function upTo(done: ReadonlyMap<number, number> | undefined, day: number): number {
  let sum = 0;
  for (const [on, many] of done ?? []) if (on <= day) sum += many;
  return sum;
}
