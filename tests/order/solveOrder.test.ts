import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { highsSolver } from '#core/desk/highsSolver.ts';
import type { MilpSolver } from '#core/order/milp.ts';
import { placeColonies, yardLimits } from '#core/order/placeColonies.ts';
import type { BeeWare, OrderProblem } from '#core/order/orderProblem.ts';
import { bindingLimits, highestTarget, solveOrder } from '#core/order/solveOrder.ts';
import { betaBinomial } from '#core/stats/betaBinomial.ts';
import { betaPriorByMoments } from '#core/stats/betaPriorByMoments.ts';
import { cheapestByTrying } from './bruteForce.ts';
import { problem, ware } from './problems.ts';

const solver: MilpSolver = await highsSolver();
const winters = [[5, 40], [11, 44], [3, 38], [9, 46], [14, 50]].map(([lost, atRisk]) => ({ lost: lost as number, atRisk: atRisk as number }));

/** Survivors of 48 by the worked example of five winters (see the reference test of the forecast). */
function worked(): number[] {
  const prior = betaPriorByMoments(winters);
  if (prior === null) throw new Error('a prior was expected');
  return betaBinomial(48, prior.alpha, prior.beta).pmf.toReversed();
}

const steps = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), fc.integer({ min: 2, max: 4 }), fc.boolean()).map(([a, b, from, two]) => (two ? [{ from: 1, each: a * 1000 }, { from, each: b * 900 }] : [{ from: 1, each: a * 1000 }]));
const bee = fc.record({ kind: fc.constantFrom('package', 'nuc', 'colony', 'queen') as fc.Arbitrary<BeeWare['kind']>, steps, least: fc.integer({ min: 1, max: 3 }), most: fc.option(fc.integer({ min: 3, max: 6 })), late: fc.boolean().map((_) => false) });
const small: fc.Arbitrary<OrderProblem> = fc.record({
  living: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.option(fc.integer({ min: 1, max: 9 }))), { minLength: 1, maxLength: 2 }),
  target: fc.integer({ min: 0, max: 6 }), confidence: fc.constantFrom(0.5, 0.7, 0.8, 0.9, 0.95), a: fc.double({ min: 0.5, max: 6, noNaN: true }), b: fc.double({ min: 0.5, max: 12, noNaN: true }),
  take: fc.constantFrom(0.5, 0.8, 1), perSurvivor: fc.constantFrom(0, 0.5, 1), queens: fc.constantFrom('bought' as const, 'raised' as const),
  bees: fc.tuple(bee.map((one) => ({ ...one, kind: 'package' as const })), fc.array(bee, { maxLength: 2 })).map(([first, more]) => [first, ...more]), requeen: fc.constantFrom(0, 0, 0, 2), freeCombs: fc.integer({ min: 0, max: 24 }), hours: fc.option(fc.integer({ min: 1, max: 20 })), budget: fc.option(fc.integer({ min: 1, max: 90 })),
  missing: fc.integer({ min: 1, max: 30 }), surplus: fc.integer({ min: 1, max: 10 }), packs: fc.boolean(), honey: fc.integer({ min: 0, max: 8 }),
}).map(({ living, target, confidence, a, b, take, perSurvivor, queens, bees, requeen, freeCombs, hours, budget, missing, surplus, packs, honey }) => problem({
  target, confidence, shares: betaBinomial(living.reduce((sum, [alive]) => sum + alive, 0), a, b).pmf, splits: { take, perSurvivor, queens },
  yards: living.map(([alive, room]) => ({ survivors: alive, room })), bees: bees.map((one, at) => ({ ...ware(one.kind, 0), ...one, key: `ware ${at}` })), requeen, freeCombs,
  minutes: { package: 50, foundation: 20, nuc: 35, colony: 25, split: 45, requeen: 30, move: 40 }, hourValue: 1800, hours, budget: budget === null ? null : budget * 1000,
  missing: missing * 1000, surplus: surplus * 1000, honeyForgone: { package: 500 * honey, foundation: 1000 * honey, nuc: 400 * honey, colony: 0, split: 300 * honey },
  parts: packs ? [{ item: 'deep box', perColony: 2.2, have: 5, packs: [{ key: 'fives', packSize: 5, steps: [{ from: 1, each: 2500 }], least: 1, most: null, late: false }, { key: 'singles', packSize: 1, steps: [{ from: 1, each: 700 }, { from: 3, each: 600 }], least: 1, most: null, late: false }] }] : [],
}));

/** Springs that leap from one number of survivors to another, so that splits are wanted in some and in others not at all. */
const leaping: fc.Arbitrary<OrderProblem> = fc.tuple(small, fc.array(fc.constantFrom<number>(0, 0, 0, 1, 3), { minLength: 7, maxLength: 7 })).map(([one, weights]) => {
  const some = weights.slice(0, one.shares.length);
  const sum = some.reduce((total, weight) => total + weight, 0);
  return { ...one, shares: sum === 0 ? one.shares : one.shares.map((_, at) => (some[at] ?? 0) / sum) };
});

