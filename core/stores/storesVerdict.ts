import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Grams } from '#shared/brands.ts';
import { gramsFrom } from '#shared/units.ts';

/** Where the winter is spent; the target of each is a house rule. */
export type WinterPlace = 'south' | 'middle' | 'north';

export interface StoresVerdict {
  readonly target: Grams;
  readonly say: 'take' | 'leave' | 'feed';
  /** What may be taken or is to be fed; 0 when it is left. */
  readonly amount: Grams;
}

/** What winter asks of a colony there. */
export function winterTarget(place: WinterPlace, rules: RuleValues): Grams {
  return gramsFrom(numberRule(rules, `stores.target.${place}`), 'lb');
}

/**
 * What to do about a colony's stores: within the house's slack of the target they are left alone; what is above may be
 * taken, what is short is fed, in both cases to the target itself. A hive whose combs hold less than the target is judged
 * by what they hold.
 */
export function storesVerdict(found: Grams, place: WinterPlace, rules: RuleValues, holds: Grams | null = null): StoresVerdict {
  const wanted = winterTarget(place, rules);
  const target = holds !== null && holds < wanted ? holds : wanted;
  const over = found - target;
  if (!Number.isFinite(over) || found < 0) throw new RangeError(`stores of ${found} g`);
  // A hair over the slack from pounds turned into grams is no reason to feed.
  if (Math.abs(over) <= gramsFrom(numberRule(rules, 'stores.slack'), 'lb') + 1e-6) return { target, say: 'leave', amount: 0 as Grams };
  return { target, say: over > 0 ? 'take' : 'feed', amount: Math.abs(over) as Grams };
}

/** Full combs of one size that make up a weight, for saying it in frames. */
export function combsFor(mass: Grams, size: 'deep' | 'medium' | 'shallow', rules: RuleValues): number {
  return mass / gramsFrom(numberRule(rules, `stores.frame.${size}`), 'lb');
}
