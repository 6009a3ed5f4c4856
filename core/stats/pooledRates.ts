import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { checkCounts } from './checkCounts.ts';
import { incompleteBetaInverse } from './incompleteBeta.ts';
import type { Interval } from './interval.ts';

/** A unit's losses, and the rate that would be expected of it if it were like all the others. */
export interface RateUnit extends AtRiskAndLost {
  readonly expected: number;
}

/** A rate pulled towards what is expected; `weight` is the share of the unit's own rate in it. */
export interface PooledRate {
  readonly pooled: number;
  readonly limits: Interval;
  readonly weight: number;
  /** Pooled over expected rate: by this, units are ranked. */
  readonly ratio: number;
}

export interface PooledRates {
  /** Correlation of two colonies of one unit beyond what its expected rate explains; the smaller, the more is pulled. */
  readonly rho: number;
  /** Weight of the expectation in colonies, (1 - rho) / rho. */
  readonly concentration: number;
  /** In the order given; null for a unit with nothing at risk. */
  readonly units: readonly (PooledRate | null)[];
}

const TAIL = 0.025;
const HIGHEST_RHO = 0.5;

/**
 * Partial pooling of loss rates (empirical Bayes, beta-binomial): each unit's rate varies about its expected rate
 * m as a beta distribution with shapes M m and M (1 - m), so that its pooled rate is (M m + lost) / (M + at risk):
 * a small unit is pulled far, a large one hardly. Limits are the middle 95 % of that beta distribution; they
 * ignore the error in M and are somewhat short for few units.
 *
 * M by moments as in `betaPriorByMoments` (Kleinman 1973, JASA 68:46-54, from memory), which this equals where all
 * units have the same expected rate; with rates of several seasons, the expected rate of each unit is that of the
 * seasons it was there, as the year's effect is taken off first. rho is held between 1/(1+N) and 0.5.
 * Null with fewer than three units at risk, or if nothing or everything was lost: there is nothing to judge a
 * spread by. Broken counts, or an expected rate outside [0, 1]: RangeError.
 */
export function pooledRates(units: readonly RateUnit[]): PooledRates | null {
  for (const { lost, atRisk, expected } of units) {
    checkCounts(lost, atRisk);
    if (!(expected >= 0 && expected <= 1)) throw new RangeError(`an expected rate lies between 0 and 1, not at ${expected}`);
  }
  const used = units.filter(({ atRisk }) => atRisk > 0);
  const sum = (of: (unit: RateUnit) => number): number => used.reduce((total, unit) => total + of(unit), 0);
  const k = used.length;
  const N = sum(({ atRisk }) => atRisk);
  const Y = sum(({ lost }) => lost);
  if (k < 3 || Y === 0 || Y === N) return null;
  const p = Y / N;
  const S = sum(({ lost, atRisk, expected }) => atRisk * (lost / atRisk - expected) ** 2);
  const denominator = N - sum(({ atRisk }) => atRisk ** 2) / N - (k - 1);
  const raw = denominator > 1e-9 * N ? (S / (p * (1 - p)) - (k - 1)) / denominator : 0;
  const rho = Math.min(HIGHEST_RHO, Math.max(1 / (1 + N), raw));
  const concentration = (1 - rho) / rho;
  return { rho, concentration, units: units.map((unit) => (unit.atRisk === 0 ? null : pooledRate(unit, concentration))) };
}

function pooledRate({ lost, atRisk, expected }: RateUnit, M: number): PooledRate {
  // A season in which all or none were lost expects exactly that; half a colony keeps the shapes positive.
  const m = Math.min(1 - 0.5 / (atRisk + 1), Math.max(0.5 / (atRisk + 1), expected));
  const [a, b] = [M * m + lost, M * (1 - m) + atRisk - lost];
  const pooled = a / (a + b);
  return {
    pooled,
    limits: { lower: incompleteBetaInverse(TAIL, a, b), upper: incompleteBetaInverse(1 - TAIL, a, b) },
    weight: atRisk / (M + atRisk),
    ratio: pooled / m,
  };
}
