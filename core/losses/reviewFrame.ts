import type { Day } from '#shared/days.ts';
import { dayInWords } from '#shared/days.ts';
import { aliveBefore } from '#core/journal/colonyState.ts';
import { periodDays, seasonName, seasonOf, type Season } from '#shared/seasons.ts';
import { seasonsOf, type ReviewFacts } from './reviewFacts.ts';

/** Which season is looked at, and what the record knows of it. */
export interface ReviewFrame {
  /** Oldest first; empty for an empty book. */
  readonly seasons: readonly Season[];
  readonly season: Season;
  /** Last day on which anything was written down of a colony; null for an empty book. */
  readonly lastRecord: Day | null;
  /** Why nothing can be said of the season's winter, where nothing was written down in it or after it; else null. */
  readonly silence: string | null;
}

/** The season asked for, or the last one whose winter had begun when the last record was made. */
export function reviewFrame(facts: ReviewFacts, chosen: Season | undefined): ReviewFrame {
  const { states, borders, asOf } = facts;
  const seasons = seasonsOf(facts);
  const lastRecord = states.reduce<Day | null>((last, state) => (last === null || state.lastDay > last ? state.lastDay : last), null);
  const begun = seasons.filter((season) => periodDays(season, 'winter', borders).from <= (lastRecord ?? asOf));
  const season = chosen !== undefined && seasons.includes(chosen) ? chosen : (begun.at(-1) ?? seasons.at(-1) ?? seasonOf(asOf, borders));
  return { seasons, season, lastRecord, silence: silenceOf(lastRecord, season, facts) };
}

/** Where nothing was written down in a winter, a count of no losses would be a guess. */
function silenceOf(lastRecord: Day | null, season: Season, { states, borders, asOf }: ReviewFacts): string | null {
  const { from } = periodDays(season, 'winter', borders);
  if (lastRecord === null || lastRecord >= from) return null;
  if (asOf < from || !states.some((state) => aliveBefore(state, from))) return null;
  return `Nothing about a colony is recorded for the winter of ${seasonName(season)}; the last record is of ${dayInWords(lastRecord)}.`;
}
