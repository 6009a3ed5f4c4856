import { risingRoot } from './bisect.ts';
import { clopperPearsonInterval } from './clopperPearsonInterval.ts';
import type { Interval } from './interval.ts';
import { studentTQuantile } from './studentTQuantile.ts';

/** Counts of one unit at two times, each with what was searched (bees in the sample). */
export interface RatePair {
  readonly before: number;
  readonly beforeOf: number;
  readonly after: number;
  readonly afterOf: number;
}

/** A ratio of rates, after over before, with its 95 % limits; `upper` is Infinity where nothing holds it. */
export interface RateRatio {
  readonly ratio: number;
  readonly limits: Interval;
}

/** Of several pairs: `dispersion` is Pearson chi-square over its degrees of freedom; `seLog` with it, never below 1. */
export interface PairedRatio extends RateRatio {
  readonly dispersion: number;
  readonly seLog: number;
  readonly df: number;
}

/**
 * Ratio of two Poisson rates with the exact 95 % interval: given the sum of both counts the later one is binomial, so the
 * limits are those of Clopper and Pearson (Sahai and Khurshid, Statistics in Epidemiology, from memory). Null where
 * neither time has a count. Counts not whole or negative, or nothing searched: RangeError.
 */
export function rateRatio(pair: RatePair): RateRatio | null {
  check(pair);
  const { before, beforeOf, after, afterOf } = pair;
  const shares = clopperPearsonInterval(after, before + after);
  if (shares === null) return null;
  const ratio = (share: number): number => (share >= 1 ? Infinity : (share / (1 - share)) * (beforeOf / afterOf));
  return { ratio: before === 0 ? Infinity : (after / before) * (beforeOf / afterOf), limits: { lower: ratio(shares.lower), upper: ratio(shares.upper) } };
}

/**
 * One ratio common to several pairs, allowing for pairs that differ by more than chance: quasi-binomial regression of the
 * later count on the sum of both, logit link, with the log ratio of what was searched as offset, intercept only; the
 * interval by the t quantile with the dispersion held at 1 or more. What a unit's own level is drops out. Null with fewer
 * than two pairs that have a count, or where all counts lie at one time.
 */
export function pairedRatio(pairs: readonly RatePair[]): PairedRatio | null {
  for (const pair of pairs) check(pair);
  const told = pairs.filter(({ before, after }) => before + after > 0);
  const later = told.reduce((sum, { after }) => sum + after, 0);
  const all = told.reduce((sum, { before, after }) => sum + before + after, 0);
  if (told.length < 2 || later === 0 || later === all) return null;
  const share = (log: number, { beforeOf, afterOf }: RatePair): number => 1 / (1 + (beforeOf / afterOf) * Math.exp(-log));
  const log = risingRoot((at) => told.reduce((sum, pair) => sum + (pair.before + pair.after) * share(at, pair), 0) - later);
  let pearson = 0;
  let information = 0;
  for (const pair of told) {
    const [of, p] = [pair.before + pair.after, share(log, pair)];
    information += of * p * (1 - p);
    pearson += (pair.after - of * p) ** 2 / (of * p * (1 - p));
  }
  const df = told.length - 1;
  const dispersion = pearson / df;
  const seLog = Math.sqrt(Math.max(1, dispersion) / information);
  const t = studentTQuantile(0.975, df);
  return { ratio: Math.exp(log), limits: { lower: Math.exp(log - t * seLog), upper: Math.exp(log + t * seLog) }, dispersion, seLog, df };
}

function check({ before, beforeOf, after, afterOf }: RatePair): void {
  const whole = (count: number) => Number.isSafeInteger(count) && count >= 0;
  if (!whole(before) || !whole(after) || !(beforeOf > 0) || !(afterOf > 0)) throw new RangeError(`counts of ${before} in ${beforeOf} and ${after} in ${afterOf}`);
}
