import { pairedRatio, rateRatio, type PairedRatio, type RatePair } from '#core/stats/rateRatio.ts';
import { studentTQuantile } from '#core/stats/studentTQuantile.ts';
import type { Interval } from '#core/stats/interval.ts';

/** How far mites fell from before a treatment to after it: 1 is all of them, below 0 they rose. */
export interface Efficacy {
  /** Colonies counted both before and after. */
  readonly colonies: number;
  /** Mites in 100 bees of those colonies together. */
  readonly before: number | null;
  readonly after: number | null;
  /** Null where no mite was found before: nothing can fall. */
  readonly fall: number | null;
  /** 95 %; the lower one may be -Infinity. */
  readonly limits: Interval | null;
  /** `corrected`: by colonies left untreated meanwhile; `colonies`: colonies that differ; `counts`: chance of counting alone. */
  readonly basis: 'none' | 'no mite before' | 'counts' | 'colonies' | 'corrected';
  readonly controls: number;
  /** With two or three colonies the range is very wide: words beside the figure. */
  readonly few: boolean;
}

const fewColonies = 4;

/**
 * Efficacy from counts of the same colonies before and after. With two or more untreated colonies counted on both sides as
 * well, corrected by them: 1 - (after x control before) / (before x control after), Henderson and Tilton 1955, J. Econ.
 * Entomol. 48:157-161 (from memory); the interval from both log ratios, with the t quantile of the smaller group. Else the
 * fall itself, which mites that bred meanwhile make look smaller than the treatment was.
 */
export function efficacy(treated: readonly RatePair[], untreated: readonly RatePair[] = []): Efficacy {
  const sum = pooled(treated);
  const rates = { before: sum.beforeOf > 0 ? (100 * sum.before) / sum.beforeOf : null, after: sum.afterOf > 0 ? (100 * sum.after) / sum.afterOf : null };
  const about = { colonies: treated.length, ...rates, controls: 0, few: treated.length > 0 && treated.length < fewColonies };
  if (treated.length === 0) return { ...about, fall: null, limits: null, basis: 'none' };
  if (sum.before === 0) return { ...about, fall: null, limits: null, basis: 'no mite before' };
  const paired = pairedRatio(treated);
  const control = pairedRatio(untreated);
  if (paired !== null && control !== null) return { ...about, ...hendersonTilton(paired, control), basis: 'corrected', controls: untreated.length };
  if (paired !== null) return { ...about, fall: 1 - paired.ratio, limits: fallen(paired.limits), basis: 'colonies' };
  const exact = rateRatio(sum);
  return { ...about, fall: exact === null ? null : 1 - exact.ratio, limits: exact === null ? null : fallen(exact.limits), basis: 'counts' };
}

/** 1 less the treated ratio over the untreated one, with its interval. */
export function hendersonTilton(treated: PairedRatio, control: PairedRatio): { fall: number; limits: Interval } {
  const ratio = treated.ratio / control.ratio;
  const spread = studentTQuantile(0.975, Math.min(treated.df, control.df)) * Math.hypot(treated.seLog, control.seLog);
  return { fall: 1 - ratio, limits: fallen({ lower: ratio * Math.exp(-spread), upper: ratio * Math.exp(spread) }) };
}

function pooled(pairs: readonly RatePair[]): RatePair {
  const sum = (of: (pair: RatePair) => number) => pairs.reduce((total, pair) => total + of(pair), 0);
  return { before: sum(({ before }) => before), beforeOf: sum(({ beforeOf }) => beforeOf), after: sum(({ after }) => after), afterOf: sum(({ afterOf }) => afterOf) };
}

function fallen({ lower, upper }: Interval): Interval {
  return { lower: 1 - upper, upper: 1 - lower };
}
