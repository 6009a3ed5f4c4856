/*
 * The plan as numbers: days counted from the first, yards and people by their place in a list. An outing leads from home
 * through one to three yards and back; at most one sets out a day. A job is so many units (colonies, or 1 for the yard
 * as a whole) of equal minutes in one yard, each to be done once; a round is to be made again before so many days are
 * over. What anything costs is counted in minutes of driving.
 */

export interface Job {
  readonly yard: number;
  readonly units: number;
  /** Person-minutes a unit. */
  readonly each: number;
  /** People that must be there. */
  readonly people: number;
  /** First day, last day in time, and the last on which it is still worth doing. */
  readonly earliest: number;
  readonly latest: number;
  readonly last: number;
  /** How grave it is that a unit comes late, beside 1 as usual. */
  readonly weight: number;
  /** What each day costs that a unit has to wait: of what was overdue before the plan begins. */
  readonly waits: number;
  /** What a unit costs that is not done at all. */
  readonly left: number;
  /** Days counted from those on which the units of another job were done, first come first served; `earliest` and `last` only bound it. */
  readonly after: { readonly job: number; readonly from: number; readonly by: number } | null;
  /** Only on these days, where somebody said so; null: on any. */
  readonly only: ReadonlySet<number> | null;
  /** The days on which it was to be done in the plan that is to change as little as possible; null where that says nothing. */
  readonly was: ReadonlySet<number> | null;
  readonly never: ReadonlySet<number>;
}

/** A part of a yard, or all of it, looked through again and again. */
export interface Round {
  readonly yard: number;
  readonly units: number;
  /** Person-minutes a unit, by the day. */
  readonly each: readonly number[];
  /** By when a unit that is seen on a day is to be seen again; never falls from one day to the next. */
  readonly again: readonly number[];
  /** By when each unit is to be seen as the plan begins, soonest first; a round that is overdue gets some days to catch up. */
  readonly due: readonly number[];
  /** When the next round is due by itself: before the first day of the plan where it is overdue. */
  readonly next: number;
  /** Of its units, the first so many are overdue as the plan begins. */
  readonly overdue: number;
  /** Days on which it is made though it is not due for long: those that a visit with it was carried to. */
  readonly asked: ReadonlySet<number>;
  /** As for a job. */
  readonly was: ReadonlySet<number> | null;
  /** Days on which it may not be made. */
  readonly never: ReadonlySet<number>;
}

export interface OutingChoice {
  readonly day: number;
  /** In the order of driving. */
  readonly yards: readonly number[];
  /** Of the people, by their place. */
  readonly crew: readonly number[];
  readonly driving: number;
  /** Person-minutes at the hives. */
  readonly room: number;
}

export interface PlanProblem {
  readonly days: number;
  readonly yards: number;
  readonly jobs: readonly Job[];
  readonly rounds: readonly Round[];
  readonly outings: readonly OutingChoice[];
  /** Visits that must be, and yards visited on a day in the plan that is to change as little as possible. */
  readonly held: readonly Visit[];
  readonly before: readonly Visit[] | null;
}

export interface Visit {
  readonly day: number;
  readonly yard: number;
}

export const costs = {
  /** A unit done late, and each day that it is late. More than any single outing could save. */
  late: 150,
  lateDay: 15,
  /** A day that a unit is late which follows another, or that is to be seen again. */
  unitDay: 120,
  /** A unit of a round that is overdue as the plan begins, for each of its days to catch up: so that somebody who is there anyway looks. */
  roundWaits: 1,
  /** A round that is not made on a day on which somebody asked for it. */
  asked: 400,
  /** A unit of a round for each day that it is seen before the last: of two days in time the later one holds longer. */
  early: 0.05,
  /** A visit that the plan before has not, or has and this one has not. */
  change: 45,
  /** All units of a job, or of a round, done on a day on which the plan before had it not: little, so that it is left where it was if nothing speaks against it. */
  elsewhere: 8,
  /** Each further person that is asked to come. */
  helper: 10,
  /** So that of two equal days the first is taken. */
  laterDay: 0.02,
  /** A held visit that is not made. */
  broken: 1e6,
} as const;

/** What an outing costs by itself, with the visits that the plan before has not. What it has is given back for visits on which something is done. */
export function outingCost({ day, yards, crew, driving }: OutingChoice, before: ReadonlySet<string> | null): number {
  let cost = driving + costs.helper * (crew.length - 1) + costs.laterDay * day;
  if (before !== null) for (const yard of yards) cost += before.has(visitKey({ day, yard })) ? 0 : costs.change;
  return cost;
}

/** What it costs that a unit is done on a day; following jobs are counted by the day instead. */
export function lateCost({ latest, after, waits, weight }: Pick<Job, 'latest' | 'after' | 'waits' | 'weight'>, day: number): number {
  return after !== null ? 0 : waits * Math.max(0, day) + (day <= latest ? 0 : weight * (costs.late + costs.lateDay * (day - latest)));
}

/** What it costs that a unit is done on a day on which the plan before has it not. */
export function elsewhereCost({ was, units }: Pick<Job, 'was' | 'units'>, day: number): number {
  return was === null || was.has(day) ? 0 : costs.elsewhere / units;
}

/** True where the job may be done on that day, as far as the job goes. */
export function openOn({ earliest, last, only, never }: Job, day: number): boolean {
  return day >= earliest && day <= last && !never.has(day) && (only === null || only.has(day));
}

export function visitKey({ day, yard }: Visit): string {
  return `${day}/${yard}`;
}

export function visitSet(visits: readonly Visit[] | null): ReadonlySet<string> | null {
  return visits === null ? null : new Set(visits.map(visitKey));
}

/** The units of each job and of each round done on each day, and the outing of each day (its place among the choices), -1 for none. */
export interface PlanDraft {
  readonly outing: readonly number[];
  readonly jobs: readonly ReadonlyMap<number, number>[];
  readonly rounds: readonly ReadonlyMap<number, number>[];
  readonly cost: number;
}
