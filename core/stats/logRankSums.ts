import type { SortedSpans } from './survivalSpans.ts';
import type { Matrix } from './symmetricMatrix.ts';

/** What a log-rank test adds up over loss times, one element per group; `n` = rows. */
export interface LogRankSums {
  readonly n: number;
  readonly observed: readonly number[];
  readonly expected: readonly number[];
  readonly variance: Matrix;
}

export function noSums(groups: number): LogRankSums {
  const zeros = Array.from({ length: groups }, () => 0);
  return { n: 0, observed: zeros, expected: zeros, variance: zeros.map(() => zeros) };
}

/** Sums of two strata, element by element. */
export function addLogRankSums(one: LogRankSums, other: LogRankSums): LogRankSums {
  const add = (a: readonly number[], b: readonly number[]): number[] => a.map((value, at) => value + (b[at] as number));
  return {
    n: one.n + other.n,
    observed: add(one.observed, other.observed),
    expected: add(one.expected, other.expected),
    variance: one.variance.map((row, at) => add(row, other.variance[at] as readonly number[])),
  };
}

/**
 * Observed and expected losses of each group and the covariance of their difference, swept once in time:
 * at a time with d losses among n at risk, group g expects d n_g / n, and the covariance grows by
 * d (n-d)/(n-1) n_g/n ([g = h] - n_h/n), by nothing if n = 1. O(total rows + loss times * groups^2).
 */
export function logRankSums(groups: readonly SortedSpans[]): LogRankSums {
  const count = groups.length;
  const come = new Int32Array(count);
  const gone = new Int32Array(count);
  const lost = new Int32Array(count);
  const atRisk = new Float64Array(count);
  const expected = new Float64Array(count);
  const variance = Array.from({ length: count }, () => new Float64Array(count));

  for (let time = nextLoss(groups, lost); time < Infinity; time = nextLoss(groups, lost)) {
    let n = 0;
    let d = 0;
    for (let g = 0; g < count; g++) {
      const { entries, exits, losses } = groups[g] as SortedSpans;
      while ((entries[come[g] as number] ?? Infinity) < time) come[g] = (come[g] as number) + 1;
      while ((exits[gone[g] as number] ?? Infinity) < time) gone[g] = (gone[g] as number) + 1;
      atRisk[g] = (come[g] as number) - (gone[g] as number);
      n += atRisk[g] as number;
      while (losses[lost[g] as number] === time) {
        lost[g] = (lost[g] as number) + 1;
        d++;
      }
    }
    const spread = n > 1 ? (d * (n - d)) / (n - 1) : 0;
    for (let g = 0; g < count; g++) {
      const share = (atRisk[g] as number) / n;
      expected[g] = (expected[g] as number) + d * share;
      const row = variance[g] as Float64Array;
      for (let h = 0; h < count; h++) {
        row[h] = (row[h] as number) + spread * share * ((g === h ? 1 : 0) - (atRisk[h] as number) / n);
      }
    }
  }
  return {
    n: groups.reduce((sum, { exits }) => sum + exits.length, 0),
    observed: groups.map(({ losses }) => losses.length),
    expected: [...expected],
    variance: variance.map((row) => [...row]),
  };
}

function nextLoss(groups: readonly SortedSpans[], lost: Int32Array): number {
  return groups.reduce((next, { losses }, g) => Math.min(next, losses[lost[g] as number] ?? Infinity), Infinity);
}
