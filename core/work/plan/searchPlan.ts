import { OutingFiller } from './outingFiller.ts';
import type { PlanDraft, PlanProblem } from './planProblem.ts';

/** How far an outing, or one visit of it, is moved to another day. */
const reach = 7;

/** A good plan at once: the search of so many steps. */
export function searchPlan(problem: PlanProblem, rounds = 300): PlanDraft {
  return new PlanSearch(problem).search(rounds);
}

/**
 * Outings are put in, taken out, exchanged and moved to other days one at a time, single yards are moved from one outing to
 * another, and work is put off where that leaves room for other work, while that lowers the cost; then, a number of times,
 * the outings of some days or to some yard are taken away and put in anew (ruin and recreate, Schrimpf and others 2000), and
 * what is better, or hardly worse, is gone on from. The draws come from one seed and no clock is looked at, so the same
 * problem always gives the same plan.
 */
export class PlanSearch {
  readonly #problem: PlanProblem;
  readonly #filler: OutingFiller;
  readonly #byDay: readonly (readonly number[])[];
  readonly #bySet = new Map<string, number[]>();
  readonly #draw = drawer(20_260_501);

  constructor(problem: PlanProblem) {
    this.#problem = problem;
    this.#filler = new OutingFiller(problem);
    this.#byDay = choicesByDay(problem);
    problem.outings.forEach(({ day, yards }, at) => {
      const key = setKey(day, yards);
      const same = this.#bySet.get(key);
      if (same === undefined) this.#bySet.set(key, [at]);
      else same.push(at);
    });
    if (problem.before !== null) this.#filler.setAll(outingsBefore(problem, this.#byDay));
    this.#settle(true);
  }

  /** Goes on from the best plan so far for so many steps. */
  search(rounds: number): PlanDraft {
    const filler = this.#filler;
    let [best, least] = [filler.filled(), filler.cost];
    for (let round = 0; round < rounds; round += 1) {
      const [kept, cost] = [filler.filled(), filler.cost];
      filler.setAll(ruined(this.#problem, kept.outings, this.#draw));
      this.#settle(round % 2 === 1);
      if (filler.cost < least - 1e-9) [best, least] = [filler.filled(), filler.cost];
      // A little worse is borne early on, so that the search does not stay where it first came to rest.
      else if (filler.cost > cost + 1e-9 && filler.cost > least + Math.min(0.03 * least, 240) * (1 - round / rounds)) filler.setAll(kept.outings, kept.putOff);
    }
    filler.setAll(best.outings, best.putOff);
    this.#settle(true);
    return filler.draft();
  }

  /** Sweeps over single days, and over pairs of days, until nothing gets better. */
  #settle(moves: boolean): void {
    const filler = this.#filler;
    const { days } = this.#problem;
    for (let sweep = 0; sweep < 8; sweep += 1) {
      const before = filler.cost;
      for (let day = 0; day < days; day += 1) this.#tryDay(day);
      if (moves) {
        for (let day = 0; day < days; day += 1) this.#tryMove(day);
        for (let day = 0; day < days; day += 1) this.#tryShift(day);
      }
      for (let day = 0; day < days; day += 1) filler.tryPuttingOff(day);
      if (filler.cost >= before - 1e-9) return;
    }
  }

  #tryDay(day: number): void {
    const filler = this.#filler;
    const was = filler.outingOn(day);
    let [best, cost] = [was, filler.cost];
    for (const choice of [-1, ...(this.#byDay[day] ?? [])]) {
      if (choice === was) continue;
      const reached = filler.costWith(day, choice, cost);
      if (reached < cost - 1e-9) [best, cost] = [choice, reached];
    }
    if (best !== was) filler.set(day, best);
  }

  /** The outing of a day taken off, and on another day near by one put that goes to a yard of it. */
  #tryMove(day: number): void {
    const filler = this.#filler;
    const { outings, days } = this.#problem;
    const yards = outings[filler.outingOn(day)]?.yards ?? [];
    if (yards.length === 0) return;
    let best: Pair | null = null;
    for (let other = Math.max(0, day - reach); other <= Math.min(days - 1, day + reach); other += 1) {
      if (other === day) continue;
      const there = outings[filler.outingOn(other)]?.yards ?? [];
      for (const choice of this.#byDay[other] ?? []) {
        const own = outings[choice]?.yards ?? [];
        if (!yards.some((yard) => own.includes(yard)) || !there.every((yard) => own.includes(yard))) continue;
        best = this.#better(best, day, -1, other, choice);
      }
    }
    this.#take(best);
  }

  /** One yard of the outing of a day given to the outing of another day near by. */
  #tryShift(day: number): void {
    const filler = this.#filler;
    const { outings, days } = this.#problem;
    const yards = outings[filler.outingOn(day)]?.yards ?? [];
    if (yards.length < 2) return;
    let best: Pair | null = null;
    for (const yard of yards) {
      const rest = this.#bySet.get(setKey(day, yards.filter((one) => one !== yard))) ?? [];
      for (let other = Math.max(0, day - reach); other <= Math.min(days - 1, day + reach); other += 1) {
        const there = outings[filler.outingOn(other)]?.yards ?? [];
        if (other === day || there.length === 0 || there.includes(yard)) continue;
        for (const grown of this.#bySet.get(setKey(other, [...there, yard])) ?? []) for (const choice of rest) best = this.#better(best, day, choice, other, grown);
      }
    }
    this.#take(best);
  }

  #better(best: Pair | null, day: number, choice: number, other: number, instead: number): Pair | null {
    const most = best?.cost ?? this.#filler.cost;
    const cost = this.#filler.costWith(day, choice, most, other, instead);
    return cost < most - 1e-9 ? { day, choice, other, instead, cost } : best;
  }

