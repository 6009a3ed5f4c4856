import type { LedgerRow } from '#shared/contract/losses.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, type Borders, type Period, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { addCounts, balances, yardCounts, type YardCounts } from './yardCounts.ts';

/** A season's counts for one yard, by period. */
export interface SeasonYard {
  readonly yard: Yard;
  readonly counts: Readonly<Record<Period, YardCounts>>;
}

/** Counts of every yard by period, no further than the as-of day. */
export function seasonYards(states: readonly ColonyState[], yards: readonly Yard[], season: Season, asOf: Day, borders: Borders): SeasonYard[] {
  const ids = yards.map((yard) => yard.id);
  const tomorrow = addDays(asOf, 1);
  // Most colonies of a long book lived in other seasons; each scan below then has only this one's to look at.
  const year = periodDays(season, 'year', borders);
  const own = states.filter((state) => state.start < year.until && (state.end === null || state.end >= year.from));
  const byPeriod = (['summer', 'winter', 'year'] as const).map((period) => {
    const { from, until } = periodDays(season, period, borders);
    const last = tomorrow < until ? tomorrow : until;
    return [period, yardCounts(own, ids, from, last < from ? from : last)] as const;
  });
  return yards.map((yard) => ({
    yard,
    counts: Object.fromEntries(byPeriod.map(([period, counts]) => [period, counts.get(yard.id)])) as Record<Period, YardCounts>,
  }));
}

/** The account of a season, one row a yard. */
export function ledgerRows(season: Season, all: readonly SeasonYard[]): LedgerRow[] {
  return all.map(({ yard, counts }) => ledgerRow(season, yard.code, counts));
}

/** The sum of the yards; moves between them are in both columns. */
export function ledgerTotal(season: Season, all: readonly SeasonYard[]): LedgerRow {
  const sum = (period: Period) => addCounts(all.map(({ counts }) => counts[period]));
  return ledgerRow(season, 'all', { summer: sum('summer'), winter: sum('winter'), year: sum('year') });
}

export function ledgerBalances(all: readonly SeasonYard[]): boolean {
  return all.every(({ counts }) => balances(counts.year) && balances(counts.summer) && balances(counts.winter) && counts.summer.lost + counts.winter.lost === counts.year.lost);
}

function ledgerRow(season: Season, yard: string, { summer, winter, year }: Readonly<Record<Period, YardCounts>>): LedgerRow {
  const { lost: _, ...account } = year;
  return { season, yard, ...account, lostSummer: summer.lost, lostWinter: winter.lost, aliveOn1October: summer.closing };
}
