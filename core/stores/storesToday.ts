import type { Grams } from '#shared/brands.ts';
import { addDays, dayInWords, daysBetween, type Day } from '#shared/days.ts';
import { hold, number } from '#shared/figures.ts';
import { gramsFrom, massIn, millilitresFrom, type MassUnit } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { inSeasonOf, inYearWindow } from '#core/rules/yearWindow.ts';
import { storesNow, type StoresNow } from './storesNow.ts';
import { storesVerdict, winterTarget, type WinterPlace } from './storesVerdict.ts';
import { syrupFor, syrupOfVolume, type Feed, type SyrupMix } from './syrup.ts';

/** How stores are judged on a day: for want of food, against the winter's target, or by what is left of the autumn's. */
export type StoresPhase = 'summer' | 'autumn' | 'winter';

export interface StoresFacts {
  readonly day: Day;
  readonly rules: RuleValues;
  readonly unit: MassUnit;
  /** What all combs of its brood boxes hold when full; absent or null where the boxes are not known. */
  readonly holds?: Grams | null;
}

/** Feed given since stores were told, as stores by the house's pounds from a gallon. */
export interface FedSince {
  readonly times: number;
  readonly mass: Grams;
  /** Feedings of which no amount was written down, or of what is no syrup: in no figure. */
  readonly notReckoned: number;
}

export interface StoresToday {
  readonly phase: StoresPhase;
  readonly target: Grams | null;
  readonly told: StoresNow | null;
  /** Days since it was told. */
  readonly age: number | null;
  readonly fed: FedSince;
  /** What was told, with feed since, less what a winter takes; null where nothing that holds was told. */
  readonly reckoned: Grams | null;
  readonly say: 'take' | 'leave' | 'feed' | 'look first' | 'not told';
  /** What may be taken or is short; 0 if neither. */
  readonly amount: Grams;
  /** Syrup that makes up what is short; null where none is to be given. */
  readonly feed: (Feed & { readonly mix: SyrupMix }) | null;
  readonly reason: string;
  readonly rests: RestsOn | null;
}

export function winterPlace(rules: RuleValues): WinterPlace {
  const place = textRule(rules, 'stores.place');
  return place === 'south' || place === 'middle' ? place : 'north';
}

/** Autumn until heavy syrup is over, then winter until the season begins, then summer. */
export function storesPhase(day: Day, rules: RuleValues): StoresPhase {
  if (inYearWindow(day, 'stores.autumnFrom', 'stores.feedBy', rules)) return 'autumn';
  return day > inSeasonOf(day, 'stores.feedBy', rules) ? 'winter' : 'summer';
}

/** Stores that what was fed comes to. */
function fedSince(fed: ColonyState['feedings'], rules: RuleValues): FedSince {
  const gains = fed.map(({ feed, grams, millilitres }) => gainOf(feed, grams, millilitres, rules));
  return { times: fed.length, mass: gains.reduce<number>((sum, gain) => sum + (gain ?? 0), 0) as Grams, notReckoned: gains.filter((gain) => gain === null).length };
}

function gainOf(feed: ColonyState['feedings'][number]['feed'], grams: number | null, millilitres: number | null, rules: RuleValues): number | null {
  if (feed !== 'syrup 2:1' && feed !== 'syrup 1:1') return null;
  const mix: SyrupMix = feed === 'syrup 2:1' ? 'heavy' : 'light';
  const gallon = gramsFrom(numberRule(rules, `stores.gain.${mix}`), 'lb');
  if (millilitres !== null) return (millilitres / millilitresFrom(1, 'gal')) * gallon;
  if (grams === null) return null;
  return (grams / syrupOfVolume(millilitresFrom(1, 'gal'), mix).mass) * gallon;
}

/**
 * A colony's stores on a day. In autumn: what was told within the house's days, with syrup given since, against the
 * winter's target. In winter: what was told since the autumn began, less the house's pounds a week; low is fed, and never
 * syrup. In spring and summer: only whether it is about to starve. `judgedAs` asks as in another time of the year.
 */
export function storesToday(state: Pick<ColonyState, 'storesWeights' | 'looks' | 'feedings' | 'supers'>, facts: StoresFacts, judgedAs?: StoresPhase): StoresToday {
  const { day, rules } = facts;
  const phase = judgedAs ?? storesPhase(day, rules);
  const told = storesNow(state, day, rules);
  const frame: Frame = {
    phase, told, age: told === null ? null : daysBetween(told.day, day), fed: fedSince(told?.fedAfter ?? [], rules),
    target: phase === 'autumn' ? storesVerdict(0 as Grams, winterPlace(rules), rules, facts.holds).target : null,
    rests: told === null ? null : { kind: told.from === 'weight' ? 'stores' : 'inspection', day: told.day },
  };
  if (told === null) return { ...frame, ...nothing, say: 'not told', reason: 'No weight and no frames of stores were ever written down.' };
  return phase === 'winter' ? inWinter(frame, told, facts) : tooOld(frame, told, facts) ?? (phase === 'autumn' ? inAutumn(frame, told, state, facts) : inSummer(frame, told, state, facts));
}

type Frame = Pick<StoresToday, 'phase' | 'told' | 'age' | 'fed' | 'target' | 'rests'>;
const nothing = { reckoned: null, amount: 0 as Grams, feed: null } as const;

