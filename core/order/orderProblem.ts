import type { Day } from '#shared/days.ts';

/** Colonies come as packages, nucs or full colonies; queens go into splits or replace old ones. */
export type BeeKind = 'package' | 'nuc' | 'colony' | 'queen';

export interface PriceStep {
  readonly from: number;
  /** Minor units. */
  readonly each: number;
}

/** Something on offer: so many at so much; the price of all follows the number ordered. */
export interface Ware {
  readonly key: string;
  readonly steps: readonly PriceStep[];
  readonly least: number;
  readonly most: number | null;
  readonly late: boolean;
}

/** Key of the ware that stands for queens ordered before. */
export const queensOnOrder = 'on order';

export interface BeeWare extends Ware {
  readonly kind: BeeKind;
  readonly orderBy: Day;
}

export interface PackWare extends Ware {
  readonly packSize: number;
}

/** A part of hives: so many for each colony (spares included), so many there already. */
export interface PartNeed {
  readonly item: string;
  readonly perColony: number;
  readonly have: number;
  readonly packs: readonly PackWare[];
}

export interface SpringYard {
  /** Survivors in a middling spring. */
  readonly survivors: number;
  /** Colonies it holds; null if not known, which sets no limit. */
  readonly room: number | null;
}

/** Everything that the cheapest order depends on. Money in minor units, times in minutes. */
export interface OrderProblem {
  /** Colonies wanted beside those on order. */
  readonly target: number;
  /** Colonies ordered before that have not come; they want a hive like all others. */
  readonly onOrder: number;
  readonly confidence: number;
  /** Share of the springs with k survivors, k = 0..living. */
  readonly shares: readonly number[];
  readonly splits: { readonly take: number; readonly perSurvivor: number; readonly queens: 'bought' | 'raised' };
  readonly yards: readonly SpringYard[];
  readonly bees: readonly BeeWare[];
  readonly parts: readonly PartNeed[];
  /** Hives occupied by survivors when many survive; see `hivesWanted`. */
  readonly hivesStanding: number;
  /** Old queens to be replaced. */
  readonly requeen: number;
  readonly freeCombs: number;
  readonly combsPerPackage: number;
  readonly minutes: { readonly package: number; readonly foundation: number; readonly nuc: number; readonly colony: number; readonly split: number; readonly requeen: number; readonly move: number };
  /** Value of an hour. */
  readonly hourValue: number;
  /** Honey forgone in the first year against a wintered colony; for a split planned, by its chance to take. */
  readonly honeyForgone: { readonly package: number; readonly foundation: number; readonly nuc: number; readonly colony: number; readonly split: number };
  readonly missing: number;
  readonly surplus: number;
  readonly hours: number | null;
  readonly budget: number | null;
}

/** A limit that can be lifted to see whether it is the one that binds. */
export const limits = ['room', 'budget', 'hours', 'deadlines', 'supply', 'splits', 'queens'] as const;
export type Limit = (typeof limits)[number];

/**
 * Hives to fit out: as many as are wanted, or as survive in a good winter if those are more. A good winter on top of
 * everything bought makes colonies too many; what such a colony costs, its boxes included, is the price of a surplus
 * one, so boxes are not bought for it as well.
 */
export function hivesWanted({ target, onOrder, hivesStanding }: Pick<OrderProblem, 'target' | 'onOrder' | 'hivesStanding'>): number {
  return Math.max(target + onOrder, hivesStanding);
}

/** Splits that so many survivors can give. */
export function splitsFrom(survivors: number, perSurvivor: number): number {
  return Math.floor(survivors * perSurvivor + 1e-9);
}

export function splitsOfYards(problem: OrderProblem): number {
  return problem.yards.reduce((sum, yard) => sum + splitsFrom(yard.survivors, problem.splits.perSurvivor), 0);
}

/** The same question with one limit lifted; what is lifted cannot bind. */
export function lifted(problem: OrderProblem, limit: Limit): OrderProblem {
  switch (limit) {
    case 'room':
      return { ...problem, yards: problem.yards.map((yard) => ({ ...yard, room: null })) };
    case 'budget':
      return { ...problem, budget: null };
    case 'hours':
      return { ...problem, hours: null };
    case 'deadlines':
      return { ...problem, bees: problem.bees.map((ware) => ({ ...ware, late: false })), parts: problem.parts.map((part) => ({ ...part, packs: part.packs.map((ware) => ({ ...ware, late: false })) })) };
    case 'supply':
      return { ...problem, bees: problem.bees.map((ware) => ({ ...ware, most: null, least: ware.steps[0]?.from ?? 1 })) };
    case 'splits':
      return { ...problem, splits: { ...problem.splits, perSurvivor: problem.splits.perSurvivor + 1 } };
    case 'queens':
      return { ...problem, requeen: 0, splits: { ...problem.splits, queens: 'raised' } };
  }
}