  #take(best: Pair | null): void {
    if (best === null) return;
    this.#filler.set(best.day, best.choice);
    this.#filler.set(best.other, best.instead);
  }
}

/** Other outings on two days, and what that costs. */
interface Pair {
  readonly day: number;
  readonly choice: number;
  readonly other: number;
  readonly instead: number;
  readonly cost: number;
}

function setKey(day: number, yards: readonly number[]): string {
  return `${day}/${yards.toSorted((a, b) => a - b).join(',')}`;
}

export function choicesByDay({ days, outings }: Pick<PlanProblem, 'days' | 'outings'>): number[][] {
  const byDay: number[][] = Array.from({ length: days }, () => []);
  outings.forEach(({ day }, at) => byDay[day]?.push(at));
  return byDay;
}

/** The outings of the plan before as far as they are still possible, with what is held: of each day the one with most of its visits, no others, and most room. */
function outingsBefore({ before, held, outings, days }: PlanProblem, byDay: readonly (readonly number[])[]): number[] {
  return Array.from({ length: days }, (_, day) => {
    const wanted = new Set([...before ?? [], ...held].flatMap((visit) => (visit.day === day ? [visit.yard] : [])));
    const some = (byDay[day] ?? []).filter((at) => outings[at]?.yards.every((yard) => wanted.has(yard)) === true);
    return some.toSorted((a, b) => (outings[b]?.yards.length ?? 0) - (outings[a]?.yards.length ?? 0) || (outings[b]?.room ?? 0) - (outings[a]?.room ?? 0) || a - b)[0] ?? -1;
  });
}

/** Without the outings of some days in a row, of all of them or those to one yard. */
function ruined({ days, yards, outings }: PlanProblem, outing: readonly number[], draw: (below: number) => number): number[] {
  const start = draw(days);
  const width = 5 + draw(12);
  const yard = draw(2 * yards);
  return outing.map((choice, day) => {
    const within = day >= start && day < start + width;
    return within && choice >= 0 && (yard >= yards || outings[choice]?.yards.includes(yard) === true) ? -1 : choice;
  });
}

/** Whole numbers from 0 to below a bound, by a linear congruential generator (Numerical Recipes’ constants). */
function drawer(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}