function tooOld(frame: Frame, told: StoresNow, { rules, unit }: StoresFacts): StoresToday | null {
  if ((frame.age ?? 0) <= numberRule(rules, 'stores.holds')) return null;
  return { ...frame, ...nothing, say: 'look first', reason: `${toldWords(told, unit)}, ${frame.age ?? 0} days ago: too old to go by.` };
}

function inAutumn(frame: Frame, told: StoresNow, { supers }: Pick<ColonyState, 'supers'>, { rules, unit, holds }: StoresFacts): StoresToday {
  const reckoned = (told.mass + frame.fed.mass) as Grams;
  const { say, amount, target } = storesVerdict(reckoned, winterPlace(rules), rules, holds);
  const feed = say === 'feed' ? { mix: 'heavy' as const, ...syrupFor(amount, 'heavy', unit === 'kg' ? 'l' : 'gal', rules) } : null;
  const against = mass(target, unit);
  const verdict = { feed: `${mass(amount, unit)} short of ${against}`, take: `${mass(amount, unit)} more than ${against}`, leave: `near enough to ${against}` }[say];
  const wanted = winterTarget(winterPlace(rules), rules);
  const small = target < wanted ? ` Its combs hold no more; ${mass(wanted, unit)} would ask for a second box.` : '';
  const first = say === 'feed' && hasSupers(supers) ? ' Take the supers off before it is fed.' : '';
  return { ...frame, reckoned, say, amount, feed, reason: `${toldWords(told, unit)}${fedWords(frame.fed, unit)}: ${verdict}.${small}${first}` };
}

function inSummer(frame: Frame, told: StoresNow, { supers }: Pick<ColonyState, 'supers'>, { rules, unit }: StoresFacts): StoresToday {
  const reckoned = (told.mass + frame.fed.mass) as Grams;
  const short = gramsFrom(numberRule(rules, 'stores.low'), 'lb') - reckoned;
  if (short <= 1e-6) return { ...frame, reckoned, say: 'leave', amount: 0 as Grams, feed: null, reason: `${toldWords(told, unit)}${fedWords(frame.fed, unit)}: not low.` };
  const amount = short as Grams;
  // Syrup would go up into honey that is to be sold.
  if (hasSupers(supers)) return { ...frame, reckoned, say: 'look first', amount, feed: null, reason: `${toldWords(told, unit)}: low below, but supers are on. Look whether they hold honey; no syrup while they are on.` };
  return { ...frame, reckoned, say: 'feed', amount, feed: { mix: 'light', ...syrupFor(amount, 'light', unit === 'kg' ? 'l' : 'gal', rules) }, reason: `${toldWords(told, unit)}${fedWords(frame.fed, unit)}: low.` };
}

function inWinter(frame: Frame, told: StoresNow, { day, rules, unit }: StoresFacts): StoresToday {
  const closed = inSeasonOf(day, 'stores.feedBy', rules);
  if (addDays(told.day, numberRule(rules, 'stores.holds')) < closed) return { ...frame, ...nothing, say: 'look first', reason: `${toldWords(told, unit)}, and nothing since: too old to go by. Heft it.` };
  const weeks = Math.max(0, daysBetween(told.day > closed ? told.day : closed, day)) / 7;
  const used = weeks * gramsFrom(numberRule(rules, 'stores.week'), 'lb');
  const reckoned = Math.max(0, told.mass + frame.fed.mass - used) as Grams;
  const short = gramsFrom(numberRule(rules, 'stores.low'), 'lb') - reckoned;
  const left = `${toldWords(told, unit)}${fedWords(frame.fed, unit)}: about ${mass(reckoned, unit, 0)} left if it used ${number(massIn(gramsFrom(numberRule(rules, 'stores.week'), 'lb'), unit), 1)}${hold}${unit} a week`;
  if (short <= 1e-6) return { ...frame, reckoned, say: 'leave', amount: 0 as Grams, feed: null, reason: `${left}.` };
  return { ...frame, reckoned, say: 'feed', amount: short as Grams, feed: null, reason: `${left}. Heft it; fondant or dry sugar on the frames, no syrup.` };
}

/** "56 lb from 8 frames on 12 September 2026" */
function toldWords(told: StoresNow, unit: MassUnit): string {
  return `${mass(told.mass, unit)} ${told.from === 'weight' ? 'weighed or hefted' : 'from the frames seen'} on ${dayInWords(told.day)}`;
}

function fedWords({ times, mass: gained, notReckoned }: FedSince, unit: MassUnit): string {
  if (times === 0) return '';
  const reckoned = gained > 0 ? ` and about ${mass(gained, unit, 0)} from syrup since` : '';
  return notReckoned === 0 ? reckoned : `${reckoned}, fed ${notReckoned === 1 ? 'once' : `${notReckoned} times`} more than can be reckoned`;
}

/** To a tenth, so that what is told and what is short add up; whole ones where the figure is a rough one. */
export function mass(grams: Grams, unit: MassUnit, places = 1): string {
  return `${number(massIn(grams, unit), places)}${hold}${unit}`;
}

export function hasSupers(supers: ColonyState['supers']): boolean {
  return supers.deep + supers.medium + supers.shallow > 0;
}