describe('the cheapest order', () => {
  test('is the one found by trying everything where springs leap from few survivors to many', () => {
    fc.assert(fc.property(leaping, (one) => {
      const [tried, solved] = [cheapestByTrying(one, 10), solveOrder(one, solver)];
      expect(solved === null).toBe(tried === null);
      if (tried !== null && solved !== null) expect(Math.abs(solved.total - tried)).toBeLessThan(0.1);
    }), { numRuns: 200 });
  });

  test('where a bought colony more saves all splits at once, the cost is not convex, and ranges are parted until it is found', () => {
    // Four or none survive. With two bought no split is wanted at all, but only one can be had.
    const one = problem({
      target: 6, confidence: 0.5, shares: [0.1, 0, 0, 0, 0.9], splits: { take: 0.5, perSurvivor: 1, queens: 'raised' }, yards: [{ survivors: 4, room: null }], bees: [ware('package', 100, { most: 1 })],
      minutes: { package: 0, foundation: 0, nuc: 0, colony: 0, split: 60, requeen: 0, move: 0 }, hourValue: 6000, missing: 1000, surplus: 1,
    });
    let branches = 0;
    const watched: MilpSolver = { name: solver.name, solve: (model) => {
      branches = model.variables.filter(({ name }) => name.endsWith(' splits?')).length;
      return solver.solve(model);
    } };
    const found = solveOrder(one, watched);
    expect(found?.choice).toMatchObject({ bought: 1, splits: 2 });
    expect(found?.total).toBeCloseTo(cheapestByTrying(one, 10) ?? Number.NaN, 6);
    // Two splits are made in nine springs of ten.
    expect(found?.expectedMade).toBeCloseTo(1.8, 9);
    // The numbers of splits that keep the confidence are 0 to 4; one of them stands there with more than one range.
    expect(branches).toBeGreaterThan(5);
  });

  test('is the one found by trying everything, on small operations', () => {
    let possible = 0;
    fc.assert(fc.property(small, (one) => {
      const tried = cheapestByTrying(one, 10);
      const solved = solveOrder(one, solver);
      if (tried === null || solved === null) {
        expect(solved === null).toBe(tried === null);
        return;
      }
      possible += 1;
      expect(solved.solver.status).toBe('optimal');
      // Money in cents: to a tenth of a cent.
      expect(Math.abs(solved.total - tried)).toBeLessThan(0.1);
    }), { numRuns: 300 });
    // Enough of them can be answered at all for the comparison to mean something.
    expect(possible).toBeGreaterThan(120);
  });

  test('with nothing but the confidence to keep, it buys what the quantile of the losses says: 11 at 90 in 100', () => {
    const found = solveOrder(problem({ target: 45, confidence: 0.9, shares: worked(), yards: [{ survivors: 39, room: null }], bees: [ware('package', 10_000)] }), solver);
    expect(found?.choice.bought).toBe(11);
    expect(found?.chanceShort).toBeCloseTo(0.0977, 4);
  });

  test('with free bees and a missing colony three times as dear as one too many, it is the newsvendor’s 9', () => {
    const found = solveOrder(problem({ target: 45, confidence: 0, shares: worked(), yards: [{ survivors: 39, room: null }], bees: [ware('nuc', 0)], missing: 300, surplus: 100 }), solver);
    expect(found?.choice.bought).toBe(9);
  });

  test('by splits alone, four in five taking, it makes 15', () => {
    const found = solveOrder(problem({ target: 45, confidence: 0.9, shares: worked(), yards: [{ survivors: 39, room: null }], splits: { take: 0.8, perSurvivor: 1, queens: 'raised' } }), solver);
    expect(found?.choice).toMatchObject({ splits: 15, bought: 0 });
  });

  test('hives are fitted out for the target, or for a good winter if that is more, never for both at once', () => {
    const boxes = (hives: { target: number; hivesStanding: number; onOrder?: number }) => solveOrder(problem({
      shares: [1], yards: [{ survivors: 0, room: null }], bees: [ware('package', 9100)], ...hives,
      parts: [{ item: 'deep box', perColony: 2, have: 0, packs: [{ key: 'singly', packSize: 1, steps: [{ from: 1, each: 100 }], least: 1, most: null, late: false }] }],
    }), solver)?.choice.wares.get('singly')?.quantity;
    expect(boxes({ target: 10, hivesStanding: 8 })).toBe(20);
    expect(boxes({ target: 10, hivesStanding: 14 })).toBe(28);
    // Three more are on their way beside the ten, and want a hive each.
    expect(boxes({ target: 10, hivesStanding: 8, onOrder: 3 })).toBe(26);
  });

  test('where no limit alone stands in the way, those that do so together are named', () => {
    const poor = problem({ target: 9, shares: [1], yards: [{ survivors: 0, room: 4 }], hivesStanding: 0, bees: [ware('package', 100)], budget: 500, hours: 100, minutes: { package: 60, foundation: 0, nuc: 0, colony: 0, split: 0, requeen: 0, move: 0 } });
    expect(solveOrder(poor, solver)).toBeNull();
    const binding = bindingLimits(poor, solver);
    expect(binding.map(({ limit, together }) => [limit, together])).toEqual([['room', true], ['budget', true]]);
    expect(binding[0]?.order.choice.bought).toBe(9);
    expect(bindingLimits({ ...poor, budget: null }, solver).map(({ limit, together }) => [limit, together])).toEqual([['room', false]]);
  });

  test('a lower price for more is taken where it makes the whole cheaper', () => {
    const cheaperByTen = ware('package', 0, { steps: [{ from: 1, each: 10_000 }, { from: 10, each: 8000 }] });
    const nine = problem({ target: 9, shares: [1], yards: [{ survivors: 0, room: null }], hivesStanding: 0, bees: [cheaperByTen] });
    expect(solveOrder(nine, solver)).toMatchObject({ cash: 80_000, choice: { bought: 10 } });
    expect(solveOrder({ ...nine, target: 7 }, solver)).toMatchObject({ cash: 70_000, choice: { bought: 7 } });
  });
});

