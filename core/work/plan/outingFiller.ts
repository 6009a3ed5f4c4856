import { costs, elsewhereCost, lateCost, openOn, outingCost, visitSet, type Job, type OutingChoice, type PlanDraft, type PlanProblem, type Round } from './planProblem.ts';

/** Kept for a unit that is not done yet. */
const undone = 32_000;

/** A round looks again once no more than this share of its days is left. */
const roundFrom = 0.3;

/** The outing of each day, and what is put off on some of them although it could be done there. */
export interface Filled {
  readonly outings: readonly number[];
  readonly putOff: Uint8Array;
}

interface Open {
  /** A job, or behind the jobs a round. */
  at: number;
  due: number;
  rank: number;
  units: number;
  each: number;
}

/**
 * Work filled into outings that are given, day by day: of what is open in the yards the soonest due goes first, as far
 * as the people’s minutes reach. Everything that is so far done is one row of numbers (for each unit the day it was done
 * or is due again), kept for each day, so that a change is worked out only from its day on until the rows are the same again.
 */
export class OutingFiller {
  readonly #problem: PlanProblem;
  readonly #byYard: readonly (readonly number[])[];
  readonly #outingCost: Float64Array;
  /** By job, or behind the jobs a round, and day: what a unit costs by being done then. */
  readonly #unitCost: readonly Float64Array[];
  /** Where the units of each job, then of each round, begin in a row. */
  readonly #at: readonly number[];
  readonly #size: number;
  /** By day, what it costs to make none of the visits that the plan before has on it. */
  readonly #missed: Float64Array;
  readonly #held: readonly (readonly number[])[];
  /** By day and yard: 1 where the plan before has a visit. */
  readonly #before: Uint8Array;
  readonly #yardOf: readonly number[];
  /** By yard: 1 where something is done on the outing that was filled last, or somebody holds the visit. */
  readonly #worked: Uint8Array;
  #row: Int16Array;
  readonly #rows: Int16Array[];
  readonly #costs: Float64Array;
  #total = 0;
  readonly #outing: Int32Array;
  readonly #open: Open[] = [];
  /** By day and job, or behind the jobs a round: 1 where it is left for another day. */
  readonly #putOff: Uint8Array;
  readonly #items: number;
  /** Units done by job and round: of the outing that was filled last, and of each day. */
  readonly #doing: Int16Array;
  readonly #did: Int16Array;

