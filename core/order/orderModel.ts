import { binomialCdf } from '#core/stats/binomialCdf.ts';
import { MilpBuilder, type MilpModel, type Term } from './milp.ts';
import { placeColonies, yardLimits } from './placeColonies.ts';
import { hivesWanted, splitsFrom, splitsOfYards, type OrderProblem, type Ware } from './orderProblem.ts';
import { edgeOf, splitCost, type SplitBranch } from './splitBranch.ts';
import { fewestBought, splitColumn, type SplitColumn, type SplitTerms } from './springTable.ts';

/** What is decided: wares by key, packages that go on drawn comb, splits and moves by yard. */
export interface OrderChoice {
  readonly wares: ReadonlyMap<string, { readonly quantity: number; readonly each: number }>;
  readonly onComb: number;
  readonly bought: number;
  readonly splits: number;
  readonly splitsByYard: readonly number[];
  readonly placedByYard: readonly number[];
  readonly outByYard: readonly number[];
  readonly inByYard: readonly number[];
}

export interface OrderModel {
  readonly model: MilpModel;
  readonly read: (values: readonly number[]) => OrderChoice;
  /** The branch that was picked, and what the model reckons for it, in minor units; too little where an edge is lacking. */
  readonly picked: (values: readonly number[]) => { readonly branch: SplitBranch; readonly cost: number };
}

/**
 * The order as a whole-number programme.
 *
 * A spring matters only through the number of survivors, so the drawn springs are gathered by that number; for each
 * number of splits s a table then says how many colonies b(s) must be bought at least (the chance constraint), and
 * what missing and surplus colonies and the splits made are expected to cost when b are bought. One variable picks a
 * branch (a number of splits and a range of b); bought colonies and that cost are split up by that choice (the
 * disjunctive form of Balas, from memory), so the relaxation is tight and no spring needs a variable of its own. The
 * cost is given from below by edges of its lower hull; `solveOrder` adds edges, and parts ranges where the hull lies
 * below the cost, until the answer costs what it does in the table. Yards limit where colonies of a middling spring
 * can stand; only their sums matter (see `yardLimits`), so equal yards do not make equal orders to be told apart.
 */
