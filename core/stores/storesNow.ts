import type { ColonyState } from '#core/journal/colonyState.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Grams } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { refuse, type Answer } from '#shared/faults.ts';
import { gramsFrom } from '#shared/units.ts';

/** Combs full of stores, parts counted as parts. */
export interface FullCombs {
  readonly deep: number;
  readonly medium: number;
  readonly shallow: number;
}

/** What a colony has, from the record: weighed or hefted, or reckoned from the frames of a look. */
export interface StoresNow {
  readonly mass: Grams;
  readonly day: Day;
  readonly from: 'weight' | 'frames';
  /** What was fed after it, whose stores are not in the figure; oldest first. */
  readonly fedAfter: ColonyState['feedings'];
}

/** Stores in full combs, by the house's pounds for each size. Counts below nothing: RangeError. */
export function storesInCombs(combs: FullCombs, rules: RuleValues): Grams {
  const pounds = (['deep', 'medium', 'shallow'] as const).reduce((sum, size) => {
    if (!(combs[size] >= 0)) throw new RangeError(`${combs[size]} ${size} combs`);
    return sum + combs[size] * numberRule(rules, `stores.frame.${size}`);
  }, 0);
  return gramsFrom(pounds, 'lb');
}

/**
 * Stores of a hive that was weighed whole: gross less the empty hive with its combs, less bees, pollen and the rest by
 * the house rules. A hive lighter than its own parts is refused: gross or tare was written down wrong.
 */
export function storesInHive(gross: Grams, tare: Grams, rules: RuleValues): Answer<Grams> {
  const mass = gross - tare - gramsFrom(numberRule(rules, 'stores.hive.bees') + numberRule(rules, 'stores.hive.other'), 'lb');
  if (!(mass >= 0)) {
    return refuse('bad-input', 'The hive weighs less than its empty parts, bees and pollen together.', { field: 'gross', mend: 'Look at both weights again; the empty weight is of boxes, combs, board and covers.' });
  }
  return { ok: true, value: mass as Grams };
}

/**
 * The newest word on a colony's stores up to a day; on one day the scale goes before the eye. Null if nothing was written
 * down. What is fed on the day of a look came after it, since combs show no syrup of that day; the scale weighs what was
 * written down before it.
 */
export function storesNow(state: Pick<ColonyState, 'storesWeights' | 'looks' | 'feedings'>, asOf: Day, rules: RuleValues): StoresNow | null {
  const weighed = newest(state.storesWeights, asOf);
  const seen = newest(state.looks.filter(({ framesStores }) => framesStores !== null), asOf);
  const day = [weighed?.day, seen?.day].filter((one) => one !== undefined).toSorted().at(-1);
  if (day === undefined) return null;
  const from = weighed?.day === day ? 'weight' : 'frames';
  const mass = from === 'weight' && weighed !== null ? (weighed.grams as Grams) : storesInCombs({ deep: seen?.framesStores ?? 0, medium: 0, shallow: 0 }, rules);
  const weighedToo = from === 'weight' ? (weighed?.fedBefore ?? 0) : 0;
  return { mass, day, from, fedAfter: state.feedings.filter((feeding) => feeding.day >= day && feeding.day <= asOf).slice(weighedToo) };
}

function newest<Item extends { readonly day: Day }>(items: readonly Item[], asOf: Day): Item | null {
  return items.reduce<Item | null>((found, one) => (one.day <= asOf && (found === null || one.day >= found.day) ? one : found), null);
}