  constructor(problem: PlanProblem) {
    this.#problem = problem;
    const { jobs, rounds, days, outings } = problem;
    this.#byYard = Array.from({ length: problem.yards }, (_, yard) => [
      ...jobs.flatMap((job, at) => (job.yard === yard ? [at] : [])).toSorted((a, b) => depth(jobs, a) - depth(jobs, b) || a - b),
      ...rounds.flatMap((round, at) => (round.yard === yard ? [jobs.length + at] : [])),
    ]);
    const before = visitSet(problem.before);
    this.#outingCost = Float64Array.from(outings, (outing) => outingCost(outing, before));
    this.#unitCost = [
      ...jobs.map((job) => Float64Array.from({ length: days }, (_, day) => lateCost(job, day) + elsewhereCost(job, day))),
      ...rounds.map((round) => Float64Array.from({ length: days }, (_, day) => costs.early * (days - day) + elsewhereCost(round, day))),
    ];
    this.#yardOf = [...jobs, ...rounds].map(({ yard }) => yard);
    this.#worked = new Uint8Array(problem.yards);
    this.#before = new Uint8Array(days * problem.yards);
    for (const { day, yard } of problem.before ?? []) this.#before[day * problem.yards + yard] = 1;
    const starts: number[] = [];
    let size = 0;
    for (const { units } of [...jobs, ...rounds]) {
      starts.push(size);
      size += units;
    }
    this.#at = starts;
    this.#size = size;
    this.#missed = Float64Array.from({ length: days }, (_, day) => costs.change * new Set((problem.before ?? []).flatMap((visit) => (visit.day === day ? [visit.yard] : []))).size + costs.asked * rounds.filter(({ asked }) => asked.has(day)).length);
    this.#held = Array.from({ length: days }, (_, day) => problem.held.filter((visit) => visit.day === day).map(({ yard }) => yard));
    this.#row = new Int16Array(size);
    this.#rows = Array.from({ length: days + 1 }, () => new Int16Array(size));
    this.#costs = new Float64Array(days + 1);
    this.#outing = new Int32Array(days).fill(-1);
    this.#items = jobs.length + rounds.length;
    this.#putOff = new Uint8Array(days * this.#items);
    this.#doing = new Int16Array(this.#items);
    this.#did = new Int16Array(days * this.#items);
    const first = this.#rows[0];
    if (first !== undefined) {
      first.fill(undone);
      rounds.forEach(({ due, overdue }, at) => first.set(due.map((day, unit) => (unit < overdue ? waiting(day) : day)), starts[jobs.length + at] ?? 0));
    }
    this.#keepFrom(0);
  }

  get cost(): number {
    return this.#total;
  }

  outingOn(day: number): number {
    return this.#outing[day] ?? -1;
  }

  /** What it would cost with another outing on a day (and on a second one). Stops counting once that is more than `most`. */
  costWith(day: number, choice: number, most = Number.POSITIVE_INFINITY, otherDay = -1, otherChoice = -1): number {
    const { days } = this.#problem;
    const from = otherDay >= 0 ? Math.min(day, otherDay) : day;
    const until = Math.max(day, otherDay);
    const row = this.#row;
    row.set(this.#rows[from] ?? []);
    let cost = this.#costs[from] ?? 0;
    for (let on = from; on < days; on += 1) {
      if (on > until) {
        if (cost >= most) return cost;
        if (same(row, this.#rows[on])) return cost + this.#total - (this.#costs[on] ?? 0);
      }
      const chosen = on === day ? choice : on === otherDay ? otherChoice : (this.#outing[on] ?? -1);
      cost += this.#goOut(row, on, chosen, on !== day && on !== otherDay);
    }
    return cost + this.#endCost(row);
  }

  /** Another outing on a day; nothing is put off on it. */
  set(day: number, choice: number): void {
    this.#outing[day] = choice;
    this.#putOff.fill(0, day * this.#items, (day + 1) * this.#items);
    this.#keepFrom(day);
  }

  /** Puts things off on a day, or no longer, one at a time while that costs less. */
  tryPuttingOff(day: number): void {
    const { outings, jobs, rounds } = this.#problem;
    const { yards } = outings[this.#outing[day] ?? -1] ?? { yards: [] };
    for (const yard of yards) {
      for (const at of this.#byYard[yard] ?? []) {
        const place = day * this.#items + at;
        const was = this.#putOff[place] ?? 0;
        // A round that somebody asked for on that day is made on it.
        if (was === 0 && (this.#did[place] === 0 || rounds[at - jobs.length]?.asked.has(day) === true)) continue;
        this.#putOff[place] = 1 - was;
        if (this.#costFrom(day) < this.#total - 1e-9) this.#keepFrom(day);
        else this.#putOff[place] = was;
      }
    }
  }

  /** What it costs with what was changed on a day, and nothing after it. */
  #costFrom(day: number): number {
    const { days } = this.#problem;
    const row = this.#row;
    row.set(this.#rows[day] ?? []);
    let cost = this.#costs[day] ?? 0;
    for (let on = day; on < days; on += 1) {
      if (on > day) {
        if (cost >= this.#total) return cost;
        if (same(row, this.#rows[on])) return cost + this.#total - (this.#costs[on] ?? 0);
      }
      cost += this.#goOut(row, on, this.#outing[on] ?? -1);
    }
    return cost + this.#endCost(row);
  }

  setAll(outing: ArrayLike<number>, putOff: Uint8Array | null = null): void {
    for (let day = 0; day < this.#outing.length; day += 1) {
      const choice = outing[day] ?? -1;
      if (putOff === null && choice !== this.#outing[day]) this.#putOff.fill(0, day * this.#items, (day + 1) * this.#items);
      this.#outing[day] = choice;
    }
    if (putOff !== null) this.#putOff.set(putOff);
    this.#keepFrom(0);
  }

  outings(): number[] {
    return Array.from(this.#outing);
  }

  filled(): Filled {
    return { outings: this.outings(), putOff: this.#putOff.slice() };
  }

  /** The outings as they are, and what is done on them; those on which nothing is done and that nobody holds are left out. */
  draft(): PlanDraft {
    const { jobs, rounds, days, outings, held } = this.#problem;
    const done = [...jobs, ...rounds].map(() => new Map<number, number>());
    for (let day = 0; day < days; day += 1) {
      done.forEach((own, at) => {
        const many = this.#did[day * this.#items + at] ?? 0;
        if (many > 0) own.set(day, many);
      });
    }
    const idle = this.outings().findIndex((choice, day) => choice >= 0 && !done.some((own) => own.has(day)) && !held.some((visit) => visit.day === day && outings[choice]?.yards.includes(visit.yard)));
    if (idle >= 0) {
      this.set(idle, -1);
      return this.draft();
    }
    const outing = this.outings();
    return { outing, jobs: done.slice(0, jobs.length), rounds: done.slice(jobs.length), cost: this.#total };
  }

  #keepFrom(day: number): void {
    const { days } = this.#problem;
    const row = this.#row;
    row.set(this.#rows[day] ?? []);
    let cost = this.#costs[day] ?? 0;
    for (let on = day; on < days; on += 1) {
      this.#doing.fill(0);
      cost += this.#goOut(row, on, this.#outing[on] ?? -1);
      this.#did.set(this.#doing, on * this.#items);
      this.#rows[on + 1]?.set(row);
      this.#costs[on + 1] = cost;
    }
    this.#total = cost + this.#endCost(row);
  }

  #goOut(row: Int16Array, day: number, choice: number, puttingOff = true): number {
    const going = choice < 0 ? undefined : this.#problem.outings[choice];
    // What was planned before or is asked for is paid for on its day and given back with its visit, so that no day ever costs less than nothing.
    let cost = this.#missed[day] ?? 0;
    for (const yard of this.#held[day] ?? []) if (going === undefined || !going.yards.includes(yard)) cost += costs.broken;
    if (going === undefined) return cost;
    const worked = this.#worked;
    for (const yard of going.yards) worked[yard] = 0;
    cost += (this.#outingCost[choice] ?? 0) + this.#fill(row, going, day, puttingOff);
    for (const yard of this.#held[day] ?? []) worked[yard] = 1;
    for (const yard of going.yards) if (worked[yard] === 1 && this.#before[day * this.#problem.yards + yard] === 1) cost -= costs.change;
    return cost;
  }

  #fill(row: Int16Array, { yards, room, crew: { length: crew } }: OutingChoice, day: number, puttingOff: boolean): number {
    const { jobs, rounds } = this.#problem;
    const open = this.#open;
    let many = 0;
    const add = (at: number, due: number, units: number, each: number) => {
      if (units <= 0) return;
      const slot = (open[many] ??= { at: 0, due: 0, rank: 0, units: 0, each: 0 });
      slot.at = at;
      slot.due = due;
      // What is past its day cannot be saved any more: it goes after what can, but before what has time.
      slot.rank = due < day ? 1 : due <= day + 3 ? 0 : 2;
      slot.units = units;
      slot.each = each;
      many += 1;
    };
    for (const yard of yards) {
      for (const at of this.#byYard[yard] ?? []) {
        if (puttingOff && this.#putOff[day * this.#items + at] === 1) continue;
        const start = this.#at[at] ?? 0;
        const job = jobs[at];
        if (job === undefined) {
          const round = rounds[at - jobs.length];
          if (round !== undefined) this.#addRound(row, round, at, start, day, add);
        } else if (job.people <= crew && openOn(job, day) && row[start + job.units - 1] === undone) {
          const did = doneOf(row, start, job.units);
          if (job.after === null) add(at, job.latest, job.units - did, job.each);
          else this.#addFollowing(row, job.after, at, did, job, day, add);
        }
      }
    }
    let cost = 0;
    let free = room;
    for (let step = 0; step < many; step += 1) {
      let next = step;
      for (let other = step + 1; other < many; other += 1) if (sooner(open[other], open[next])) next = other;
      const [one, first] = [open[step], open[next]];
      if (one === undefined || first === undefined) break;
      open[step] = first;
      open[next] = one;
      const fit = Math.min(first.units, Math.floor(free / first.each + 1e-9));
      if (fit <= 0) continue;
      free -= fit * first.each;
      this.#worked[this.#yardOf[first.at] ?? 0] = 1;
      cost += this.#do(row, first.at, fit, day);
    }
    return cost;
  }

  #addRound(row: Int16Array, round: Round, at: number, start: number, day: number, add: (at: number, due: number, units: number, each: number) => void): void {
    if (round.never.has(day)) return;
    const most = round.asked.has(day) ? undone : day + ((round.again[day] ?? day) - day) * roundFrom;
    let units = 0;
    while (units < round.units && dueOf(row[start + units] ?? 0) <= most) units += 1;
    add(at, dueOf(row[start] ?? 0), units, round.each[day] ?? 1);
  }

  #addFollowing(row: Int16Array, after: NonNullable<Job['after']>, at: number, did: number, job: Job, day: number, add: (at: number, due: number, units: number, each: number) => void): void {
    const first = this.#at[after.job] ?? 0;
    const most = Math.min(job.units, this.#problem.jobs[after.job]?.units ?? 0);
    let units = did;
    while (units < most && (row[first + units] ?? undone) + after.from <= day) units += 1;
    if (units > did) add(at, (row[first + did] ?? 0) + after.by, units - did, job.each);
  }

  #do(row: Int16Array, at: number, fit: number, day: number): number {
    const { jobs } = this.#problem;
    const start = this.#at[at] ?? 0;
    const end = this.#at[at + 1] ?? this.#size;
    const job = jobs[at];
    let cost = fit * (this.#unitCost[at]?.[day] ?? 0);
    this.#doing[at] = (this.#doing[at] ?? 0) + fit;
    if (job === undefined) {
      for (let unit = start; unit < start + fit; unit += 1) cost += dueCost(row[unit] ?? 0, day);
      if (this.#problem.rounds[at - jobs.length]?.asked.has(day) === true) cost -= costs.asked;
      row.copyWithin(start, start + fit, end);
      row.fill(this.#problem.rounds[at - jobs.length]?.again[day] ?? 0, end - fit, end);
      return cost;
    }
    const from = start + doneOf(row, start, job.units);
    row.fill(day, from, from + fit);
    if (job.after === null) return cost;
    const first = this.#at[job.after.job] ?? 0;
    for (let unit = from - start; unit < from - start + fit; unit += 1) cost += costs.unitDay * Math.max(0, day - (row[first + unit] ?? 0) - job.after.by);
    return cost;
  }

  /** What is left at the end, and what is overdue by then. */
  #endCost(row: Int16Array): number {
    const { jobs, rounds, days } = this.#problem;
    let cost = 0;
    jobs.forEach((job, at) => {
      const start = this.#at[at] ?? 0;
      const did = doneOf(row, start, job.units);
      if (job.after === null) cost += (job.units - did) * job.left;
      else {
        const first = this.#at[job.after.job] ?? 0;
        const most = Math.min(job.units, jobs[job.after.job]?.units ?? 0);
        for (let unit = did; unit < most; unit += 1) cost += costs.unitDay * Math.max(0, days - (row[first + unit] ?? undone) - job.after.by);
      }
    });
    rounds.forEach((round, at) => {
      const start = this.#at[jobs.length + at] ?? 0;
      for (let unit = 0; unit < round.units; unit += 1) cost += dueCost(row[start + unit] ?? 0, days);
    });
    return cost;
  }
}

/** In a row the day by which a unit of a round is to be seen is negative while it waits since before the plan began. */
function waiting(due: number): number {
  return -due - 1;
}

function dueOf(kept: number): number {
  return kept < 0 ? -kept - 1 : kept;
}

function dueCost(kept: number, day: number): number {
  const due = dueOf(kept);
  return costs.unitDay * Math.max(0, day - due) + (kept < 0 ? costs.roundWaits * Math.min(day, due) : 0);
}

function doneOf(row: Int16Array, start: number, units: number): number {
  let did = 0;
  while (did < units && row[start + did] !== undone) did += 1;
  return did;
}

function sooner(one: Open | undefined, other: Open | undefined): boolean {
  if (one === undefined || other === undefined) return false;
  return one.rank !== other.rank ? one.rank < other.rank : one.due !== other.due ? one.due < other.due : one.at < other.at;
}

function same(row: Int16Array, other: Int16Array | undefined): boolean {
  if (other === undefined) return false;
  for (let at = 0; at < row.length; at += 1) if (row[at] !== other[at]) return false;
  return true;
}

/** A job follows another by at most a few steps; those come later in the list of a day. */
function depth(jobs: readonly Job[], at: number): number {
  const after = jobs[at]?.after ?? null;
  return after === null ? 0 : 1 + depth(jobs, after.job);
}
