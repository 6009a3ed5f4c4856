import type { Grams } from '#shared/brands.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { refuse, type Answer } from '#shared/faults.ts';
import { number } from '#shared/figures.ts';

/** So much honey with so many per cent water. */
export interface Honey {
  readonly mass: Grams;
  readonly water: number;
}

/** What a weight of honey would weigh at another water: what is not water stays as it is. */
export function massAtWater({ mass, water }: Honey, other: number): Grams {
  check(water);
  check(other);
  return ((mass * (100 - water)) / (100 - other)) as Grams;
}

/** The same at the water at which crops are compared, by the house rule. */
export function massAtStandard(honey: Honey, rules: RuleValues): Grams {
  return massAtWater(honey, numberRule(rules, 'honey.water.standard'));
}

/** Drying honey down to a water: what is left, and the water that has to go. Honey that is dry enough already is refused. */
export function drying(honey: Honey, to: number): Answer<{ left: Grams; removed: Grams }> {
  if (!(to > 0 && to < honey.water)) {
    return refuse('bad-input', `Honey of ${honey.water} % water cannot be dried to ${to} %.`, { field: 'to', mend: 'Name a water below the one it has.' });
  }
  const left = massAtWater(honey, to);
  return { ok: true, value: { left, removed: (honey.mass - left) as Grams } };
}

/** Water of several lots poured together, in per cent; null if there is nothing to pour. */
export function waterOfBlend(lots: readonly Honey[]): number | null {
  const mass = lots.reduce((sum, lot) => sum + lot.mass, 0);
  return mass > 0 ? lots.reduce((sum, lot) => sum + lot.mass * lot.water, 0) / mass : null;
}

/** Per cent as it is said: a reading has no more than two decimals. */
const said = (share: number) => number(share, 2);

/**
 * How much drier honey brings a lot down to a target: the Pearson square. Parts of the dry are wet less target, parts of
 * the wet are target less dry. A target that does not lie between the two is refused.
 */
export function blendTo(wet: Honey, dryWater: number, target: number): Answer<{ dry: Grams; blend: Grams }> {
  if (!(dryWater < wet.water)) {
    return refuse('bad-input', `Honey of ${said(dryWater)} % water is not drier than the lot of ${said(wet.water)} %.`, { field: 'dryWater', mend: 'Choose a drier lot to blend with.' });
  }
  if (!(target > dryWater && target < wet.water)) {
    return refuse('bad-input', `No blend of ${said(dryWater)} % and ${said(wet.water)} % has ${said(target)} % water.`, { field: 'target', mend: `Name a target between ${said(dryWater)} and ${said(wet.water)} %.` });
  }
  const dry = (wet.mass * (wet.water - target)) / (target - dryWater);
  return { ok: true, value: { dry: dry as Grams, blend: (wet.mass + dry) as Grams } };
}

function check(water: number): void {
  if (!(water >= 0 && water < 100)) throw new RangeError(`water of honey lies from 0 to below 100 per cent, not ${water}`);
}
