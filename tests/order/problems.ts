import { day } from '#shared/days.ts';
import type { BeeWare, OrderProblem } from '#core/order/orderProblem.ts';

/** A seller's ware with one price unless more are given; money in cents. */
export const ware = (kind: BeeWare['kind'], each: number, more: Partial<BeeWare> = {}): BeeWare => ({
  key: `${kind} ${each}`, kind, steps: [{ from: 1, each }], least: 1, most: null, late: false, orderBy: day('2027-01-31'), ...more,
});

/** A question with nothing dear but what the test puts in. */
export function problem(more: Partial<OrderProblem>): OrderProblem {
  return {
    target: 5, onOrder: 0, confidence: 0.8, shares: [0.1, 0.2, 0.4, 0.3], splits: { take: 0.8, perSurvivor: 0, queens: 'raised' }, yards: [{ survivors: 2, room: null }],
    bees: [], parts: [], hivesStanding: 3, requeen: 0, freeCombs: 0, combsPerPackage: 8,
    minutes: { package: 0, foundation: 0, nuc: 0, colony: 0, split: 0, requeen: 0, move: 0 }, hourValue: 0,
    honeyForgone: { package: 0, foundation: 0, nuc: 0, colony: 0, split: 0 }, missing: 1, surplus: 1, hours: null, budget: null, ...more,
  };
}
