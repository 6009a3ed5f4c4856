import { dayFromIso, monthDayOf, yearOf, type Day } from './days.ts';

/** A season is named by the year it begins in; it runs from `seasonStart` to the day before it a year later. */
export type Season = number;

export type Period = 'summer' | 'winter' | 'year';

/** The borders of season and winter as `MM-DD`; both are house rules. */
export interface Borders {
  readonly seasonStart: string;
  readonly winterStart: string;
}

/** 1 April and 1 October: US national survey (winter 1 October to 1 April, year 1 April to 1 April). */
export const defaultBorders: Borders = { seasonStart: '04-01', winterStart: '10-01' };

export function seasonOf(of: Day, borders: Borders = defaultBorders): Season {
  return monthDayOf(of) >= borders.seasonStart ? yearOf(of) : yearOf(of) - 1;
}

/** First day of a period and the first day after it (half-open). */
export function periodDays(season: Season, period: Period, borders: Borders = defaultBorders): { from: Day; until: Day } {
  const start = on(season, borders.seasonStart);
  const next = on(season + 1, borders.seasonStart);
  const winter = borders.winterStart >= borders.seasonStart ? on(season, borders.winterStart) : on(season + 1, borders.winterStart);
  switch (period) {
    case 'summer':
      return { from: start, until: winter };
    case 'winter':
      return { from: winter, until: next };
    case 'year':
      return { from: start, until: next };
  }
}

/** "2025-26" with an en dash, as people write a season. */
export function seasonName(season: Season): string {
  return `${season}–${String((season + 1) % 100).padStart(2, '0')}`;
}

function on(year: number, monthDay: string): Day {
  const found = dayFromIso(`${String(year).padStart(4, '0')}-${monthDay}`);
  if (found === null) throw new RangeError(`a border of the season is no day of the year ${year}: ${monthDay}`);
  return found;
}
