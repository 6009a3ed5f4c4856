import { risingRoot } from './bisect.ts';
import { compensatedSum } from './compensatedSum.ts';
import type { Interval } from './interval.ts';
import { checkTwoByTwo, type TwoByTwo } from './twoByTwo.ts';

const TAIL = 0.025;
/** Tables count as "as unlikely as this one" within this factor: the customary guard against rounding. */
const AS_UNLIKELY = 1 + 1e-7;

/**
 * Fisher's exact test. `oddsRatio` is the conditional maximum-likelihood estimate with its exact 95 % limits;
 * Infinity where the table is at its end; `oddsRatio` null if the margins leave only one table (the limits then
 * are 0 and Infinity: nothing is known).
 */
export interface FisherExact {
  readonly p: number;
  readonly oddsRatio: number | null;
  readonly limits: Interval;
}

/**
 * Fisher's exact test of a 2x2 table, two-sided: with the margins fixed, the probabilities of all tables no
 * likelier than the observed one are added up.
 *
 * Source: Fisher 1935; limits after Cornfield 1956 (from memory): the odds ratios at which the observed count
 * or more (or less) has probability 0.025, as roots to the last digit. Broken cells: RangeError. O(n).
 */
export function fisherExactTwoByTwo(table: TwoByTwo): FisherExact {
  checkTwoByTwo(table);
  const { a, b, c, d } = table;
  const logWeights = hypergeometricLogWeights(a + b, c + d, a + c);
  const lowest = Math.max(0, a - d);
  const at = a - lowest;
  const last = logWeights.length - 1;
  const central = probabilities(logWeights, 0);
  const observed = central[at] as number;
  const p = Math.min(1, total(central.filter((probability) => probability <= observed * AS_UNLIKELY)));
  if (last === 0) return { p, oddsRatio: null, limits: { lower: 0, upper: Infinity } };

  const atLeast = (logOdds: number): number => total(probabilities(logWeights, logOdds).slice(at));
  const atMost = (logOdds: number): number => total(probabilities(logWeights, logOdds).slice(0, at + 1));
  const mean = (logOdds: number): number => total(probabilities(logWeights, logOdds).map((probability, k) => probability * k));
  const oddsAt = (f: (logOdds: number) => number): number => Math.exp(risingRoot(f));
  return {
    p,
    oddsRatio: at === 0 ? 0 : at === last ? Infinity : oddsAt((logOdds) => mean(logOdds) - at),
    limits: {
      lower: at === 0 ? 0 : oddsAt((logOdds) => atLeast(logOdds) - TAIL),
      upper: at === last ? Infinity : oddsAt((logOdds) => TAIL - atMost(logOdds)),
    },
  };
}

/** ln of C(n1, k) C(n2, m - k) up to a constant, for k from max(0, m - n2) to min(n1, m), by ratios. */
function hypergeometricLogWeights(n1: number, n2: number, m: number): readonly number[] {
  const lowest = Math.max(0, m - n2);
  const steps = Math.min(n1, m) - lowest;
  const ratios = Array.from({ length: steps }, (_, step) => {
    const k = lowest + step;
    return Math.log(((n1 - k) * (m - k)) / ((k + 1) * (n2 - m + k + 1)));
  });
  return [0, ...compensatedSum(ratios)];
}

/** Noncentral hypergeometric probabilities at an odds ratio of exp(logOdds). */
function probabilities(logWeights: readonly number[], logOdds: number): readonly number[] {
  const logs = logWeights.map((log, k) => log + k * logOdds);
  const highest = logs.reduce((top, log) => Math.max(top, log), -Infinity);
  const weights = logs.map((log) => Math.exp(log - highest));
  const sum = total(weights);
  return weights.map((weight) => weight / sum);
}

function total(terms: readonly number[]): number {
  return compensatedSum(terms).at(-1) ?? 0;
}
