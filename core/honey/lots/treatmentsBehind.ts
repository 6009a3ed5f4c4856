import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { seasonOf, type Borders } from '#shared/seasons.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';

/** A standing treatment of a colony, or of a yard as a whole. */
export interface TreatmentFact {
  readonly entry: EntryId;
  readonly day: Day;
  readonly place: number;
  readonly until: Day | null;
  readonly ingredient: string;
  readonly colony: ColonyId | null;
  readonly yard: YardId | null;
}

export function treatmentFacts(entries: readonly Entry[]): TreatmentFact[] {
  return entries.flatMap((entry): TreatmentFact[] => {
    if (entry.kind !== 'treatment') return [];
    const { colony, yard, activeIngredient: ingredient, endDate: until } = entry.body;
    return [{ entry: entry.id, day: entry.day, place: entry.place, until: until ?? null, ingredient, colony: colony ?? null, yard: yard ?? null }];
  });
}

/** Whether a colony had honey supers on while it was treated. */
export type Supers = { readonly on: true; readonly since: Day | null } | { readonly on: false };

export interface TreatedColony {
  readonly colony: ColonyId;
  readonly supers: Supers;
}

/** One treatment as it was done: the same active ingredient in one yard on one day, to however many colonies. */
export interface TreatmentBehind {
  readonly entry: EntryId;
  readonly day: Day;
  readonly until: Day | null;
  readonly ingredient: string;
  readonly yard: YardId | null;
  readonly whole: boolean;
  readonly colonies: readonly TreatedColony[];
  /** After the last harvest of these colonies that is asked about. */
  readonly afterHarvest: boolean;
  /** The first harvest of these colonies on or after the day of the treatment, in its season. */
  readonly harvest: Day | null;
}

export interface TreatmentSetting {
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  /** Standing entries of each colony in the journal's order. */
  readonly entriesOf: ReadonlyMap<ColonyId, readonly Entry[]>;
  readonly borders: Borders;
}

/**
 * Every treatment that these colonies had in the season of their harvest, whether given to the colony or to the whole yard
 * in which it then stood, with the supers it had on then. `harvested`: each colony with each day of its harvests.
 */
export function treatmentsBehind(all: readonly TreatmentFact[], harvested: readonly { readonly colony: ColonyId; readonly day: Day }[], { byId, entriesOf, borders }: TreatmentSetting): TreatmentBehind[] {
  const daysBy = new Map<string, Day[]>();
  const seasons = new Map<ColonyId, Set<number>>();
  for (const { colony, day } of harvested) {
    const season = seasonOf(day, borders);
    const key = `${colony} ${season}`;
    daysBy.set(key, [...(daysBy.get(key) ?? []), day]);
    const own = seasons.get(colony) ?? new Set();
    seasons.set(colony, own.add(season));
  }
  const found = new Map<string, { fact: TreatmentFact; yard: YardId | null; colonies: Map<ColonyId, Supers>; next: Day | null }>();
  for (const fact of all) {
    const treated = fact.colony !== null ? [fact.colony] : [...seasons.keys()].filter((id) => stoodIn(byId.get(id), fact));
    for (const colony of treated) {
      const season = seasonOf(fact.day, borders);
      const days = daysBy.get(`${colony} ${season}`);
      const state = byId.get(colony);
      if (days === undefined || state === undefined) continue;
      const yard = fact.yard ?? yardOn(state, fact.day);
      const key = `${fact.day} ${fact.ingredient} ${yard} ${fact.until} ${fact.colony === null}`;
      const one = found.get(key) ?? { fact, yard, colonies: new Map<ColonyId, Supers>(), next: null };
      found.set(key, one);
      one.colonies.set(colony, supersDuring(entriesOf.get(colony) ?? [], fact));
      for (const day of days) if (day >= fact.day && (one.next === null || day < one.next)) one.next = day;
    }
  }
  return [...found.values()]
    .map(({ fact, yard, colonies, next }) => ({ entry: fact.entry, day: fact.day, until: fact.until, ingredient: fact.ingredient, yard, whole: fact.colony === null, colonies: [...colonies].map(([colony, supers]) => ({ colony, supers })), afterHarvest: next === null, harvest: next }))
    .toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.entry - b.entry));
}

function stoodIn(state: ColonyState | undefined, { day, yard }: TreatmentFact): boolean {
  return state !== undefined && yard !== null && (aliveOn(state, day) || state.end === day) && yardOn(state, day) === yard;
}

/** Supers are on if some were when it was given, or were put on before it ended; `since` only in that case. */
export function supersDuring(entries: readonly Entry[], { day, place, until }: Pick<TreatmentFact, 'day' | 'place' | 'until'>): Supers {
  let count = 0;
  for (const entry of entries) {
    if (entry.kind !== 'supers on' && entry.kind !== 'supers off') continue;
    const before = entry.day < day || (entry.day === day && entry.place < place);
    if (before) count += entry.kind === 'supers on' ? entry.body.count : -entry.body.count;
    else if (count <= 0 && entry.kind === 'supers on' && entry.day <= (until ?? day)) return { on: true, since: entry.day };
  }
  return count > 0 ? { on: true, since: null } : { on: false };
}

export function supersWords(supers: Supers): string {
  if (!supers.on) return 'supers off';
  return supers.since === null ? 'supers on' : `supers on from ${dayInWords(supers.since)}`;
}

/** The harvests that may follow on a treatment: of these colonies, from its day on for a year. */
export function followsOn(harvest: Day, treated: Day): boolean {
  return harvest >= treated && harvest <= addDays(treated, 365);
}

