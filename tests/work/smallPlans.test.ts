import fc from 'fast-check';
import { expect, test } from 'vitest';
import { OutingFiller } from '#core/work/plan/outingFiller.ts';
import { planModel } from '#core/work/plan/planModel.ts';
import { choicesByDay, searchPlan } from '#core/work/plan/searchPlan.ts';
import type { Job, OutingChoice, PlanProblem, Round } from '#core/work/plan/planProblem.ts';
import { loadHighs } from '#core/desk/highsModel.ts';
import { refinePlan } from '#core/desk/refinePlan.ts';
import { tightenPlan } from '#core/desk/tightenPlan.ts';
import { highsSolver } from '#core/desk/highsSolver.ts';

const never = new Set<number>();

function job(yard: number, earliest: number, latest: number, each: number, days: number, people = 1): Job {
  return { yard, units: 1, each, people, earliest, latest, last: days - 1, weight: 1, waits: 0, left: 500, after: null, only: null, was: null, never };
}

const windows = fc.array(fc.tuple(fc.nat(11), fc.nat(5)), { minLength: 1, maxLength: 8 });

test('with one yard and no limit of hours, the fewest visits are those that pierce every window at its end', async () => {
  const solver = await highsSolver();
  await fc.assert(fc.asyncProperty(windows, async (drawn) => {
    const days = 18;
    const jobs = drawn.map(([from, length]) => job(0, from, from + length, 1, days));
    const outings: OutingChoice[] = Array.from({ length: days }, (_, day) => ({ day, yards: [0], crew: [0], driving: 60, room: 1000 }));
    const problem: PlanProblem = { days, yards: 1, jobs, rounds: [], outings, held: [], before: null };
    let [last, visits] = [-1, 0];
    for (const { earliest, latest } of jobs.toSorted((a, b) => a.latest - b.latest)) {
      if (earliest <= last) continue;
      last = latest;
      visits += 1;
    }
    const { milp, toDraft } = planModel(problem);
    const best = toDraft(solver.solve(milp).values);
    expect(best.outing.filter((choice) => choice >= 0)).toHaveLength(visits);
    expect(searchPlan(problem, 40).outing.filter((choice) => choice >= 0)).toHaveLength(visits);
  }), { numRuns: 25 });
});

const small = fc.record({
  jobs: fc.array(fc.record({ yard: fc.nat(1), from: fc.nat(3), length: fc.nat(2), each: fc.integer({ min: 10, max: 60 }) }), { minLength: 1, maxLength: 4 }),
  room: fc.integer({ min: 40, max: 120 }), ways: fc.tuple(fc.integer({ min: 10, max: 90 }), fc.integer({ min: 10, max: 90 })),
});

test('small plans cost as little as the best of all plans there are, tried one by one', async () => {
  const solver = await highsSolver();
  const highs = await loadHighs();
  let cut = 0;
  await fc.assert(fc.asyncProperty(small, async ({ jobs: drawn, room, ways }) => {
    const days = 5;
    const outings: OutingChoice[] = Array.from({ length: days }, (_, day) => [
      { day, yards: [0], crew: [0], driving: ways[0], room }, { day, yards: [1], crew: [0], driving: ways[1], room }, { day, yards: [0, 1], crew: [0], driving: ways[0] + ways[1] - 5, room: room - 20 },
    ]).flat();
    const problem: PlanProblem = { days, yards: 2, jobs: drawn.map(({ yard, from, length, each }) => job(yard, from, Math.min(4, from + length), each, days)), rounds: [], outings, held: [], before: null };
    const byDay = choicesByDay(problem);
    let least = Number.POSITIVE_INFINITY;
    const tryAll = (day: number, chosen: readonly number[]): void => {
      if (day === days) least = Math.min(least, leastOf(problem, chosen));
      else for (const choice of [-1, ...(byDay[day] ?? [])]) tryAll(day + 1, [...chosen, choice]);
    };
    tryAll(0, []);
    const model = planModel(problem);
    const { milp, base, toDraft, fromDraft } = model;
    const answer = solver.solve(milp);
    expect(base + answer.objective).toBeCloseTo(least, 5);
    expect(toDraft(answer.values).cost).toBeCloseTo(least, 5);
    const found = searchPlan(problem, 30);
    expect(found.cost).toBeGreaterThanOrEqual(least - 1e-6);
    // What the search counts is what the programme counts for the same plan.
    const values = fromDraft(found);
    expect(base + milp.variables.reduce((sum, { cost }, at) => sum + cost * (values[at] ?? 0), 0)).toBeCloseTo(found.cost, 5);
    expect(new OutingFiller(problem).cost).toBeGreaterThan(0);
    // The rows that are cut take no best plan away, and bound it from below.
    const bounds: number[] = [];
    const tightened = tightenPlan(highs, model, (bound) => bounds.push(bound));
    expect(base + solver.solve(tightened).objective).toBeCloseTo(least, 5);
    expect(Math.max(...bounds)).toBeLessThanOrEqual(least + 1e-6);
    cut += (bounds.at(-1) ?? 0) > (bounds[0] ?? 0) + 1 ? 1 : 0;
    const refined = refinePlan(highs, problem, model, tightened, new OutingFiller(problem).draft(), () => undefined);
    expect(refined.cost).toBeGreaterThanOrEqual(least - 1e-6);
    // Five days are one stretch.
    expect(refined.cost).toBeLessThanOrEqual(1.003 * least);
  }), { numRuns: 12 });
  expect(cut).toBeGreaterThan(0);
});