export function orderModel(problem: OrderProblem, branches: readonly SplitBranch[]): OrderModel {
  const build = new MilpBuilder();
  const inDollars = (cents: number) => cents / 100;
  const minute = problem.hourValue / 60;
  const mostBought = boughtAtMost(problem);
  const cash: Term[] = [];
  const hours: Term[] = [];
  const bought: Term[] = [];
  const packages: Term[] = [];
  const queens: Term[] = [];
  const quantities = new Map<string, { variable: number; each: number }[]>();

  /** A ware's quantity as variables, one for each price. */
  const ware = (one: Ware, mostUseful: number): Term[] => {
    const parts: Term[] = [];
    const picks: Term[] = [];
    const most = one.late ? 0 : Math.min(one.most ?? mostUseful, mostUseful);
    const found: { variable: number; each: number }[] = [];
    one.steps.forEach(({ from, each }, at) => {
      const low = Math.max(from, one.least);
      const high = Math.min(most, (one.steps[at + 1]?.from ?? Infinity) - 1);
      if (high < low) return;
      const quantity = build.whole(`${one.key} at ${each}`, 0, high, inDollars(each));
      const pick = build.whole(`${one.key} at ${each}?`, 0, 1);
      build.row('price step, at least', [[quantity, 1], [pick, -low]], 0, null);
      build.row('price step, at most', [[quantity, 1], [pick, -high]], null, 0);
      parts.push([quantity, 1]);
      picks.push([pick, 1]);
      cash.push([quantity, inDollars(each)]);
      found.push({ variable: quantity, each });
    });
    if (picks.length > 1) build.row('one price', picks, null, 1);
    quantities.set(one.key, found);
    return parts;
  };
  const work = (terms: readonly Term[], minutes: number, forgone: number) => {
    for (const [variable] of terms) {
      hours.push([variable, minutes / 60]);
      addCost(build, variable, inDollars(minutes * minute + forgone));
    }
  };

  const mostQueens = problem.requeen + Math.max(0, ...branches.map(({ column }) => column.splits)) + largestLot(problem);
  for (const bee of problem.bees) {
    const terms = ware(bee, bee.kind === 'queen' ? mostQueens : mostBought);
    if (bee.kind === 'queen') {
      queens.push(...terms);
      continue;
    }
    bought.push(...terms);
    if (bee.kind === 'package') packages.push(...terms);
    // A package counts as hived on foundation until a comb is found for it.
    const minutes = bee.kind === 'package' ? problem.minutes.package + problem.minutes.foundation : problem.minutes[bee.kind];
    work(terms, minutes, bee.kind === 'package' ? problem.honeyForgone.foundation : problem.honeyForgone[bee.kind]);
  }
  const perComb = problem.combsPerPackage;
  const onComb = build.whole('packages on drawn comb', 0, Math.max(0, Math.floor(problem.freeCombs / perComb + 1e-9)));
  build.row('drawn comb', [[onComb, 1], ...packages.map(([variable, factor]): Term => [variable, -factor])], null, 0);
  work([[onComb, 1]], -problem.minutes.foundation, problem.honeyForgone.package - problem.honeyForgone.foundation);

  const picks = branches.map(({ column }) => build.whole(`${column.splits} splits?`, 0, 1));
  build.row('one number of splits', picks.map((pick): Term => [pick, 1]), 1, 1);
  const chosen = branches.map((branch, at) => chooseBought(build, branch, picks[at] as number));
  build.row('bought', [...bought, ...chosen.map(({ bought: variable }): Term => [variable, -1])], 0, 0);
  const splits = branches.map(({ column }, at): Term => [picks[at] as number, column.splits]);
  // The hours must be there for all that are planned; what they cost is reckoned for those made.
  for (const [pick, number] of splits) hours.push([pick, (number * problem.minutes.split) / 60]);

  // Queens: for old colonies, and for splits that are not left to raise their own.
  build.row('queens', [...queens, ...(problem.splits.queens === 'bought' ? splits.map(([pick, number]): Term => [pick, -number]) : [])], problem.requeen, null);
  const { places, staying } = yardLimits(problem);
  build.row('splits can be made', splits, null, splitsOfYards(problem));
  if (places < Infinity) build.row('room', [...bought, ...splits], null, places);
  const moves = build.whole('splits moved', 0, null);
  build.row('moves', [[moves, 1], ...splits.map(([pick, number]): Term => [pick, -number])], -staying, null);
  work([[moves, 1]], problem.minutes.move, 0);

  for (const part of problem.parts) {
    if (part.packs.length === 0) continue;
    const most = Math.ceil((part.perColony * hivesWanted(problem)) / Math.max(1, Math.min(...part.packs.map(({ packSize }) => packSize))));
    const packs = part.packs.flatMap((pack) => ware(pack, Math.max(most, largestOf(pack))).map(([variable]): Term => [variable, pack.packSize]));
    build.row(`parts: ${part.item}`, packs, part.perColony * hivesWanted(problem) - part.have - 1e-6, null);
  }
  const requeenHours = (problem.requeen * problem.minutes.requeen) / 60;
  if (problem.hours !== null) build.row('hours', hours, null, problem.hours - requeenHours);
  if (problem.budget !== null) build.row('budget', cash, null, inDollars(problem.budget));

  const sum = (values: readonly number[], terms: readonly Term[]) => Math.round(terms.reduce((total, [variable, factor]) => total + factor * (values[variable] ?? 0), 0));
  const spread = (made: number, came: number) => {
    const { splits: splitsByYard, placed, out, into } = placeColonies(problem, made, came);
    return { splitsByYard, placedByYard: placed, outByYard: out, inByYard: into };
  };
  return {
    model: { variables: build.variables, rows: build.rows },
    picked: (values) => {
      const at = picks.findIndex((pick) => (values[pick] ?? 0) > 0.5);
      const branch = branches[at];
      if (branch === undefined) throw new Error('the solver picked no number of splits');
      return { branch, cost: (chosen[at]?.base ?? 0) + 100 * (values[chosen[at]?.over ?? -1] ?? 0) };
    },
    read: (values) => ({
      wares: new Map([...quantities].flatMap(([key, found]) => {
        const used = found.map(({ variable, each: price }) => ({ quantity: Math.round(values[variable] ?? 0), each: price })).find(({ quantity }) => quantity > 0);
        return used === undefined ? [] : [[key, used] as const];
      })),
      onComb: Math.round(values[onComb] ?? 0),
      bought: sum(values, bought),
      splits: sum(values, splits),
      ...spread(sum(values, splits), sum(values, bought)),
    }),
  };
}

