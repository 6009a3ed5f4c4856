import type { ColonyId, YardId } from '#shared/brands.ts';
import { dayFromIso, monthDayOf, yearOf, type Day } from '#shared/days.ts';
import { periodDays, type Borders, type Season } from '#shared/seasons.ts';
import { gramsPerPound } from '#shared/units.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';

/**
 * What a colony went into a winter with, as the record had it then: for comparing those that were lost with
 * those that lived. Nothing that was seen later than `from` is in here but the stores, which are weighed when
 * feeding is over; they carry their day, and a colony is in its class of stores only from that day on.
 */
export interface WinterColony {
  readonly id: ColonyId;
  readonly label: string;
  readonly season: Season;
  /** Stood in the book as the winter began; the others came during it. */
  readonly wintered: boolean;
  /** First day of the winter, or the day it came if that was later. */
  readonly from: Day;
  /** Where it stood on that day. */
  readonly yard: YardId;
  readonly source: ColonyState['origin'];
  readonly supplier: string | null;
  readonly queenYear: number | null;
  /** Calendar years since she hatched; null where her year was not written down or there was no queen. */
  readonly queenAge: number | null;
  readonly queenAgeClass: QueenAgeClass;
  /** Where its queen came from, as written down. */
  readonly line: string | null;
  /** Active ingredients given in the season before the winter, to the colony or its whole yard; sorted, each once. */
  readonly treated: readonly string[];
  /** The last count in the window before the winter. */
  readonly mites: { readonly day: Day; readonly mites: number; readonly bees: number; readonly per100: number } | null;
  readonly mitesClass: MitesClass;
  /** The last weighing in the window; without one, the last frames of stores seen in it. */
  readonly stores: { readonly day: Day; readonly grams: number | null; readonly frames: number | null } | null;
  readonly storesClass: StoresClass;
  /** Frames of bees at the last look of the autumn before the winter. */
  readonly strength: { readonly day: Day; readonly frames: number } | null;
}

export const queenAgeClasses = ['this year', 'last year', 'older', 'unknown'] as const;
export type QueenAgeClass = (typeof queenAgeClasses)[number];

export const mitesClasses = ['below', 'at or above', 'not counted'] as const;
export type MitesClass = (typeof mitesClasses)[number];

export const storesClasses = ['light', 'enough', 'not weighed'] as const;
export type StoresClass = (typeof storesClasses)[number];

/** A treatment of every colony then alive in a yard. */
export interface YardTreatment {
  readonly yard: YardId;
  readonly day: Day;
  readonly ingredient: string;
}

/** Windows (`MM-DD`, both days included) and limits; all are house rules. */
export interface CovariateRules {
  readonly mitesFrom: string;
  readonly mitesUntil: string;
  /** Mites per 100 bees. */
  readonly mitesThreshold: number;
  readonly storesFrom: string;
  readonly storesUntil: string;
  /** Pounds of stores. */
  readonly storesPounds: number;
  /** Frames of stores, where nothing was weighed. */
  readonly storesFrames: number;
}

export interface CovariateFacts {
  readonly states: readonly ColonyState[];
  readonly yardTreatments: readonly YardTreatment[];
  readonly borders: Borders;
  readonly rules: CovariateRules;
  /** Nothing after this day is known. */
  readonly asOf: Day;
}

export function covariateRules(kept: RuleValues): CovariateRules {
  return {
    mitesFrom: textRule(kept, 'losses.mites.from'),
    mitesUntil: textRule(kept, 'losses.mites.until'),
    mitesThreshold: numberRule(kept, 'losses.mites.threshold'),
    storesFrom: textRule(kept, 'losses.stores.from'),
    storesUntil: textRule(kept, 'losses.stores.until'),
    storesPounds: numberRule(kept, 'losses.stores.pounds'),
    storesFrames: numberRule(kept, 'losses.stores.frames'),
  };
}

/** The treatments of whole yards among standing entries; those of single colonies are in their states. */
export function yardTreatmentsOf(entries: Iterable<Entry>): YardTreatment[] {
  const found: YardTreatment[] = [];
  for (const entry of entries) {
    if (entry.kind !== 'treatment' || entry.body.colony !== undefined || entry.body.yard === undefined) continue;
    found.push({ yard: entry.body.yard, day: entry.day, ingredient: entry.body.activeIngredient });
  }
  return found;
}

/** Every colony that was alive as the winter began or came during it, in the order of ids. */
export function winterCovariates(facts: CovariateFacts, season: Season): WinterColony[] {
  const winter = periodDays(season, 'winter', facts.borders);
  const year = periodDays(season, 'year', facts.borders);
  if (facts.asOf < winter.from) return [];
  const window: Window = {
    season, winter, seasonStart: year.from, rules: facts.rules, asOf: facts.asOf,
    mites: days(facts.rules.mitesFrom, facts.rules.mitesUntil, winter.from),
    stores: days(facts.rules.storesFrom, facts.rules.storesUntil, winter.from),
    yardTreatments: Map.groupBy(facts.yardTreatments.filter(({ day }) => day >= year.from && day < winter.from), ({ yard }) => yard),
  };
  return facts.states.flatMap((state) => {
    if (state.start > facts.asOf) return [];
    const wintered = aliveBefore(state, winter.from);
    const came = state.start >= winter.from && state.start < winter.until;
    return wintered || came ? [winterColony(state, wintered, window)] : [];
  });
}

