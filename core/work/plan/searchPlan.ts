import { OutingFiller } from './outingFiller.ts';
import type { PlanDraft, PlanProblem } from './planProblem.ts';

/** How far an outing is moved to another day. */
const reach = 7;

/**
 * A good plan at once: outings are put in, taken out, exchanged and moved to other days one at a time while that lowers the
 * cost, then some days are emptied a fixed number of times and filled again. No chance and no clock, so the same problem
 * always gives the same plan.
 */
export function searchPlan(problem: PlanProblem, rounds = 10, start: readonly number[] | null = null): PlanDraft {
  let best: PlanDraft | null = null;
  for (const draft of searchSteps(problem, rounds, start)) best = draft;
  return best ?? new OutingFiller(problem).draft();
}

/** The same search step by step: a first plan, then after each emptying and filling the best so far. */
export function* searchSteps(problem: PlanProblem, rounds: number, start: readonly number[] | null = null): Generator<PlanDraft> {
  const filler = new OutingFiller(problem);
  const byDay = choicesByDay(problem);
  if (start !== null) filler.setAll(start);
  settle(problem, filler, byDay, true);
  yield filler.draft();
  for (let round = 0; round < rounds; round += 1) {
    const [kept, cost] = [filler.outings(), filler.cost];
    filler.setAll(shaken(kept, byDay, round));
    settle(problem, filler, byDay, false);
    if (filler.cost >= cost - 1e-9) filler.setAll(kept);
    yield filler.draft();
  }
  settle(problem, filler, byDay, true);
  yield filler.draft();
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

/** Without the outings of some days in a row, other days each time. */
function shaken(outing: readonly number[], byDay: readonly (readonly number[])[], round: number): number[] {
  const width = 6 + (round % 3) * 4;
  const start = (round * 11) % Math.max(1, outing.length);
  return outing.map((choice, day) => ((day - start + outing.length) % outing.length < width && (byDay[day]?.length ?? 0) > 0 ? -1 : choice));
}
