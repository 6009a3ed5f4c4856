import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Grams, Millilitres } from '#shared/brands.ts';
import { day, yearOf, type Day } from '#shared/days.ts';
import { gramsFrom, millilitresFrom, volumeIn, type VolumeUnit } from '#shared/units.ts';

/** White sugar to water, by weight: heavy 2:1 for autumn, light 1:1 for spring. */
export type SyrupMix = 'heavy' | 'light';

/** Sugar as a share of the weight, and kilograms in a litre at 20 degrees Celsius (standard tables of sucrose, from memory). */
const mixes: Readonly<Record<SyrupMix, { readonly sugar: number; readonly density: number }>> = {
  heavy: { sugar: 2 / 3, density: 1.327 },
  light: { sugar: 1 / 2, density: 1.2296 },
};
/** Per cent water of ripened stores, for what syrup would give if nothing were lost. */
const ripe = 18;

export interface Syrup {
  readonly volume: Millilitres;
  readonly mass: Grams;
  readonly sugar: Grams;
  readonly water: Grams;
}

/** A volume of syrup: what it weighs, and the sugar and water in it. */
export function syrupOfVolume(volume: Millilitres, mix: SyrupMix): Syrup {
  const { sugar, density } = mixes[mix];
  const mass = volume * density;
  return { volume, mass: mass as Grams, sugar: (mass * sugar) as Grams, water: (mass * (1 - sugar)) as Grams };
}

/** The syrup that so much sugar makes. */
export function syrupOfSugar(weight: Grams, mix: SyrupMix): Syrup {
  const { sugar, density } = mixes[mix];
  return syrupOfVolume((weight / sugar / density) as Millilitres, mix);
}

/** Stores that a volume of syrup would make at 18 % water if the bees spent nothing on it: more cannot come of it. */
export function storesAtMost(volume: Millilitres, mix: SyrupMix): Grams {
  return ((syrupOfVolume(volume, mix).sugar * 100) / (100 - ripe)) as Grams;
}

/** Until when heavy syrup is fed in the year of a day, and whether that is past on it. */
export function heavySyrupUntil(asOf: Day, rules: RuleValues): { until: Day; past: boolean } {
  const until = day(`${yearOf(asOf)}-${textRule(rules, 'stores.feedBy')}`);
  return { until, past: asOf > until };
}

export interface Feed extends Syrup {
  /** As reckoned, before it is rounded up to whole gallons or litres. */
  readonly exact: Millilitres;
}

/** Syrup that makes up what is short, by the house's pounds from a gallon, rounded up to whole gallons or litres; none if nothing is short. */
export function syrupFor(short: Grams, mix: SyrupMix, unit: VolumeUnit, rules: RuleValues): Feed {
  if (!(short >= 0)) throw new RangeError(`${short} g short`);
  const gallons = short / gramsFrom(numberRule(rules, `stores.gain.${mix}`), 'lb');
  const exact = millilitresFrom(gallons, 'gal');
  // A hair above a whole number is rounding, not another gallon.
  const whole = Math.max(0, Math.ceil(volumeIn(exact, unit) - 1e-6));
  return { exact, ...syrupOfVolume(millilitresFrom(whole, unit), mix) };
}
