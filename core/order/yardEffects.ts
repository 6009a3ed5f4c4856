import type { YardId } from '#shared/brands.ts';
import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';

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

/**
 * Partial pooling of yards over seasons. Each winter's own rate is taken out first, so that a yard that stood only in
 * hard winters is not called a bad yard: expected losses are the winters' rates at that yard's numbers (indirect
 * standardisation). The log ratios are pooled with the between-yard variance of DerSimonian and Laird 1986 (Controlled
 * Clinical Trials 7:177-188, from memory); their own variance is 1/(lost + 0.5), wider by the spread that yards of one
 * winter show among themselves. Yards without a winter have effect 0 and the between-yard spread.
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
  const known = seen.filter(({ winters }) => winters > 0).map((one) => ({ ...one, variance: spread / (one.lost + 0.5) }));
  const weights = known.map(({ variance }) => 1 / variance);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const centre = known.reduce((sum, { log }, at) => sum + log * (weights[at] as number), 0) / total;
  const q = known.reduce((sum, { log }, at) => sum + (weights[at] as number) * (log - centre) ** 2, 0);
  const scale = total - weights.reduce((sum, weight) => sum + weight ** 2, 0) / total;
  // Under three yards their spread cannot be told from chance.
  const between = known.length < 3 || !(scale > 0) ? 0 : Math.max(0, (q - (known.length - 1)) / scale);
  return seen.map(({ log, ...one }) => {
    if (one.winters === 0) return { ...one, shrinkage: 1, effect: 0, sd: Math.sqrt(between) };
    const variance = spread / (one.lost + 0.5);
    const shrinkage = variance / (variance + between);
    return { ...one, shrinkage, effect: (1 - shrinkage) * (log - centre), sd: Math.sqrt((1 - shrinkage) * variance) };
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
