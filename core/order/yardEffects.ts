import type { YardId } from '#shared/brands.ts';
import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { pooledEffects } from '#core/stats/pooledEffects.ts';

/** Losses of one yard in one winter. */
export interface YardWinter extends AtRiskAndLost {
  readonly yard: YardId;
  readonly season: number;
}

/**
 * How a yard's losses compare with the whole operation's in the same winters: `lost` against `expected`, and the
 * logarithm of their ratio pulled towards 0 by `shrinkage` (0 left alone, 1 all the way) with its standard deviation.
 */
export interface YardEffect {
  readonly yard: YardId;
  readonly winters: number;
  readonly atRisk: number;
  readonly lost: number;
  readonly expected: number;
  readonly shrinkage: number;
  readonly effect: number;
  readonly sd: number;
}

/** Before any record: two yards seldom differ by more than a factor of e in their losses. A choice of this program. */
const YARD_SCALE = 0.5;

/**
 * Partial pooling of yards over seasons. Each winter's own rate is taken out first, so that a yard that stood only in
 * hard winters is not called a bad yard: expected losses are the winters' rates at that yard's numbers (indirect
 * standardisation). The log ratios, with variance 1/(lost + 0.5) made wider by the spread that yards of one winter show
 * among themselves, are pooled over an unknown spread between yards (see `pooledEffects`). Yards without a winter have
 * effect 0 and that spread.
 */
export function yardEffects(yards: readonly YardId[], record: readonly YardWinter[]): YardEffect[] {
  const rates = new Map<number, AtRiskAndLost>();
  for (const { season, atRisk, lost } of record) {
    const before = rates.get(season) ?? { atRisk: 0, lost: 0 };
    rates.set(season, { atRisk: before.atRisk + atRisk, lost: before.lost + lost });
  }
  const rateOf = (season: number) => {
    const { atRisk, lost } = rates.get(season) ?? { atRisk: 0, lost: 0 };
    return atRisk === 0 ? 0 : lost / atRisk;
  };
  const seen = yards.map((yard) => {
    const own = record.filter((one) => one.yard === yard && one.atRisk > 0);
    const lost = own.reduce((sum, one) => sum + one.lost, 0);
    const expected = own.reduce((sum, one) => sum + one.atRisk * rateOf(one.season), 0);
    return { yard, winters: own.length, atRisk: own.reduce((sum, one) => sum + one.atRisk, 0), lost, expected, log: Math.log((lost + 0.5) / (expected + 0.5)) };
  });
  const spread = dispersion(record, rateOf);
  const known = seen.filter(({ winters }) => winters > 0);
  const pooled = pooledEffects(known.map(({ log, lost }) => ({ value: log, variance: spread / (lost + 0.5) })), YARD_SCALE);
  return seen.map(({ log: _log, ...one }) => {
    const own = pooled.groups[known.findIndex(({ yard }) => yard === one.yard)];
    return own === undefined ? { ...one, shrinkage: 1, effect: 0, sd: Math.sqrt(pooled.spread2) } : { ...one, ...own };
  });
}

/** Pearson's dispersion of yards about their winter's rate, not below 1. */
function dispersion(record: readonly YardWinter[], rateOf: (season: number) => number): number {
  let sum = 0;
  let cells = 0;
  const winters = new Set<number>();
  for (const { season, atRisk, lost } of record) {
    const rate = rateOf(season);
    const variance = atRisk * rate * (1 - rate);
    if (variance <= 0) continue;
    sum += (lost - atRisk * rate) ** 2 / variance;
    cells += 1;
    winters.add(season);
  }
  const free = cells - winters.size;
  return free > 0 ? Math.max(1, sum / free) : 1;
}
