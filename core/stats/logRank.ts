import { groupLevels, type GroupColumn, type GroupLevel } from './groupLevels.ts';
import { holm } from './holm.ts';
import { spansOfRows } from './kaplanMeierByGroup.ts';
import { addLogRankSums, logRankSums, noSums, type LogRankSums } from './logRankSums.ts';
import { sortSpans, type SortedSpans, type SurvivalSpans } from './survivalSpans.ts';
import { inverseQuadraticForm, type Matrix } from './symmetricMatrix.ts';
import { chiSquareUpperTail } from './tailProbabilities.ts';

/**
 * Log-rank comparison of groups. Lists run along `groups`; `variance` is that of observed - expected.
 * `chiSquare` and `p` are null if there is nothing to compare: no losses, or only one group at risk when
 * losses happened.
 */
export interface LogRank {
  /** Rows with a known group (and stratum) that were watched for any time. */
  readonly n: number;
  readonly groups: readonly string[];
  readonly observed: readonly number[];
  readonly expected: readonly number[];
  readonly variance: Matrix;
  readonly chiSquare: number | null;
  readonly df: number;
  readonly p: number | null;
}

/** One pair of groups; `pHolm` is adjusted for all pairs compared. */
export interface LogRankPair {
  readonly a: string;
  readonly b: string;
  readonly chiSquare: number | null;
  readonly p: number | null;
  readonly pHolm: number | null;
}

/**
 * Log-rank test with delayed entry and ties.
 *
 * Source: Mantel 1966; hypergeometric variance, factor (n-d)/(n-1) for ties; Peto and Peto 1972 (from memory).
 * At risk at t: entry < t <= exit. A group never at risk when a loss happened is left out of the test and its
 * degrees of freedom. Errors as for `sortSpans`.
 */
export function logRank(spans: SurvivalSpans, group: GroupColumn): LogRank {
  return testOf(groupLevels(group).map(({ level }) => level), sumsOf(spans, groupLevels(group)));
}

/** Log-rank test within strata (years): observed - expected and variance are added up, then tested once. */
export function logRankStratified(spans: SurvivalSpans, group: GroupColumn, stratum: GroupColumn): LogRank {
  const known = Array.from({ length: group.length }, (_, row) => (stratum[row] ?? null) === null ? null : (group[row] ?? null));
  const { levels, strata } = sortedCells(spans, groupLevels(known), stratum);
  return testOf(levels, strata.map((cells) => logRankSums(cells)).reduce(addLogRankSums, noSums(levels.length)));
}

/** Every pair of groups by itself (risk sets of those two only), with p-values adjusted after Holm. */
export function logRankPairs(spans: SurvivalSpans, group: GroupColumn): readonly LogRankPair[] {
  const groups = groupLevels(group);
  const pairs = groups.flatMap((a, at) =>
    groups.slice(at + 1).map((b) => {
      const { chiSquare, p } = testOf([a.level, b.level], sumsOf(spans, [a, b]));
      return { a: a.level, b: b.level, chiSquare, p };
    }),
  );
  return adjusted(pairs);
}

/** Every pair of groups by itself, within strata, with p-values adjusted after Holm. */
export function logRankPairsStratified(spans: SurvivalSpans, group: GroupColumn, stratum: GroupColumn): readonly LogRankPair[] {
  const { levels, strata } = sortedCells(spans, groupLevels(group), stratum);
  return adjusted(
    levels.flatMap((a, at) =>
      levels.slice(at + 1).map((b, further) => {
        const sums = strata.map((cells) => logRankSums([cells[at] as SortedSpans, cells[at + 1 + further] as SortedSpans]));
        const { chiSquare, p } = testOf([a, b], sums.reduce(addLogRankSums, noSums(2)));
        return { a, b, chiSquare, p };
      }),
    ),
  );
}

/** The rows of each stratum by group, in the order of the levels, sorted once for all that is compared. */
function sortedCells(spans: SurvivalSpans, groups: readonly GroupLevel[], stratum: GroupColumn): { readonly levels: readonly string[]; readonly strata: readonly (readonly SortedSpans[])[] } {
  const order = groupLevels(stratum);
  const placeOf = new Map(order.map(({ rows }, place) => [stratum[rows[0] as number] ?? null, place]));
  const cells = order.map(() => groups.map((): number[] => []));
  groups.forEach(({ rows }, at) => {
    // A row whose stratum is not known has no place.
    for (const row of rows) cells[placeOf.get(stratum[row] ?? null) ?? -1]?.[at]?.push(row);
  });
  return { levels: groups.map(({ level }) => level), strata: cells.map((own) => own.map((rows) => sortSpans(spansOfRows(spans, rows)))) };
}

function adjusted(pairs: readonly Omit<LogRankPair, 'pHolm'>[]): readonly LogRankPair[] {
  const values = holm(pairs.flatMap(({ p }) => (p === null ? [] : [p])));
  let next = 0;
  return pairs.map((pair) => ({ ...pair, pHolm: pair.p === null ? null : (values[next++] ?? null) }));
}

function sumsOf(spans: SurvivalSpans, groups: readonly GroupLevel[]): LogRankSums {
  return logRankSums(groups.map(({ rows }) => sortSpans(spansOfRows(spans, rows))));
}

function testOf(groups: readonly string[], sums: LogRankSums): LogRank {
  const { n, observed, expected, variance } = sums;
  const compared = groups.flatMap((_, g) => ((expected[g] as number) > 0 ? [g] : []));
  // Observed - expected adds up to 0 over the groups, so one of them is redundant.
  const free = compared.slice(1);
  const difference = free.map((g) => (observed[g] as number) - (expected[g] as number));
  const matrix = free.map((g) => free.map((h) => ((variance[g] as readonly number[])[h] as number)));
  const chiSquare = free.length === 0 ? null : inverseQuadraticForm(matrix, difference);
  const df = Math.max(0, compared.length - 1);
  return { n, groups, observed, expected, variance, chiSquare, df, p: chiSquare === null ? null : chiSquareUpperTail(chiSquare, df) };
}
