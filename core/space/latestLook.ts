import { addDays, type Day } from '#shared/days.ts';
import type { ColonyState, Look } from '#core/journal/colonyState.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { SpaceFacts } from './hiveBoxes.ts';

/** The last look that told how many frames of bees there were, and what made it a story of the past. */
export interface LatestLook {
  readonly look: Look & { readonly framesBees: number };
  /** Older than the house lets a look hold; or the bees were parted since. */
  readonly past: 'old' | 'split' | 'swarmed' | null;
}

/** Null where strength was never told up to that day. */
export function latestStrength(state: Pick<ColonyState, 'looks' | 'reigns'>, { day, rules, splitDays }: Pick<SpaceFacts, 'day' | 'rules' | 'splitDays'>): LatestLook | null {
  const look = state.looks.findLast((one): one is Look & { framesBees: number } => one.day <= day && one.framesBees !== null);
  if (look === undefined) return null;
  const swarmed = swarmedOn(state, day);
  // What was seen on the day of a split was seen before it.
  if (splitDays.some((split) => split >= look.day && split <= day)) return { look, past: 'split' };
  if (swarmed !== null && swarmed > look.day) return { look, past: 'swarmed' };
  return { look, past: addDays(look.day, numberRule(rules, 'space.lookHolds')) < day ? 'old' : null };
}

/** The last day up to that one on which a swarm was written down. */
export function swarmedOn({ reigns }: Pick<ColonyState, 'reigns'>, day: Day): Day | null {
  return reigns.findLast(({ ending, until }) => ending === 'swarmed' && until !== null && until <= day)?.until ?? null;
}

/** The newest look of any kind. */
export function lastLook({ looks }: Pick<ColonyState, 'looks'>, day: Day): Look | null {
  return looks.findLast((one) => one.day <= day) ?? null;
}
