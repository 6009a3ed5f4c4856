import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { MilpModel } from '#core/order/milp.ts';
import { loadHighs } from '#core/desk/highsModel.ts';
import { tightenPlan } from '#core/desk/tightenPlan.ts';
import { dayCuts } from '#core/work/plan/dayCuts.ts';
import { OutingFiller } from '#core/work/plan/outingFiller.ts';
import { planModel } from '#core/work/plan/planModel.ts';
import type { Job, OutingChoice, PlanProblem, Round } from '#core/work/plan/planProblem.ts';

const days = 12;
// Every third day somebody comes along.
const outings: readonly OutingChoice[] = Array.from({ length: days }, (_, day) => [[0], [1], [0, 1]].map((yards): OutingChoice => ({ day, yards, crew: day % 3 === 0 ? [0, 1] : [0], driving: 20 * yards.length, room: day % 3 === 0 ? 125 : 90 }))).flat();
const day = fc.nat(days - 1);
const was = fc.option(fc.array(day, { maxLength: 4 }).map((on): ReadonlySet<number> => new Set(on)));
const each = fc.constantFrom(25, 25, 25, 12.5, 100 / 3, 0.1);
const job: fc.Arbitrary<Job> = fc.tuple(fc.nat(1), fc.integer({ min: 1, max: 3 }), day, fc.nat(4), fc.boolean(), was, each, fc.constantFrom(1, 1, 2)).map(([yard, units, earliest, length, overdue, before, minutes, people]) => ({
  yard, units, each: minutes, people, earliest, latest: earliest + length, last: days - 1, weight: overdue ? 1 : 5 / 3, waits: overdue ? 15 : 0, left: 450, after: null, only: null, was: before, never: new Set(),
}));
const round: fc.Arbitrary<Round> = fc.tuple(fc.nat(1), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 2, max: 6 }), fc.nat(3), fc.nat(6), fc.array(day, { maxLength: 3 }), fc.array(day, { maxLength: 3 }), was).map(([yard, units, every, overdue, next, asked, never, before]) => {
  // From the middle on rounds come twice as often: days before it are to be seen again by the same day.
  const again = outings.filter(({ yards }) => yards[0] === 0 && yards.length === 1).map((one) => Math.min(one.day + every, Math.max(one.day, 6) + Math.ceil(every / 2)));
  const first = Math.min(next, again[0] ?? 0);
  const late = Math.min(units, overdue);
  return { yard, units, each: outings.map(() => 20), again, due: Array.from({ length: units }, () => (late > 0 ? (again[0] ?? 0) : first)), next: late > 0 ? -1 : first, overdue: late, asked: new Set(asked), was: before, never: new Set(never) };
});
const setOf = (yards: readonly number[]) => (yards.includes(0) ? (yards.includes(1) ? 2 : 0) : yards.includes(1) ? 1 : -1);
const visit = fc.record({ day, yard: fc.nat(1) });
/** Some follow the one before them; both have one unit then. */
const jobs = fc.array(fc.tuple(job, fc.option(fc.record({ from: fc.nat(2), by: fc.integer({ min: 2, max: 5 }) }))), { maxLength: 4 }).map((all) => all.map(([own, after], at): Job => ({
  ...own, units: (at > 0 && after !== null) || (all[at + 1]?.[1] ?? null) !== null ? 1 : own.units, after: at === 0 || after === null ? null : { job: at - 1, ...after },
})));
const drawn = fc.record({ jobs, rounds: fc.array(round, { maxLength: 2 }), before: fc.option(fc.array(visit, { maxLength: 10 })), chosen: fc.array(fc.integer({ min: -1, max: 2 }), { minLength: days, maxLength: days }) })
  .map(({ jobs, rounds, before, chosen }) => ({
    problem: { days, yards: 2, jobs, rounds, outings, held: [], before } satisfies PlanProblem,
    // Some days are as they were planned before.
    chosen: chosen.map((choice, on) => (choice === 2 ? setOf((before ?? []).flatMap((one) => (one.day === on ? [one.yard] : []))) : choice)).map((choice, on) => (choice < 0 ? -1 : 3 * on + choice)),
  }));

test('what another outing would cost is what it costs once it is there, or more than was asked for', () => {
  fc.assert(fc.property(drawn, day, fc.integer({ min: -1, max: 2 }), fc.double({ min: 0.8, max: 1, noNaN: true }), ({ problem, chosen }, on, drawnChoice, share) => {
    const choice = drawnChoice < 0 ? -1 : 3 * on + drawnChoice;
    const filler = new OutingFiller(problem);
    filler.setAll(chosen);
    const most = filler.cost * share;
    const told = filler.costWith(on, choice, most);
    filler.set(on, choice);
    if (told < most) expect(told).toBeCloseTo(filler.cost, 6);
    else expect(filler.cost).toBeGreaterThanOrEqual(most - 1e-6);
  }), { numRuns: 1000 });
});

test('whatever the outings, the work that is told of them is the work that is counted, and the programme counts the same', () => {
  fc.assert(fc.property(drawn, ({ problem, chosen }) => {
    const filler = new OutingFiller(problem);
    filler.setAll(chosen);
    for (let on = 0; on < days; on += 1) filler.tryPuttingOff(on);
    const draft = filler.draft();
    const { milp, base, fromDraft } = planModel(problem);
    const values = fromDraft(draft);
    expect(base + milp.variables.reduce((sum, { cost }, at) => sum + cost * (values[at] ?? 0), 0)).toBeCloseTo(draft.cost, 5);
    expect(brokenRows(milp.rows, values)).toEqual([]);
  }), { numRuns: 300 });
});

test('the rows that are cut, at the relaxed best and anywhere, take no plan away and bound it from below', async () => {
  const highs = await loadHighs();
  let cut = 0;
  fc.assert(fc.property(drawn, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }), ({ problem, chosen }, shares) => {
    const filler = new OutingFiller(problem);
    filler.setAll(chosen);
    for (let on = 0; on < days; on += 1) filler.tryPuttingOff(on);
    const draft = filler.draft();
    const model = planModel(problem);
    const bounds: number[] = [];
    const tightened = tightenPlan(highs, model, (bound) => bounds.push(bound));
    // Shares that nobody worked out break more.
    const cuts = [...tightened.rows.slice(model.milp.rows.length), ...dayCuts(model.dayWork, model.milp.variables.map(({ high }, at) => (high ?? 1) * (shares[at % shares.length] ?? 0)))];
    cut += cuts.length;
    expect(brokenRows(cuts, model.fromDraft(draft))).toEqual([]);
    expect(Math.max(...bounds)).toBeLessThanOrEqual(draft.cost + 1e-5);
  }), { numRuns: 100 });
  expect(cut).toBeGreaterThan(60);
});

function brokenRows(rows: MilpModel['rows'], values: ArrayLike<number>): string[] {
  return rows.filter(({ terms, low, high }) => {
    const sum = terms.reduce((all, [variable, factor]) => all + factor * (values[variable] ?? 0), 0);
    return Number.isNaN(sum) || sum < (low ?? sum) - 1e-6 || sum > (high ?? sum) + 1e-6;
  }).map(({ name }) => name);
}