describe('places', () => {
  const split = { take: 1, perSurvivor: 1, queens: 'raised' as const };

  test('a split of a full yard moves to one without a limit, and the move is paid for', () => {
    const one = problem({ target: 5, confidence: 0.9, shares: [0, 0, 0, 0, 1], splits: split, yards: [{ survivors: 3, room: 3 }, { survivors: 1, room: null }], minutes: { package: 0, foundation: 0, nuc: 0, colony: 0, split: 10, requeen: 0, move: 60 }, hourValue: 600 });
    expect(solveOrder(one, solver)?.choice).toMatchObject({ splits: 1, splitsByYard: [0, 1], inByYard: [0, 0] });
    const two = solveOrder({ ...one, target: 6 }, solver);
    expect(two?.choice).toMatchObject({ splits: 2, splitsByYard: [1, 1], outByYard: [1, 0], inByYard: [0, 1] });
    expect(two?.costs.work).toBeCloseTo(2 * 100 + 600, 6);
    expect(two?.total).toBeCloseTo(cheapestByTrying({ ...one, target: 6 }, 10) ?? Number.NaN, 6);
  });

  test('every split and bought colony stands somewhere, nowhere more than there is room, with the fewest moves', () => {
    const yard = fc.record({ survivors: fc.nat(6), room: fc.option(fc.nat(9)) });
    fc.assert(fc.property(fc.array(yard, { minLength: 1, maxLength: 5 }), fc.nat(14), fc.nat(14), (yards, splits, bought) => {
      const one = problem({ splits: split, yards });
      const { places, staying } = yardLimits(one);
      fc.pre(splits <= yards.reduce((sum, { survivors }) => sum + survivors, 0) && splits + bought <= places);
      const placed = placeColonies(one, splits, bought);
      const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0);
      expect([sum(placed.splits), sum(placed.placed), sum(placed.out), sum(placed.into)]).toEqual([splits, bought, Math.max(0, splits - staying), Math.max(0, splits - staying)]);
      yards.forEach(({ survivors, room }, y) => {
        const standing = survivors + (placed.splits[y] ?? 0) - (placed.out[y] ?? 0) + (placed.into[y] ?? 0) + (placed.placed[y] ?? 0);
        expect(standing).toBeLessThanOrEqual(room === null ? Infinity : Math.max(room, survivors));
        expect(placed.splits[y]).toBeLessThanOrEqual(survivors);
      });
    }), { numRuns: 200 });
  });
});

describe('an order that cannot be', () => {
  const short = problem({ target: 8, shares: [0, 0, 1], yards: [{ survivors: 2, room: 5 }], bees: [ware('package', 10_000)], budget: 100_000 });

  test('names the limit that alone stands in the way, and what can be reached within it', () => {
    expect(solveOrder(short, solver)).toBeNull();
    expect(bindingLimits(short, solver).map(({ limit }) => limit)).toEqual(['room']);
    expect(highestTarget(short, solver)?.target).toBe(5);
    const roomy = { ...short, yards: [{ survivors: 2, room: 9 }] };
    expect(bindingLimits({ ...roomy, budget: 59_900 }, solver).map(({ limit, order }) => [limit, order.cash])).toEqual([['budget', 60_000]]);
    expect(bindingLimits({ ...roomy, bees: [ware('package', 10_000, { late: true })] }, solver).map(({ limit }) => limit)).toEqual(['deadlines']);
    expect(bindingLimits({ ...roomy, bees: [ware('package', 10_000, { most: 4 })] }, solver).map(({ limit }) => limit)).toEqual(['supply']);
  });

  test('with two limits in the way neither is said to be enough alone, and the reachable target still is named', () => {
    const two = { ...short, budget: 30_000 };
    expect(bindingLimits(two, solver).map(({ limit, together }) => [limit, together])).toEqual([['room', true], ['budget', true]]);
    expect(highestTarget(two, solver)?.target).toBe(5);
  });
});
