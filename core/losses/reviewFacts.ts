import { addDays, type Day } from '#shared/days.ts';
import { seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';

export interface ReviewFacts {
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly borders: Borders;
  /** The last day the record speaks of. */
  readonly asOf: Day;
  /** The clock's day: tells which periods are over. */
  readonly today: Day;
}

/** All seasons from the first colony to the as-of day, oldest first; empty for an empty book. */
export function seasonsOf({ states, asOf, borders }: ReviewFacts): Season[] {
  const first = states.reduce<Day | null>((earliest, state) => (earliest === null || state.start < earliest ? state.start : earliest), null);
  if (first === null || first > asOf) return [];
  const seasons: Season[] = [];
  for (let season = seasonOf(first, borders); season <= seasonOf(asOf, borders); season += 1) seasons.push(season);
  return seasons;
}

/** A period that ends before `until` is over once its last day has passed. */
export function isOver(until: Day, { asOf, today }: Pick<ReviewFacts, 'asOf' | 'today'>): boolean {
  return today >= until || addDays(asOf, 1) >= until;
}
