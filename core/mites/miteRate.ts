import { clopperPearsonInterval } from '#core/stats/clopperPearsonInterval.ts';
import { gammaUpperTail } from '#core/stats/incompleteGamma.ts';
import type { Interval } from '#core/stats/interval.ts';
import { poissonInterval } from '#core/stats/poissonInterval.ts';

/** One wash: mites found on so many bees. */
export interface MiteWash {
  readonly mites: number;
  readonly bees: number;
}

/** A rate per 100 bees with its 95 % limits. */
export interface RatePer100 {
  readonly per100: number;
  readonly limits: Interval;
}

/**
 * Mites per 100 bees with the exact Poisson interval. A count of 0 still has an upper limit: it does not mean
 * "mite free". Mites a whole number from 0 up, bees a number above 0, else RangeError.
 */
export function miteRate({ mites, bees }: MiteWash): RatePer100 {
  checkBees(bees);
  const { lower, upper } = poissonInterval(mites);
  return { per100: (100 * mites) / bees, limits: { lower: (100 * lower) / bees, upper: (100 * upper) / bees } };
}

/** As `miteRate`, but by the binomial (Clopper-Pearson) interval: null if there are more mites than bees. */
export function miteRateBinomial({ mites, bees }: MiteWash): RatePer100 | null {
  checkBees(bees);
  const limits = Number.isSafeInteger(bees) && mites <= bees ? clopperPearsonInterval(mites, bees) : null;
  if (limits === null) return null;
  return { per100: (100 * mites) / bees, limits: { lower: 100 * limits.lower, upper: 100 * limits.upper } };
}

/**
 * Probability that the colony's rate lies above `thresholdPer100`: upper tail of Gamma(mites + 1/2, bees), the
 * posterior of a Poisson rate under Jeffreys' prior. `dispersion` (1 or more) makes it wider where colonies
 * of a yard differ by more than chance.
 */
export function probabilityAbove({ mites, bees }: MiteWash, thresholdPer100: number, dispersion = 1): number {
  checkBees(bees);
  if (!(dispersion >= 1)) throw new RangeError(`a dispersion is 1 or more, not ${dispersion}`);
  return gammaUpperTail((bees / dispersion) * (thresholdPer100 / 100), mites / dispersion + 0.5);
}

function checkBees(bees: number): void {
  if (!(bees > 0 && Number.isFinite(bees))) throw new RangeError(`a wash has more than 0 bees, not ${bees}`);
}
