import type { MilpSolver } from './milp.ts';
import { boughtAtMost, orderModel, splitColumns, type OrderChoice } from './orderModel.ts';
import { lifted, limits, type Limit, type OrderProblem } from './orderProblem.ts';
import { branchOf, hullCost, isKnown, knowing, partedAt } from './splitBranch.ts';
import type { SplitColumn } from './springTable.ts';

/** What an order costs, part by part, in minor units; `missing` and `surplus` are expectations. */
export interface OrderCosts {
  readonly bees: number;
  readonly queens: number;
  readonly equipment: number;
  readonly work: number;
  readonly honey: number;
  readonly missing: number;
  readonly surplus: number;
}

export interface SolvedOrder {
  readonly choice: OrderChoice;
  readonly costs: OrderCosts;
  readonly total: number;
  /** What is paid to sellers. */
  readonly cash: number;
  /** If every split planned is made. */
  readonly hours: number;
  readonly chanceShort: number;
  readonly expectedMissing: number;
  readonly expectedSurplus: number;
  /** Splits that are made on average: none where enough live without them. */
  readonly expectedMade: number;
  readonly solver: { readonly name: string; readonly status: 'optimal'; readonly gap: number; readonly variables: number; readonly rows: number };
}

/** What is expected may be reckoned this much too low, in minor units, before an edge is added. */
const NEAR = 1e-3;
/** Numbers of splits about the one picked that learn the same edge: they would only be tried next for want of it. */
const REACH = 3;

/**
 * The cheapest order, or null when no order keeps all limits. The model never reckons more than an order costs, so its
 * best is a lower bound; edges are added, and ranges parted, where it is too low until the answer costs what the model
 * says, which then is the optimum (Kelley's cutting planes, and branching where the cost is not convex; from memory).
 * Throws when the solver does not prove its answer.
 */
export function solveOrder(problem: OrderProblem, solver: MilpSolver): SolvedOrder | null {
  const mostBought = boughtAtMost(problem);
  const columns = splitColumns(problem, mostBought);
  let branches = columns.flatMap((column) => branchOf(problem, column, mostBought) ?? []);
  while (branches.length > 0) {
    const { model, read, picked } = orderModel(problem, branches);
    const answer = solver.solve(model);
    if (answer.status === 'infeasible') return null;
    if (answer.status !== 'optimal') throw new Error(`the solver did not finish: ${answer.word}`);
    const choice = read(answer.values);
    const { branch, cost } = picked(answer.values);
    const real = branch.costs[choice.bought] as number;
    const parted = hullCost(branch, choice.bought) < real - NEAR;
    if (real - cost <= NEAR || (isKnown(branch, choice.bought) && !parted)) {
      return { ...priced(problem, choice, columns), solver: { name: solver.name, status: 'optimal', gap: answer.gap, variables: model.variables.length, rows: model.rows.length } };
    }
    branches = branches.flatMap((one) => {
      if (one === branch && isKnown(branch, choice.bought)) return partedAt(one, choice.bought);
      const near = Math.abs(one.column.splits - branch.column.splits) <= REACH && choice.bought >= one.low && choice.bought <= one.high;
      return [near ? knowing(one, choice.bought) : one];
    });
  }
  return null;
}

/** Whether any order keeps all limits: the same model without costs, which is done with the first order found. */
export function isPossible(problem: OrderProblem, solver: MilpSolver): boolean {
  const mostBought = boughtAtMost(problem);
  const branches = splitColumns(problem, mostBought).flatMap((column) => branchOf(problem, column, mostBought) ?? []);
  if (branches.length === 0) return false;
  const { model } = orderModel(problem, branches.map((branch) => ({ ...branch, edges: new Set() })));
  const { status, word } = solver.solve({ ...model, variables: model.variables.map((variable) => ({ ...variable, cost: 0 })) });
  if (status === 'other') throw new Error(`the solver did not finish: ${word}`);
  return status === 'optimal';
}

