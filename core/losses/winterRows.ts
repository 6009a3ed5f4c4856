import { addDays, dayNumber, type Day } from '#shared/days.ts';
import { periodDays, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyId } from '#shared/brands.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { winterCovariates, type CovariateFacts, type WinterColony } from './winterCovariates.ts';

/** `left`: sold, given away or united during the winter, so that its fate is not known. */
export type Fate = 'lost' | 'lived' | 'left';

/** A colony in one winter: what it went in with and what became of it. Days count from the winter's first. */
export interface WinterRow {
  readonly colony: WinterColony;
  readonly yard: string;
  readonly season: Season;
  readonly fate: Fate;
  readonly entry: number;
  readonly exit: number;
  /** Washes of the season and the winter, per 100 bees, in the order of days. */
  readonly washes: readonly { readonly time: number; readonly value: number }[];
  readonly causes: readonly string[];
}

export interface WinterFacts extends CovariateFacts {
  readonly today: Day;
  readonly codeOf: (yard: WinterColony['yard']) => string;
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  /** The winter's colonies, where they are worked out already. */
  readonly covariates?: (season: Season) => readonly WinterColony[];
}

/** The colonies that went into a winter, with their fate up to its last day or the as-of day. */
export function winterRows(facts: WinterFacts, season: Season): WinterRow[] {
  const { from, until } = periodDays(season, 'winter', facts.borders);
  const { from: seasonStart } = periodDays(season, 'year', facts.borders);
  const tomorrow = addDays(facts.asOf, 1);
  const stop = tomorrow < until ? tomorrow : until;
  const zero = dayNumber(from);
  return (facts.covariates?.(season) ?? winterCovariates(facts, season)).flatMap((colony) => {
    const state = facts.byId.get(colony.id);
    if (state === undefined || !colony.wintered) return [];
    const ended = state.end !== null && state.end < stop;
    const fate: Fate = !ended ? 'lived' : state.how === 'lost' || state.how === 'absconded' ? 'lost' : 'left';
    const exit = dayNumber(ended && state.end !== null ? state.end : stop) - zero;
    return [{
      colony, yard: facts.codeOf(colony.yard), season, fate, entry: 0,
      // What ends on the winter's first day was there as it began: half a day keeps it in.
      exit: exit > 0 ? exit : 0.5,
      washes: state.miteCounts.flatMap((one) => (one.day >= seasonStart && one.day < stop && one.bees > 0 ? [{ time: dayNumber(one.day) - zero, value: (100 * one.mites) / one.bees }] : [])),
      causes: fate === 'lost' ? state.causes : [],
    }];
  });
}

/** Winters that are over and in or after which something was still written down: of the others the fates are not known. */
export function wintersKnown(seasons: readonly Season[], lastRecord: Day | null, asOf: Day, today: Day, borders: Borders): Season[] {
  return seasons.filter((season) => {
    const { from, until } = periodDays(season, 'winter', borders);
    return lastRecord !== null && lastRecord >= from && (today >= until || addDays(asOf, 1) >= until) && asOf >= from;
  });
}
