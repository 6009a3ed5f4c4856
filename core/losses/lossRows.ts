import type { LossRow } from '#shared/contract/losses.ts';
import type { United } from '#shared/contract/values.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, type Borders, type Period, type Season } from '#shared/seasons.ts';
import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import type { Interval } from '#core/stats/interval.ts';
import { proportion } from '#core/stats/proportion.ts';
import { usLoss, usLossCombinedAsRemoval, type UnitCounts } from './lossDefinitions.ts';
import { lossRate } from './lossRate.ts';
import type { SeasonYard } from './seasonLedger.ts';
import type { YardCounts } from './yardCounts.ts';

/**
 * Loss of every yard and of all together in one period of a season, by the survey rule, with intervals. A move
 * between yards counts as an increase there and a removal here; an absconded colony counts as lost.
 */
export function lossRows(season: Season, period: Period, yards: readonly SeasonYard[], united: United, asOf: Day, today: Day, borders: Borders): LossRow[] {
  const { from, until } = periodDays(season, period, borders);
  const complete = today >= until || addDays(asOf, 1) >= until;
  if (asOf < from) return [];
  const rule = united === 'lost' ? usLoss : usLossCombinedAsRemoval;
  const units = yards.map(({ yard, counts }) => rule(unitCounts(yard.code, counts[period])));
  const head = { season, period, united, complete };
  const summary = lossRate(units);
  const { quasi, average } = summary;
  const all: LossRow = {
    ...head,
    group: 'all',
    atRisk: summary.totalAtRisk,
    lost: summary.totalLost,
    rate: summary.total.rate,
    wilson: pair(summary.total.wilson),
    clopperPearson: pair(summary.total.clopperPearson),
    quasi: quasi.defined ? { ...bounds(quasi.ciTDispersionFloor1), dispersion: quasi.dispersion, units: quasi.units, df: quasi.df } : null,
    quasiWhy: quasi.defined ? null : whyNot(units),
    average: average.mean === null || average.median === null ? null : { units: average.units, mean: average.mean, ci: pair(average.ciT), median: average.median },
  };
  const single = yards.map(({ yard }, at): LossRow => {
    const { atRisk, lost } = units[at] ?? { atRisk: 0, lost: 0 };
    const own = proportion(lost, atRisk);
    return {
      ...head, group: yard.code, atRisk, lost, rate: own.rate, wilson: pair(own.wilson), clopperPearson: pair(own.clopperPearson),
      quasi: null, quasiWhy: 'One yard alone cannot show how much yards differ.', average: null,
    };
  });
  return [all, ...single];
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
