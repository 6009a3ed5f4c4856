import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import type { SurvivalSpans } from './survivalSpans.ts';

/** Share that met one fate by each time; limits are null before the first such end. */
export interface IncidenceCurve {
  readonly cause: number;
  readonly ends: number;
  readonly incidence: readonly number[];
  readonly se: readonly number[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
}

/** `time` ascending, one element per distinct time of any end; all lists run along it. */
export interface CumulativeIncidence {
  readonly n: number;
  readonly time: readonly number[];
  readonly atRisk: readonly number[];
  /** Share without any end yet; with the incidences of all causes it adds up to 1. */
  readonly free: readonly number[];
  readonly causes: readonly IncidenceCurve[];
}

/** As `SurvivalSpans`, but `cause` is 0 while nothing had happened at `exit`, else the number of the fate from 1. */
export interface FateSpans extends Pick<SurvivalSpans, 'entry' | 'exit'> {
  readonly cause: ArrayLike<number>;
}

/**
 * Cumulative incidence of competing fates (lost, sold, united) with delayed entry:
 * F_c(t) = sum over times up to t of S(t-) d_c / n, with S falling at every end of any kind.
 *
 * Source: Aalen-Johansen estimator, Aalen and Johansen 1978, Scand J Statist 5:141-150; variance by the delta
 * method as in Marubini and Valsecchi 1995, section 10 (both from memory); interval log(-log), which stays
 * within 0 and 1. At risk at t: entry < t <= exit. Spans of no length are left out. O(n log n + times * causes).
 * Errors: RangeError for columns of unequal length, times that are not finite, an exit before its entry, or a
 * cause that is not a whole number from 0 to `causes`.
 */
export function cumulativeIncidence(spans: FateSpans, causes: number): CumulativeIncidence {
  const { entry, exit, cause } = spans;
  check(spans, causes);
  const rows = Array.from({ length: entry.length }, (_, row) => row).filter((row) => (exit[row] as number) > (entry[row] as number));
  const entries = Float64Array.from(rows, (row) => entry[row] as number).sort();
  const exits = Float64Array.from(rows, (row) => exit[row] as number).sort();
  const ends = rows.filter((row) => cause[row] !== 0).toSorted((a, b) => (exit[a] as number) - (exit[b] as number));

  const time: number[] = [];
  const atRisk: number[] = [];
  const free: number[] = [];
  const curves = Array.from({ length: causes }, () => new CauseSums());
  let come = 0;
  let gone = 0;
  let survival = 1;
  for (let at = 0; at < ends.length; ) {
    const now = exit[ends[at] as number] as number;
    const counts = curves.map(() => 0);
    let d = 0;
    for (; at < ends.length && exit[ends[at] as number] === now; at += 1) {
      counts[(cause[ends[at] as number] as number) - 1] = (counts[(cause[ends[at] as number] as number) - 1] ?? 0) + 1;
      d += 1;
    }
    while (come < entries.length && (entries[come] as number) < now) come += 1;
    while (gone < exits.length && (exits[gone] as number) < now) gone += 1;
    const n = come - gone;
    curves.forEach((curve, which) => curve.step(counts[which] as number, d, n, survival));
    survival *= (n - d) / n;
    time.push(now);
    atRisk.push(n);
    free.push(survival);
  }
  return { n: rows.length, time, atRisk, free, causes: curves.map((curve, which) => curve.curve(which + 1)) };
}

/**
 * The running sums of one cause. With a_j = d_j / (n_j (n_j - d_j)) the delta-method variance at t is
 * sum a_j (F(t) - F(t_j))^2 + sum S^2 d_c (n - d_c) / n^3 - 2 sum (F(t) - F(t_j)) S d_c / n^2, which opens
 * into a polynomial of F(t), so that each step costs the same. Where all at risk end, F changes no more and
 * the term of that step has the factor 0.
 */
class CauseSums {
  readonly #incidence: number[] = [];
  readonly #se: number[] = [];
  #value = 0;
  #ends = 0;
  #a = 0;
  #af = 0;
  #aff = 0;
  #own = 0;
  #b = 0;
  #bf = 0;

  step(dc: number, d: number, n: number, survival: number): void {
    this.#value += (survival * dc) / n;
    this.#ends += dc;
    const f = this.#value;
    const a = n > d ? d / (n * (n - d)) : 0;
    this.#a += a;
    this.#af += a * f;
    this.#aff += a * f * f;
    this.#own += (survival * survival * dc * (n - dc)) / n ** 3;
    const b = (survival * dc) / (n * n);
    this.#b += b;
    this.#bf += b * f;
    const variance = f * f * this.#a - 2 * f * this.#af + this.#aff + this.#own - 2 * (f * this.#b - this.#bf);
    this.#incidence.push(f);
    // A difference of nearly equal sums may fall a rounding error below nought.
    this.#se.push(Math.sqrt(Math.max(0, variance)));
  }

  curve(cause: number): IncidenceCurve {
    const limits = this.#incidence.map((f, at) => limitsOf(f, this.#se[at] as number));
    return { cause, ends: this.#ends, incidence: this.#incidence, se: this.#se, lower: limits.map((pair) => pair?.[0] ?? null), upper: limits.map((pair) => pair?.[1] ?? null) };
  }
}

function limitsOf(f: number, se: number): readonly [number, number] | null {
  if (f <= 0 || f >= 1 - 1e-12) return null;
  const theta = Math.exp((NORMAL_QUANTILE_975 * se) / (f * Math.abs(Math.log(f))));
  return [f ** theta, f ** (1 / theta)];
}

function check({ entry, exit, cause }: FateSpans, causes: number): void {
  if (exit.length !== entry.length || cause.length !== entry.length) throw new RangeError(`entry, exit and cause need as many rows each, not ${entry.length}, ${exit.length} and ${cause.length}`);
  for (let row = 0; row < entry.length; row += 1) {
    const [from, to, fate] = [entry[row] as number, exit[row] as number, cause[row] as number];
    if (!Number.isFinite(from) || !Number.isFinite(to)) throw new RangeError(`row ${row}: entry ${from} or exit ${to} is not a time`);
    if (to < from) throw new RangeError(`row ${row}: exit ${to} lies before entry ${from}`);
    if (!Number.isInteger(fate) || fate < 0 || fate > causes) throw new RangeError(`row ${row}: cause ${fate} is not a whole number from 0 to ${causes}`);
  }
}
