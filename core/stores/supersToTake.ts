import { dayInWords } from '#shared/days.ts';
import { gramsFrom } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { hasSupers, mass, storesToday, type StoresFacts, type StoresToday } from './storesToday.ts';

/** Supers on a colony from the day on which crops are taken: how many may come off, and what that asks for. */
export interface SupersToTake {
  readonly on: ColonyState['supers'];
  readonly count: number;
  readonly say: 'take' | 'take and feed' | 'leave' | 'look first';
  /** Full medium supers that would make up what is short below, if they are left instead of feeding; 0 where nothing is short. */
  readonly leaveInstead: number;
  readonly reason: string;
}

type Known = Pick<ColonyState, 'storesWeights' | 'looks' | 'feedings' | 'supers'>;

/**
 * Null where no supers are on, or before the day of the house. What is in a super is not in the record before it is
 * weighed, so the answer goes by what is told of the stores below: what is short of the winter's target there has to be
 * fed before the day of the house, or supers are left.
 */
export function supersToTake(state: Known, facts: StoresFacts, framesInBox: 8 | 10): SupersToTake | null {
  const { day, rules, unit } = facts;
  const { supers } = state;
  if (!hasSupers(supers) || day < inSeasonOf(day, 'stores.takeFrom', rules)) return null;
  const count = supers.deep + supers.medium + supers.shallow;
  const frame = { on: supers, count, leaveInstead: 0 };
  const below = againstWinter(state, facts);
  if (below === null) return { ...frame, say: 'look first', reason: 'Nothing that still holds tells of the stores below the supers: look into the brood boxes first.' };
  if (below.say !== 'feed') return { ...frame, say: 'take', reason: `${below.reason} Nothing has to stay on for the winter.` };
  const full = framesInBox * gramsFrom(numberRule(rules, 'stores.frame.medium'), 'lb');
  const wanted = Math.ceil(below.amount / full - 1e-9);
  const leaveInstead = Math.min(count, wanted);
  const closed = inSeasonOf(day, 'stores.feedBy', rules);
  const short = `${mass(below.amount, unit)} short below`;
  const stay = wanted > count ? `${count === 1 ? 'the one super' : `all ${count} supers`} on, which would not make up all of it` : `${wanted === 1 ? 'one full super' : `${wanted} full supers`} on`;
  if (day > closed) return { ...frame, leaveInstead, say: 'leave', reason: `${short}, and heavy syrup was to be fed by ${dayInWords(closed)}: leave ${stay}.` };
  return { ...frame, leaveInstead, say: 'take and feed', reason: `${short}: take them and feed by ${dayInWords(closed)}, or leave ${stay}.` };
}

/** The stores below judged as in autumn, on whatever day supers are taken. */
function againstWinter(state: Known, facts: StoresFacts): Pick<StoresToday, 'say' | 'amount' | 'reason'> | null {
  const found = storesToday({ ...state, supers: { deep: 0, medium: 0, shallow: 0 } }, facts, 'autumn');
  return found.reckoned === null ? null : found;
}
