import type { LossRow } from '#shared/contract/losses.ts';
import type { United } from '#shared/contract/values.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, type Borders, type Period, type Season } from '#shared/seasons.ts';
import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { averageLoss } from '#core/stats/averageLoss.ts';
import type { Interval } from '#core/stats/interval.ts';
import { proportion } from '#core/stats/proportion.ts';
import { quasiBinomialInterval } from '#core/stats/quasiBinomialInterval.ts';
import { usLoss, usLossCombinedAsRemoval, type UnitCounts } from './lossDefinitions.ts';
import type { SeasonYard } from './seasonLedger.ts';
import type { YardCounts } from './yardCounts.ts';

/**
 * Loss of every yard and of all together in one period of a season, by the survey rule, with intervals. A move
 * between yards counts as an increase there and a removal here; an absconded colony counts as lost.
 */
export function lossRows(season: Season, period: Period, yards: readonly SeasonYard[], united: United, asOf: Day, today: Day, borders: Borders): LossRow[] {
  const all = wholeLossRow(season, period, yards, united, asOf, today, borders);
  if (all === null) return [];
  const { complete } = all;
  const single = yards.map(({ yard, counts }): LossRow => {
    const { atRisk, lost } = ruleOf(united)(unitCounts(yard.code, counts[period]));
    const own = proportion(lost, atRisk);
    return {
      season, period, united, complete, group: yard.code, atRisk, lost, rate: own.rate, wilson: pair(own.wilson), clopperPearson: pair(own.clopperPearson),
      quasi: null, quasiWhy: 'One yard alone cannot show how much yards differ.', average: null,
    };
  });
  return [all, ...single];
}

/** The row of all yards together; null before the period began. */
export function wholeLossRow(season: Season, period: Period, yards: readonly SeasonYard[], united: United, asOf: Day, today: Day, borders: Borders): LossRow | null {
  const { from, until } = periodDays(season, period, borders);
  if (asOf < from) return null;
  const units = yards.map(({ yard, counts }) => ruleOf(united)(unitCounts(yard.code, counts[period])));
  const total = proportion(units.reduce((sum, { lost }) => sum + lost, 0), units.reduce((sum, { atRisk }) => sum + atRisk, 0));
  const quasi = quasiBinomialInterval(units);
  const average = averageLoss(units);
  return {
    season, period, united, complete: today >= until || addDays(asOf, 1) >= until,
    group: 'all',
    atRisk: total.of,
    lost: total.count,
    rate: total.rate,
    wilson: pair(total.wilson),
    clopperPearson: pair(total.clopperPearson),
    quasi: quasi.defined ? { ...bounds(quasi.ciTDispersionFloor1), dispersion: quasi.dispersion, units: quasi.units, df: quasi.df } : null,
    quasiWhy: quasi.defined ? null : whyNot(units),
    average: average.mean === null || average.median === null ? null : { units: average.units, mean: average.mean, ci: pair(average.ciT), median: average.median },
  };
}

function ruleOf(united: United): (unit: UnitCounts) => AtRiskAndLost {
  return united === 'lost' ? usLoss : usLossCombinedAsRemoval;
}

/** Counts of one yard in the form that the published loss definitions take. */
export function unitCounts(unit: string, counts: YardCounts): UnitCounts {
  return {
    unit, start: counts.opening, splits: counts.splits, purchased: counts.packages + counts.nucs + counts.boughtColonies, swarms: counts.swarms,
    movedIn: counts.movedIn, movedOut: counts.movedOut, sold: counts.sold, given: counts.given, combined: counts.combined, dead: counts.lost, queen: 0, disaster: 0,
    absconded: counts.absconded, end: counts.closing,
  };
}

function whyNot(units: readonly AtRiskAndLost[]): string {
  const atRisk = units.filter((unit) => unit.atRisk > 0);
  if (atRisk.length === 0) return 'No colonies were at risk.';
  if (atRisk.length === 1) return 'Only one yard had colonies, so how much yards differ cannot be judged.';
  return atRisk.every((unit) => unit.lost === 0) ? 'Nothing was lost, so how much yards differ cannot be judged.' : 'Everything was lost, so how much yards differ cannot be judged.';
}

function pair(interval: Interval | null): [number, number] | null {
  return interval === null ? null : [interval.lower, interval.upper];
}

function bounds(interval: Interval): { lower: number; upper: number } {
  return { lower: interval.lower, upper: interval.upper };
}