test('the best plan of a stretch is taken also where the solver comes to it last and has told of none', async () => {
  const solver = await highsSolver();
  const highs = await loadHighs();
  const days = 8;
  const helped: Job = { ...job(0, 1, 2, 12.5, days, 2), last: 3, left: 2 };
  const overdue: Job = { ...job(0, 0, 2, 10, days), last: 6, waits: 15, left: 450 };
  const each = [30, 30, 30, 15, 15, 30, 30, 30];
  const againAfter = (every: number) => each.map((_, day) => day + every);
  const common = { yard: 0, asked: never, never };
  const rounds: Round[] = [
    { ...common, units: 4, each, again: againAfter(2), due: [2, 2, 2, 2], next: -1, overdue: 3, was: null },
    { ...common, units: 1, each: each.map(() => 25), again: againAfter(3), due: [3], next: 3, overdue: 0, was: new Set([4, 6]) },
  ];
  const outings = ([[1, 1, 81, 57], [4, 1, 81, 150], [5, 2, 71, 103], [6, 1, 33, 52], [6, 2, 84, 125]] as const)
    .map(([day, people, driving, room]): OutingChoice => ({ day, yards: [0], crew: [0, 1].slice(0, people), driving, room }));
  const problem: PlanProblem = { days, yards: 1, jobs: [helped, overdue], rounds, outings, held: [], before: null };
  const model = planModel(problem);
  const least = model.base + solver.solve(model.milp).objective;
  const refined = refinePlan(highs, problem, model, tightenPlan(highs, model), searchPlan(problem, 20), () => undefined);
  expect(refined.cost).toBeGreaterThanOrEqual(least - 1e-6);
  expect(refined.cost).toBeLessThanOrEqual(1.003 * least);
});

/** The least cost with these outings: every way of putting each job on a day, or leaving it. */
function leastOf({ jobs, outings, days }: PlanProblem, chosen: readonly number[]): number {
  const base = chosen.reduce((sum, choice) => sum + (choice < 0 ? 0 : (outings[choice]?.driving ?? 0) + 0.02 * (outings[choice]?.day ?? 0)), 0);
  let least = Number.POSITIVE_INFINITY;
  const put = (at: number, cost: number, rooms: readonly number[]): void => {
    const one = jobs[at];
    if (one === undefined) {
      least = Math.min(least, cost);
      return;
    }
    put(at + 1, cost + one.left, rooms);
    for (let day = one.earliest; day < days; day += 1) {
      const yards = outings[chosen[day] ?? -1]?.yards ?? [];
      if (!yards.includes(one.yard) || (rooms[day] ?? 0) < one.each) continue;
      put(at + 1, cost + (day <= one.latest ? 0 : 150 + 15 * (day - one.latest)), rooms.with(day, (rooms[day] ?? 0) - one.each));
    }
  };
  put(0, base, chosen.map((choice) => outings[choice]?.room ?? 0));
  return least;
}

