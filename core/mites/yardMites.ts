import type { Interval } from '#core/stats/interval.ts';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';
import type { MiteWash, RatePer100 } from './miteRate.ts';

/** Mites of a yard from several colonies. Rates per 100 bees; `betweenVariance` on the scale of mites per bee. */
export interface YardMites {
  readonly per100: number;
  /** Pearson chi-square over degrees of freedom: mites clump, so well above 1 is usual. */
  readonly dispersion: number;
  /** On the log scale, with the dispersion as found, and with one of at least 1: the interval to show. */
  readonly seLog: number;
  readonly limits: Interval;
  readonly seLogFloor1: number;
  readonly limitsFloor1: Interval;
  /** Ratio estimator for a yard of known size: `factor` is the finite-population factor (1 if unknown). */
  readonly ratio: { readonly se100: number; readonly limits: Interval; readonly factor: number };
  readonly betweenVariance: number;
  /** Squared coefficient of variation of one colony's rate. */
  readonly cv2: number;
}

/** How many colonies to wash for a relative precision: as computed, for the yard's size, and in whole colonies. */
export interface ColoniesToWash {
  readonly raw: number;
  readonly forYard: number;
  readonly colonies: number;
}

/** All washes of a yard as one. */
export function pooledWash(washes: readonly MiteWash[]): MiteWash {
  return {
    mites: washes.reduce((sum, { mites }) => sum + mites, 0),
    bees: washes.reduce((sum, { bees }) => sum + bees, 0),
  };
}

/**
 * Mite rate of a yard from washes of several of its `apiarySize` colonies (null: not known), allowing for
 * colonies that differ: quasi-Poisson interval with log link and the t quantile, ratio estimator with the
 * finite-population factor (Cochran, Sampling Techniques, chapter 6, from memory), variance between colonies
 * by moments. Null with fewer than two washes or no mite at all: then only the pooled upper limit is known.
 * With two or three washes the interval is very wide. A yard smaller than its washes: RangeError.
 */
export function yardMites(washes: readonly MiteWash[], apiarySize: number | null): YardMites | null {
  const k = washes.length;
  if (apiarySize !== null && apiarySize < k) throw new RangeError(`${k} colonies were washed in a yard of ${apiarySize}`);
  const { mites: X, bees: N } = pooledWash(washes);
  if (k < 2 || X === 0) return null;
  const r = X / N;
  const t = studentTQuantile(0.975, k - 1);
  const squares = (weigh: (wash: MiteWash) => number): number =>
    washes.reduce((sum, wash) => sum + (wash.mites - wash.bees * r) ** 2 * weigh(wash), 0);
  const dispersion = squares(({ bees }) => 1 / (bees * r)) / (k - 1);
  const seLog = Math.sqrt(dispersion / X);
  const seLogFloor1 = Math.sqrt(Math.max(1, dispersion) / X);
  const around = (se: number): Interval => ({ lower: 100 * r * Math.exp(-t * se), upper: 100 * r * Math.exp(t * se) });

  const factor = apiarySize === null ? 1 : 1 - k / apiarySize;
  const se100 = (100 * Math.sqrt((factor * squares(() => 1)) / (k - 1) / k)) / (N / k);
  const beesSquared = washes.reduce((sum, { bees }) => sum + bees ** 2, 0);
  const betweenVariance = Math.max(0, (squares(({ bees }) => 1 / bees) - (k - 1) * r) / (N - beesSquared / N));
  return {
    per100: 100 * r,
    dispersion,
    seLog,
    limits: around(seLog),
    seLogFloor1,
    limitsFloor1: around(seLogFloor1),
    ratio: { se100, limits: { lower: Math.max(0, 100 * r - t * se100), upper: 100 * r + t * se100 }, factor },
    betweenVariance,
    cv2: (r / (N / k) + betweenVariance) / r ** 2,
  };
}

/**
 * Colonies to wash so that standard error over mean is `precision` (0.25 is a usual figure for management
 * decisions in pest sampling, from memory): cv2 / precision^2, less in a small yard, rounded up.
 */
export function coloniesToWash(cv2: number, precision: number, apiarySize: number | null): ColoniesToWash {
  if (!(precision > 0)) throw new RangeError(`a precision is positive, not ${precision}`);
  const raw = cv2 / precision ** 2;
  const forYard = apiarySize === null ? raw : raw / (1 + raw / apiarySize);
  // A hair above a whole number is rounding, not another colony.
  const colonies = Math.ceil(forYard - 1e-9);
  return { raw, forYard, colonies: apiarySize === null ? colonies : Math.min(apiarySize, colonies) };
}

/** Rate and limits in one, for showing. */
export function shownYardRate(yard: YardMites): RatePer100 {
  return { per100: yard.per100, limits: yard.limitsFloor1 };
}
