import type { OrderProblem } from './orderProblem.ts';
import { fewestBought, type SplitColumn } from './springTable.ts';

/**
 * One number of splits with a range of bought colonies: what is missing, left over and spent on splits there, as a
 * convex curve from below. The curve is the lower hull of the cost over the whole numbers of the range, given to the
 * model by some of its edges.
 */
export interface SplitBranch {
  readonly column: SplitColumn;
  readonly low: number;
  readonly high: number;
  /** Expected cost in minor units by colonies bought, index 0 = none. */
  readonly costs: readonly number[];
  /** Numbers bought at which the hull has a corner, rising. */
  readonly corners: readonly number[];
  /** Edges that the model knows, by the place of their first corner. */
  readonly edges: ReadonlySet<number>;
}

/** Missing and surplus colonies and the splits made, in money, by colonies bought. */
export function expectedCosts(problem: OrderProblem, { expectedShort, expectedLeft, expectedMade }: SplitColumn): number[] {
  const each = splitCost(problem);
  return expectedShort.map((short, bought) => problem.missing * short + problem.surplus * (expectedLeft[bought] as number) + each * (expectedMade[bought] as number));
}

/** Work and honey of a split that is made, in minor units. */
export function splitCost({ minutes, hourValue, honeyForgone }: OrderProblem): number {
  return (minutes.split * hourValue) / 60 + honeyForgone.split;
}

/** A branch over all that keeps the confidence; null where nothing does. */
export function branchOf(problem: OrderProblem, column: SplitColumn, mostBought: number): SplitBranch | null {
  const fewest = fewestBought(column, problem.confidence);
  return fewest === null ? null : ranged(column, expectedCosts(problem, column), fewest, mostBought);
}

function ranged(column: SplitColumn, costs: readonly number[], low: number, high: number): SplitBranch {
  const corners = lowerHull(costs, low, high);
  const branch: SplitBranch = { column, low, high, costs, corners, edges: new Set() };
  // Near the fewest, where answers mostly lie, the curve bends most.
  let known = branch;
  for (let step = 1; low + step - 1 < high; step *= 2) known = knowing(known, low + step - 1);
  return known;
}

/** The branch with the edges of the hull on both sides of a number bought. */
export function knowing(branch: SplitBranch, bought: number): SplitBranch {
  const at = edgeAt(branch, bought);
  if (at === null) return branch;
  const first = branch.corners[at] as number;
  return { ...branch, edges: new Set([...branch.edges, ...(first === bought && at > 0 ? [at - 1, at] : [at])]) };
}

/** Whether the model knows the hull at a number bought. */
export function isKnown(branch: SplitBranch, bought: number): boolean {
  const at = edgeAt(branch, bought);
  return at === null || branch.edges.has(at);
}

/** The hull's cost at a number bought: never above the real one. */
export function hullCost({ costs, corners, ...branch }: SplitBranch, bought: number): number {
  const at = edgeAt({ costs, corners, ...branch }, bought);
  if (at === null) return costs[bought] as number;
  const { slope, first } = edgeOf({ costs, corners }, at);
  return (costs[first] as number) + slope * (bought - first);
}

export function edgeOf({ costs, corners }: Pick<SplitBranch, 'costs' | 'corners'>, at: number): { readonly first: number; readonly slope: number } {
  const [first, next] = [corners[at] as number, corners[at + 1] as number];
  return { first, slope: ((costs[next] as number) - (costs[first] as number)) / (next - first) };
}

/** The range taken apart at a number bought, where the hull lies below the real cost. */
export function partedAt({ column, costs, low, high }: SplitBranch, bought: number): SplitBranch[] {
  return [[low, bought - 1], [bought, bought], [bought + 1, high]].flatMap(([from = 0, until = 0]) => (from > until ? [] : [ranged(column, costs, from, until)]));
}

function edgeAt({ corners, high }: SplitBranch, bought: number): number | null {
  if (corners.length < 2) return null;
  const at = corners.findLastIndex((corner) => corner <= Math.min(bought, high));
  return Math.min(at, corners.length - 2);
}

/** Corners of the lower hull of points at whole numbers (Andrew's monotone chain, from memory). */
function lowerHull(costs: readonly number[], low: number, high: number): number[] {
  const corners: number[] = [];
  const cost = (at: number) => costs[at] as number;
  for (let at = low; at <= high; at += 1) {
    while (corners.length > 1) {
      const [a, b] = corners.slice(-2) as [number, number];
      if ((cost(b) - cost(a)) * (at - a) < (cost(at) - cost(a)) * (b - a)) break;
      corners.pop();
    }
    corners.push(at);
  }
  return corners;
}