test('what is overdue goes on the first day that is worth its way, and far off waits for the next trip there', () => {
  const days = 10;
  const near: OutingChoice[] = Array.from({ length: days }, (_, day) => ({ day, yards: [0], crew: [0], driving: 24, room: 100 }));
  const far: OutingChoice[] = Array.from({ length: days }, (_, day) => ({ day, yards: [1], crew: [0], driving: 110, room: 100 }));
  const overdue = (yard: number): Job => ({ ...job(yard, 0, 8, 10, days), waits: 15, left: 800 });
  const planned = { ...job(1, 5, 6, 10, days) };
  // The near yard: 24 min now against 15 for each day of waiting. The far one is gone to on day 5 anyway, and waiting for it (75) costs less than the way (110).
  const { jobs } = searchPlan({ days, yards: 2, jobs: [overdue(0), overdue(1), planned], rounds: [], outings: [...near, ...far.filter(({ day }) => day > 0), ...near.map((one) => ({ ...one, yards: [0, 1], driving: 130 })).filter(({ day }) => day > 0)], held: [], before: null }, 30);
  expect([...(jobs[0] ?? [])]).toEqual([[0, 1]]);
  expect([...(jobs[1] ?? [])]).toEqual([[5, 1]]);
  expect([...(jobs[2] ?? [])]).toEqual([[5, 1]]);
});

test('what is due soonest is put off where that leaves room for what has no other day', () => {
  const outings: OutingChoice[] = [{ day: 0, yards: [0], crew: [0], driving: 20, room: 60 }, { day: 3, yards: [0], crew: [0], driving: 20, room: 30 }];
  const problem: PlanProblem = { days: 4, yards: 1, jobs: [job(0, 0, 3, 60, 4), job(0, 0, 2, 30, 4)], rounds: [], outings, held: outings.map(({ day }) => ({ day, yard: 0 })), before: null };
  const { jobs } = searchPlan(problem, 0);
  expect(jobs.map((done) => [...done.keys()])).toEqual([[0], [3]]);
});

test('work stays on the visit on which it was, where nothing speaks against it', async () => {
  const solver = await highsSolver();
  const outings: OutingChoice[] = [1, 4].map((day) => ({ day, yards: [0], crew: [0], driving: 20, room: 60 }));
  const visits = outings.map(({ day }) => ({ day, yard: 0 }));
  const fixed = { ...job(0, 0, 1, 20, 6), only: new Set([1]) };
  const daysOf = (was: ReadonlySet<number> | null, each = 30) => {
    const problem: PlanProblem = { days: 6, yards: 1, jobs: [fixed, { ...job(0, 4, 5, 20, 6), only: new Set([4]) }, { ...job(0, 0, 5, each, 6), was }], rounds: [], outings, held: visits, before: visits };
    const { milp, toDraft } = planModel(problem);
    return [searchPlan(problem, 5), toDraft(solver.solve(milp).values)].map(({ jobs }) => [...(jobs[2]?.keys() ?? [])]);
  };
  expect(daysOf(new Set([4]))).toEqual([[4], [4]]);
  expect(daysOf(new Set([1]))).toEqual([[1], [1]]);
  // What has no room any more where it was is done elsewhere, or rather left for later than not done at all.
  expect(daysOf(new Set([3]), 40).every((days) => days.length === 1)).toBe(true);
});

test('a visit of the plan before on which nothing is left to do is neither made nor counted as kept', async () => {
  const solver = await highsSolver();
  const outings: OutingChoice[] = [0, 1, 2].map((day) => ({ day, yards: [0], crew: [0], driving: 10, room: 60 }));
  const problem: PlanProblem = { days: 3, yards: 1, jobs: [job(0, 0, 1, 20, 3)], rounds: [], outings, held: [], before: outings.map(({ day }) => ({ day, yard: 0 })) };
  const { milp, base, toDraft } = planModel(problem);
  const answer = solver.solve(milp);
  const best = toDraft(answer.values);
  // One way of 10 minutes, and two visits that are no longer there: going for nothing would have been 35 minutes cheaper each.
  for (const { outing, cost } of [searchPlan(problem, 5), best]) {
    expect(outing).toEqual([0, -1, -1]);
    expect(cost).toBeCloseTo(10 + 2 * 45, 5);
  }
  expect(base + answer.objective).toBeCloseTo(best.cost, 5);
});
