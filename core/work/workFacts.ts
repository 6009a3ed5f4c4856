import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Need } from '#shared/contract/needs.ts';
import type { PlacedOrder } from '#shared/contract/placed.ts';
import type { OwnTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';

/** All that tasks are worked out from, as of a day. */
export interface WorkFacts {
  readonly today: Day;
  /** The last day of the plan. */
  readonly until: Day;
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly rules: RuleValues;
  /** What the list of needs asks for now or before the last day. */
  readonly needs: readonly Need[];
  /** The active ingredients that fit in a yard on a day, by what the record says and the house’s own numbers; none where no treatment does. */
  readonly fitting: (yard: YardId, on: Day) => readonly string[];
  /** Colonies that died or left and whose hives nobody has looked over. */
  readonly deadOuts: ReadonlySet<ColonyId>;
  /** Orders that are still on their way. */
  readonly awaited: readonly PlacedOrder[];
  readonly own: readonly OwnTask[];
  /** Standing `work` entries: the person’s own recorded hours. */
  readonly recorded: readonly Extract<Entry, { kind: 'work' }>[];
}

/** Weeks that a plan looks ahead. */
export const planWeeks = 8;
