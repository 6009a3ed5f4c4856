import { compensatedSum } from './compensatedSum.ts';
import { checkTwoByTwo, type TwoByTwo } from './twoByTwo.ts';

/** Tables count as "as unlikely as this one" within this factor: the customary guard against rounding. */
const AS_UNLIKELY = 1 + 1e-7;
/** Products of two probabilities after which the exact way is given up: some 20 ms. */
const MOST_STEPS = 4_000_000;

/**
 * Exact test of a group against the others over strata, two-sided: with the margins of every stratum fixed, the
 * number lost in the group is a sum of independent hypergeometric counts; the probabilities of all sums no
 * likelier than the observed one are added up. It is Fisher's test for one stratum, and what shuffling the losses
 * within each stratum would give in the end.
 *
 * Source: Birch 1964, JRSS B 26:313-324; Gart 1971, Rev Int Stat Inst 39:148-169 (from memory); the same as
 * `mantelhaen.test(exact = TRUE)` of R. Null if it takes more than `mostSteps` products: the chi-square of
 * `mantelHaenszel` is the test to use then. Broken cells: RangeError.
 */
export function exactStratified(tables: readonly TwoByTwo[], mostSteps = MOST_STEPS): number | null {
  let probabilities: Float64Array = Float64Array.of(1);
  let at = 0;
  let steps = 0;
  for (const table of tables) {
    checkTwoByTwo(table);
    const { a, b, c, d } = table;
    const size = Math.min(a + b, a + c) - Math.max(0, a - d) + 1;
    if (size === 1) continue;
    steps += size * probabilities.length;
    if (steps > mostSteps) return null;
    probabilities = convolve(probabilities, hypergeometric(a + b, c + d, a + c));
    at += a - Math.max(0, a - d);
  }
  const observed = probabilities[at] as number;
  return Math.min(1, total([...probabilities.filter((probability) => probability <= observed * AS_UNLIKELY)]));
}

/** Probabilities of k lost among n1 of n1 + n2, of which m are lost, from the least k possible to the most. */
function hypergeometric(n1: number, n2: number, m: number): Float64Array {
  const lowest = Math.max(0, m - n2);
  const steps = Math.min(n1, m) - lowest;
  const ratios = Array.from({ length: steps }, (_, step) => {
    const k = lowest + step;
    return Math.log(((n1 - k) * (m - k)) / ((k + 1) * (n2 - m + k + 1)));
  });
  const logs = [0, ...compensatedSum(ratios)];
  const highest = logs.reduce((top, log) => Math.max(top, log), -Infinity);
  const weights = logs.map((log) => Math.exp(log - highest));
  const sum = total(weights);
  return Float64Array.from(weights, (weight) => weight / sum);
}

function convolve(one: Float64Array, other: Float64Array): Float64Array {
  const made = new Float64Array(one.length + other.length - 1);
  for (let i = 0; i < one.length; i++) {
    const p = one[i] as number;
    for (let j = 0; j < other.length; j++) made[i + j] = (made[i + j] as number) + p * (other[j] as number);
  }
  return made;
}

function total(terms: readonly number[]): number {
  return compensatedSum(terms).at(-1) ?? 0;
}