interface Window {
  readonly season: Season;
  readonly winter: { readonly from: Day; readonly until: Day };
  readonly seasonStart: Day;
  readonly rules: CovariateRules;
  readonly asOf: Day;
  readonly mites: Stretch;
  readonly stores: Stretch;
  readonly yardTreatments: ReadonlyMap<YardId, readonly YardTreatment[]>;
}

/** Both days included. */
interface Stretch {
  readonly from: Day;
  readonly until: Day;
}

function winterColony(state: ColonyState, wintered: boolean, window: Window): WinterColony {
  const { winter, rules } = window;
  const from = wintered ? winter.from : state.start;
  // A colony that was there before the winter is seen as the first day begins; one that came, as it came.
  const known = (day: Day) => (wintered ? day < from : day <= from);
  const reign = state.reigns.findLast((one) => known(one.since));
  const queen = reign === undefined || (reign.until !== null && known(reign.until)) ? null : reign;
  const yard = (wintered ? state.stays.findLast((stay) => stay.from < from) : state.stays[0])?.yard;
  if (yard === undefined) throw new Error(`colony ${state.id} has no yard`);
  const queenYear = queen?.year ?? null;
  const queenAge = queenYear === null || queenYear > yearOf(from) ? null : Math.max(0, yearOf(winter.from) - queenYear);
  const mites = lastOf(state.miteCounts, window.mites, (one) => known(one.day) && one.bees > 0);
  const stores = storesOf(state, window);
  const seen = lastOf(state.looks, { from: window.stores.from, until: from }, (one) => known(one.day) && one.framesBees !== null);
  const per100 = mites === null ? null : (100 * mites.mites) / mites.bees;
  return {
    id: state.id, label: state.label, season: window.season, wintered, from, yard,
    source: state.origin, supplier: state.supplier,
    queenYear, queenAge, queenAgeClass: ageClass(queenAge), line: queen?.source ?? null,
    treated: treatedWith(state, window),
    mites: mites === null || per100 === null ? null : { day: mites.day, mites: mites.mites, bees: mites.bees, per100 },
    mitesClass: per100 === null ? 'not counted' : per100 >= rules.mitesThreshold ? 'at or above' : 'below',
    stores, storesClass: storesClass(stores, rules),
    strength: seen === null ? null : { day: seen.day, frames: seen.framesBees ?? 0 },
  };
}

function ageClass(age: number | null): QueenAgeClass {
  if (age === null) return 'unknown';
  return age === 0 ? 'this year' : age === 1 ? 'last year' : 'older';
}

/** Own treatments, and those of the yard in which it then stood. */
function treatedWith(state: ColonyState, { seasonStart, winter, yardTreatments }: Window): string[] {
  const given = new Set<string>();
  for (const { day, ingredient } of state.treatments) if (day >= seasonStart && day < winter.from) given.add(ingredient);
  for (const yard of new Set(state.stays.map((stay) => stay.yard))) {
    for (const { day, ingredient } of yardTreatments.get(yard) ?? []) {
      if (day >= state.start && (state.end === null || day < state.end) && yardOn(state, day) === yard) given.add(ingredient);
    }
  }
  return [...given].toSorted();
}

function storesOf(state: ColonyState, { stores, asOf }: Window): WinterColony['stores'] {
  const alive = (one: { readonly day: Day }) => one.day <= asOf && (state.end === null || one.day <= state.end);
  const weighed = lastOf(state.storesWeights, stores, alive);
  if (weighed !== null) return { day: weighed.day, grams: weighed.grams, frames: null };
  const seen = lastOf(state.looks, stores, (one) => alive(one) && one.framesStores !== null);
  return seen === null ? null : { day: seen.day, grams: null, frames: seen.framesStores };
}

function storesClass(stores: WinterColony['stores'], rules: CovariateRules): StoresClass {
  if (stores === null) return 'not weighed';
  const enough = stores.grams === null ? (stores.frames ?? 0) >= rules.storesFrames : stores.grams >= rules.storesPounds * gramsPerPound - 0.5;
  return enough ? 'enough' : 'light';
}

/** The last of a list in the order of days that lies in a stretch and fits. */
function lastOf<Item extends { readonly day: Day }>(list: readonly Item[], { from, until }: Stretch, fits: (item: Item) => boolean): Item | null {
  for (let at = list.length - 1; at >= 0; at -= 1) {
    const item = list[at] as Item;
    if (item.day < from) return null;
    if (item.day <= until && fits(item)) return item;
  }
  return null;
}

/** The stretch between two days of the year that lies about the beginning of a winter. */
function days(from: string, until: string, winter: Day): Stretch {
  const year = yearOf(winter);
  // A window that seems to begin after the winter's first day belongs to the year before.
  const first = from > monthDayOf(winter) ? year - 1 : year;
  return { from: dayOf(first, from), until: dayOf(until < from ? first + 1 : first, until) };
}

function dayOf(year: number, monthDay: string): Day {
  const found = dayFromIso(`${String(year).padStart(4, '0')}-${monthDay}`);
  if (found === null) throw new RangeError(`${monthDay} is no day of the year ${year}`);
  return found;
}
