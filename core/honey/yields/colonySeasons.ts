import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import { gramsPerPound } from '#shared/units.ts';
import { aliveOn, type ColonyState, type Reign } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { QueenAgeClass } from '#core/losses/winterCovariates.ts';
import type { HarvestFact } from '../lots/lotFacts.ts';

/** All that one colony gave in one season, with what it was at its first harvest of it. */
export interface ColonySeason {
  readonly colony: ColonyId;
  readonly season: Season;
  readonly lb: number;
  readonly days: readonly Day[];
  readonly yard: YardId;
  readonly queenAge: QueenAgeClass;
  /** Where its queen came from, as written down. */
  readonly line: string | null;
  readonly source: ColonyState['origin'];
}

/** Pounds by colony and season; colonies that were not harvested are left out, as USDA NASS does it. Linear in harvests. */
export function colonySeasons(states: readonly ColonyState[], borders: Borders): ColonySeason[] {
  return states.flatMap((state) =>
    [...Map.groupBy(state.harvests, ({ day }) => seasonOf(day, borders))].flatMap(([season, own]): ColonySeason[] => {
      const [first] = own;
      if (first === undefined) return [];
      const queen = queenOn(state, first.day);
      return [{
        colony: state.id, season, lb: own.reduce((sum, { grams }) => sum + grams, 0) / gramsPerPound, days: [...new Set(own.map(({ day }) => day))],
        yard: yardOn(state, first.day) ?? first.yard, queenAge: ageOf(queen, season), line: queen?.source ?? null, source: state.origin,
      }];
    }),
  );
}

/** A yard whose honey was weighed together in a season: how much, and the colonies that gave it. */
export interface YardSeason {
  readonly yard: YardId;
  readonly season: Season;
  readonly lb: number;
  readonly days: readonly Day[];
  readonly colonies: readonly ColonyId[];
}

export function yardSeasons(harvests: readonly HarvestFact[], coloniesOf: (harvest: HarvestFact) => readonly ColonyId[], borders: Borders): YardSeason[] {
  const whole = harvests.filter(({ colony, yard }) => colony === null && yard !== null);
  return [...Map.groupBy(whole, ({ yard, day }) => `${yard} ${seasonOf(day, borders)}`).values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined || first.yard === null) return [];
    return [{
      yard: first.yard, season: seasonOf(first.day, borders), lb: own.reduce((sum, { net }) => sum + net, 0) / gramsPerPound,
      days: [...new Set(own.map(({ day }) => day))], colonies: [...new Set(own.flatMap((one) => [...coloniesOf(one)]))],
    }];
  });
}

/** Colonies whose supers came off in a yard on a day; what `supers off` entries tell. */
export type SupersOff = ReadonlyMap<string, ReadonlySet<ColonyId>>;

export const dayInYard = (yard: YardId, day: Day) => `${yard} ${day}`;

/**
 * The colonies that a harvest came from: the one it names; of a yard weighed together those whose supers came off there that
 * day, and where none is written down every colony that stood there.
 */
export function harvestColonies(states: readonly ColonyState[], off: SupersOff): (harvest: Pick<HarvestFact, 'colony' | 'yard' | 'day'>) => readonly ColonyId[] {
  return ({ colony, yard, day }) => {
    if (colony !== null) return [colony];
    if (yard === null) return [];
    const known = off.get(dayInYard(yard, day));
    if (known !== undefined && known.size > 0) return [...known];
    return states.filter((state) => (aliveOn(state, day) || state.end === day) && yardOn(state, day) === yard).map(({ id }) => id);
  };
}

export type SupersEntry = { readonly entry: EntryId; readonly day: Day; readonly colony: ColonyId };

export function supersOffBy(entries: readonly SupersEntry[], byId: ReadonlyMap<ColonyId, ColonyState>): SupersOff {
  const found = new Map<string, Set<ColonyId>>();
  for (const { day, colony } of entries) {
    const state = byId.get(colony);
    const yard = state === undefined ? null : yardOn(state, day);
    if (yard === null) continue;
    const key = dayInYard(yard, day);
    const own = found.get(key) ?? new Set();
    found.set(key, own);
    own.add(colony);
  }
  return found;
}

function queenOn(state: ColonyState, day: Day): Reign | null {
  return state.reigns.findLast(({ since, until }) => since <= day && (until === null || until > day)) ?? null;
}

function ageOf(queen: Reign | null, season: Season): QueenAgeClass {
  if (queen?.year == null) return 'unknown';
  const age = season - queen.year;
  return age <= 0 ? 'this year' : age === 1 ? 'last year' : 'older';
}