/** Reckons a choice by itself, from prices and tables, not from the solver's own sums. */
export function priced(problem: OrderProblem, choice: OrderChoice, columns: readonly SplitColumn[]): Omit<SolvedOrder, 'solver'> {
  const column = columns.find(({ splits }) => splits === choice.splits);
  if (column === undefined) throw new Error(`no table for ${choice.splits} splits`);
  const count = (kind: string) => problem.bees.filter((bee) => bee.kind === kind).reduce((sum, { key }) => sum + (choice.wares.get(key)?.quantity ?? 0), 0);
  const paid = (keys: readonly string[]) => keys.reduce((sum, key) => {
    const ware = choice.wares.get(key);
    return sum + (ware === undefined ? 0 : ware.quantity * ware.each);
  }, 0);
  const [packages, nucs, colonies] = [count('package'), count('nuc'), count('colony')];
  const moves = choice.inByYard.reduce((sum, number) => sum + number, 0);
  const { minutes, honeyForgone: honey } = problem;
  const onFoundation = packages - choice.onComb;
  const made = column.expectedMade[choice.bought] as number;
  const spent = packages * minutes.package + onFoundation * minutes.foundation + nucs * minutes.nuc + colonies * minutes.colony + moves * minutes.move;
  const costs = {
    bees: paid(problem.bees.filter(({ kind }) => kind !== 'queen').map(({ key }) => key)),
    queens: paid(problem.bees.filter(({ kind }) => kind === 'queen').map(({ key }) => key)),
    equipment: paid(problem.parts.flatMap(({ packs }) => packs.map(({ key }) => key))),
    work: ((spent + made * minutes.split) * problem.hourValue) / 60,
    honey: choice.onComb * honey.package + onFoundation * honey.foundation + nucs * honey.nuc + colonies * honey.colony + made * honey.split,
    missing: problem.missing * (column.expectedShort[choice.bought] as number),
    surplus: problem.surplus * (column.expectedLeft[choice.bought] as number),
  };
  return {
    choice, costs,
    total: Object.values(costs).reduce((sum, cost) => sum + cost, 0),
    cash: costs.bees + costs.queens + costs.equipment,
    hours: (spent + choice.splits * minutes.split + problem.requeen * minutes.requeen) / 60,
    chanceShort: column.probabilityShort[choice.bought] as number,
    expectedMissing: column.expectedShort[choice.bought] as number,
    expectedSurplus: column.expectedLeft[choice.bought] as number,
    expectedMade: made,
  };
}

/** A limit that stands in the way, and the order that is possible without it. */
export interface BindingLimit {
  readonly limit: Limit;
  readonly order: SolvedOrder;
  /** True where only lifting it and the others named, all of them, makes the order possible; false where it alone does. */
  readonly together: boolean;
}

/**
 * Lifts one limit at a time and names those whose lifting alone helps. Where none does, all are lifted and put back
 * one by one as long as there is still an order: what cannot be put back stands in the way together.
 */
export function bindingLimits(problem: OrderProblem, solver: MilpSolver): BindingLimit[] {
  const standing = limits.filter((limit) => applies(problem, limit));
  const alone = standing.flatMap((limit) => {
    const without = lifted(problem, limit);
    const order = isPossible(without, solver) ? solveOrder(without, solver) : null;
    return order === null ? [] : [{ limit, order, together: false }];
  });
  if (alone.length > 0) return alone;
  const without = (away: readonly Limit[]) => away.reduce(lifted, problem);
  let away = standing;
  if (!isPossible(without(away), solver)) return [];
  for (const limit of standing) {
    const fewer = away.filter((one) => one !== limit);
    if (isPossible(without(fewer), solver)) away = fewer;
  }
  const order = solveOrder(without(away), solver);
  return order === null ? [] : away.map((limit) => ({ limit, order, together: true }));
}

function applies(problem: OrderProblem, limit: Limit): boolean {
  switch (limit) {
    case 'room':
      return problem.yards.some(({ room }) => room !== null);
    case 'budget':
      return problem.budget !== null;
    case 'hours':
      return problem.hours !== null;
    case 'deadlines':
      return problem.bees.some(({ late }) => late) || problem.parts.some(({ packs }) => packs.some(({ late }) => late));
    case 'supply':
      return problem.bees.some(({ most, least }) => most !== null || least > 1);
    case 'splits':
      return problem.splits.perSurvivor > 0;
    case 'queens':
      return problem.requeen > 0 || problem.splits.queens === 'bought';
  }
}

export interface ReachableTarget {
  readonly target: number;
  readonly order: SolvedOrder;
}

/** The highest target up to the one asked for that can be reached within all limits; null if not even none can. */
export function highestTarget(problem: OrderProblem, solver: MilpSolver): ReachableTarget | null {
  let low = 0;
  let high = problem.target;
  let reached: number | null = null;
  while (low <= high) {
    const target = (low + high) >>> 1;
    if (isPossible({ ...problem, target }, solver)) {
      reached = target;
      low = target + 1;
    } else high = target - 1;
  }
  const order = reached === null ? null : solveOrder({ ...problem, target: reached }, solver);
  return reached === null || order === null ? null : { target: reached, order };
}