/** More than the target, and more than any seller's least lot, is never worth buying. */
export function boughtAtMost(problem: OrderProblem): number {
  return problem.target + largestLot(problem);
}

function largestLot(problem: OrderProblem): number {
  return problem.bees.reduce((most, bee) => Math.max(most, largestOf(bee)), 0);
}

function largestOf(one: Ware): number {
  return Math.max(one.least, ...one.steps.map(({ from }) => from));
}

/**
 * A column for every number of splits worth thinking of. Past the first that needs no bought colony, another split is
 * worth at most its chance of filling a gap; where that is less than its work and honey however many are bought, it
 * and all further ones are left out.
 */
export function splitColumns(problem: OrderProblem, mostBought: number): SplitColumn[] {
  const { perSurvivor, take } = problem.splits;
  const terms = termsOf(problem.shares, take, perSurvivor);
  const most = splitsOfYards(problem);
  const columns: SplitColumn[] = [];
  for (let splits = 0; splits <= most; splits += 1) {
    const column = splitColumn(problem.shares, problem.target, splits, mostBought, terms);
    columns.push(column);
    if (fewestBought(column, problem.confidence) === 0 && isIdle(problem, splits, mostBought, terms.most)) break;
  }
  return columns;
}

const termsKnown = new WeakMap<readonly number[], Map<string, SplitTerms>>();

/** The target that can be reached is looked for over the same springs; what they say of splits does not change with it. */
function termsOf(shares: readonly number[], take: number, perSurvivor: number): SplitTerms {
  const own = termsKnown.get(shares) ?? new Map<string, SplitTerms>();
  termsKnown.set(shares, own);
  const key = `${take} ${perSurvivor}`;
  const terms = own.get(key) ?? { take, most: (survivors: number) => splitsFrom(survivors, perSurvivor), known: new Map(), takes: new Map() };
  own.set(key, terms);
  return terms;
}

/**
 * Whether one more split than that would nowhere be worth its cost. It is made in springs that want it and can give
 * it, and there fills a gap at most with the chance that the others leave one. More survivors leave less of a gap, so
 * what holds for one more holds for all further ones.
 */
function isIdle(problem: OrderProblem, splits: number, mostBought: number, most: (survivors: number) => number): boolean {
  const { shares, target, missing } = problem;
  const cdf = binomialCdf(splits, problem.splits.take);
  const cost = splitCost(problem);
  for (let bought = 0; bought <= mostBought; bought += 1) {
    let worth = 0;
    for (let survivors = Math.min(shares.length, target - bought) - 1; survivors >= 0 && most(survivors) > splits; survivors -= 1) {
      const gap = target - bought - survivors;
      worth += (shares[survivors] as number) * (missing * problem.splits.take * (cdf[Math.min(gap - 1, splits)] as number) - cost);
    }
    if (worth > 0) return false;
  }
  return true;
}

/** Bought colonies if this branch is picked, and what it then costs above the least it can. */
function chooseBought(build: MilpBuilder, branch: SplitBranch, pick: number): { readonly bought: number; readonly base: number; readonly over: number } {
  const { low, high, costs, corners } = branch;
  const base = Math.min(...corners.map((corner) => costs[corner] as number));
  const bought = build.real(`bought with ${branch.column.splits} splits`, 0, high);
  build.row('sure enough', [[bought, 1], [pick, -low]], 0, null);
  build.row('not beyond use', [[bought, 1], [pick, -high]], null, 0);
  const over = build.real(`expected with ${branch.column.splits} splits`, 0, null, 1);
  addCost(build, pick, base / 100);
  for (const at of branch.edges) {
    const { first, slope } = edgeOf(branch, at);
    build.row('expected', [[over, 1], [bought, -slope / 100], [pick, -((costs[first] as number) - base - slope * first) / 100]], 0, null);
  }
  if (corners.length === 1) build.row('expected', [[over, 1], [pick, -((costs[low] as number) - base) / 100]], 0, null);
  return { bought, base, over };
}

function addCost(build: MilpBuilder, variable: number, more: number): void {
  const before = build.variables[variable];
  if (before === undefined) throw new Error(`the model has no variable ${variable}`);
  build.variables[variable] = { ...before, cost: before.cost + more };
}
