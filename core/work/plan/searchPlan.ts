import { OutingFiller } from './outingFiller.ts';
import type { PlanDraft, PlanProblem } from './planProblem.ts';

/** How far an outing is moved to another day. */
const reach = 7;

/**
 * A good plan at once: outings are put in, taken out, exchanged and moved to other days one at a time while that lowers the
 * cost; then, a fixed number of times, the outings of some days or to some yard are taken away and put in anew (ruin and
 * recreate, Schrimpf and others 2000), and what is better, or hardly worse, is gone on from. The draws come from one seed
 * and no clock is looked at, so the same problem always gives the same plan.
 */
export function searchPlan(problem: PlanProblem, rounds = 300, start: readonly number[] | null = null): PlanDraft {
  const filler = new OutingFiller(problem);
  const byDay = choicesByDay(problem);
  const draw = drawer(20_260_501);
  if (start !== null) filler.setAll(start);
  settle(problem, filler, byDay, true);
  let [best, least] = [filler.outings(), filler.cost];
  for (let round = 0; round < rounds; round += 1) {
    const [kept, cost] = [filler.outings(), filler.cost];
    filler.setAll(ruined(problem, kept, draw));
    settle(problem, filler, byDay, round % 4 === 3);
    if (filler.cost < least - 1e-9) [best, least] = [filler.outings(), filler.cost];
    // A little worse is borne early on, so that the search does not stay where it first came to rest.
    else if (filler.cost > cost + 1e-9 && filler.cost > least * (1 + 0.03 * (1 - round / rounds))) filler.setAll(kept);
  }
  filler.setAll(best);
  settle(problem, filler, byDay, true);
  return filler.draft();
}

export function choicesByDay({ days, outings }: Pick<PlanProblem, 'days' | 'outings'>): number[][] {
  const byDay: number[][] = Array.from({ length: days }, () => []);
  outings.forEach(({ day }, at) => byDay[day]?.push(at));
  return byDay;
}

/** Sweeps over single days, and over pairs of days, until nothing gets better. */
function settle(problem: PlanProblem, filler: OutingFiller, byDay: readonly (readonly number[])[], moves: boolean): void {
  for (let sweep = 0; sweep < 8; sweep += 1) {
    const before = filler.cost;
    for (let day = 0; day < problem.days; day += 1) tryDay(filler, byDay, day);
    if (moves) for (let day = 0; day < problem.days; day += 1) tryMove(problem, filler, byDay, day);
    if (filler.cost >= before - 1e-9) return;
  }
}

function tryDay(filler: OutingFiller, byDay: readonly (readonly number[])[], day: number): void {
  const was = filler.outingOn(day);
  let [best, cost] = [was, filler.cost];
  for (const choice of [-1, ...(byDay[day] ?? [])]) {
    if (choice === was) continue;
    const reached = filler.costWith(day, choice, cost);
    if (reached < cost - 1e-9) [best, cost] = [choice, reached];
  }
  if (best !== was) filler.set(day, best);
}

/** The outing of a day taken off, and on another day near by one put that goes to a yard of it. */
function tryMove({ outings, days }: PlanProblem, filler: OutingFiller, byDay: readonly (readonly number[])[], day: number): void {
  const was = filler.outingOn(day);
  const yards = outings[was]?.yards ?? [];
  if (yards.length === 0) return;
  let best: { day: number; choice: number; cost: number } | null = null;
  for (let other = Math.max(0, day - reach); other <= Math.min(days - 1, day + reach); other += 1) {
    if (other === day) continue;
    const there = outings[filler.outingOn(other)]?.yards ?? [];
    for (const choice of byDay[other] ?? []) {
      const own = outings[choice]?.yards ?? [];
      if (!yards.some((yard) => own.includes(yard)) || !there.every((yard) => own.includes(yard))) continue;
      const most = best?.cost ?? filler.cost;
      const reached = filler.costWith(day, -1, most, other, choice);
      if (reached < most - 1e-9) best = { day: other, choice, cost: reached };
    }
  }
  if (best === null) return;
  filler.set(day, -1);
  filler.set(best.day, best.choice);
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
