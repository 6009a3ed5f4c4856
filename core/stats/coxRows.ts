import { descendingOrder, groupedOrder } from './descendingOrder.ts';
import { groupLevels, type GroupColumn } from './groupLevels.ts';
import type { SurvivalSpans } from './survivalSpans.ts';

/** A covariate: one number a row, null where it is not known. */
export interface Covariate {
  readonly name: string;
  readonly values: ArrayLike<number | null>;
}

/** Rows from `from` to before `until` that are compared only among themselves. */
export interface CoxStratum {
  readonly from: number;
  readonly until: number;
}

/**
 * Rows of a Cox model, stratum after stratum, each in descending order of exit; covariates centred and scaled to
 * unit spread over all rows.
 */
export interface CoxRows {
  readonly n: number;
  readonly losses: number;
  /** Rows left out because a covariate or their stratum is not known. */
  readonly missing: number;
  readonly zeroLength: number;
  readonly entry: Float64Array;
  readonly exit: Float64Array;
  readonly status: Uint8Array;
  /** Positions of the rows in descending order of entry within their stratum. */
  readonly byEntry: Uint32Array;
  readonly strata: readonly CoxStratum[];
  /** Covariates of a row: `width` of them. */
  readonly width: number;
  /** The covariates row by row: that of row `r` and covariate `i` stands at `r * width + i`. */
  readonly x: Float64Array;
  /** Standard deviation by which each covariate was divided; 0 for a constant one, which is left unscaled. */
  readonly scale: readonly number[];
}

/**
 * Takes the rows with all covariates known and some time watched. Errors (RangeError): columns of unequal
 * length, a time or covariate that is not finite, an exit before its entry, a status other than 0 and 1.
 */
export function coxRows(spans: SurvivalSpans, covariates: readonly Covariate[], stratum: GroupColumn | null = null): CoxRows {
  const rows = spans.entry.length;
  const lengths = [spans.exit.length, spans.status.length, ...covariates.map(({ values }) => values.length), ...(stratum === null ? [] : [stratum.length])];
  if (lengths.some((length) => length !== rows)) throw new RangeError(`every column needs ${rows} rows, not ${lengths.join(', ')}`);
  const unknown = new Uint8Array(rows);
  for (const { values } of covariates) markUnknown(values, unknown);
  if (stratum !== null) markUnknown(stratum, unknown);
  const kept = new Uint32Array(rows);
  let n = 0;
  let missing = 0;
  let zeroLength = 0;
  for (let row = 0; row < rows; row++) {
    const from = spans.entry[row] as number;
    const to = spans.exit[row] as number;
    const ended = spans.status[row] as number;
    if (!Number.isFinite(from) || !Number.isFinite(to) || to < from || (ended !== 0 && ended !== 1)) {
      throw new RangeError(`row ${row}: entry ${from}, exit ${to}, status ${ended} is not a span`);
    }
    if (unknown[row] === 1) missing++;
    else if (to === from) zeroLength++;
    else kept[n++] = row;
  }
  const { strata, group } = strataOf(kept.subarray(0, n), stratum);
  const inStrata = (keys: Float64Array) => (group === null ? descendingOrder(keys) : groupedOrder(descendingOrder(keys), group, strata.length));
  const order = inStrata(taken(spans.exit, kept, n)).map((at) => kept[at] as number);
  const entry = taken(spans.entry, order, n);
  const status = Uint8Array.from(taken(spans.status, order, n));
  // The rows now stand stratum after stratum.
  group?.sort();
  const width = covariates.length;
  const x = new Float64Array(n * width);
  return {
    n,
    losses: status.reduce((sum, ended) => sum + ended, 0),
    missing,
    zeroLength,
    entry,
    exit: taken(spans.exit, order, n),
    status,
    byEntry: inStrata(entry),
    strata,
    width,
    x,
    scale: covariates.map(({ name, values }, at) => standardise(name, taken(values, order, n), x, at, width)),
  };
}

/** The same rows with only the covariates numbered in `terms`. */
export function withTerms(rows: CoxRows, terms: readonly number[]): CoxRows {
  if (terms.length === rows.width) return rows;
  const x = new Float64Array(rows.n * terms.length);
  for (const [at, term] of terms.entries()) {
    for (let row = 0; row < rows.n; row++) x[row * terms.length + at] = rows.x[row * rows.width + term] as number;
  }
  return { ...rows, width: terms.length, x, scale: terms.map((term) => rows.scale[term] as number) };
}

function markUnknown(values: ArrayLike<number | string | null>, unknown: Uint8Array): void {
  for (let row = 0; row < unknown.length; row++) if (values[row] === null) unknown[row] = 1;
}

/** The values of the first `n` rows named, in their order. */
function taken(values: ArrayLike<number | null>, rows: Uint32Array, n: number): Float64Array {
  const made = new Float64Array(n);
  for (let at = 0; at < n; at++) made[at] = values[rows[at] as number] as number;
  return made;
}

/** The strata in ascending order of their levels, and the number of the stratum that each kept row is in; null where there is one. */
function strataOf(kept: Uint32Array, stratum: GroupColumn | null): { readonly strata: readonly CoxStratum[]; readonly group: Uint32Array | null } {
  if (stratum === null) return { strata: [{ from: 0, until: kept.length }], group: null };
  const group = new Uint32Array(kept.length);
  const strata: CoxStratum[] = [];
  let from = 0;
  for (const { rows } of groupLevels(Array.from(kept, (row) => stratum[row] as string | number))) {
    for (const at of rows) group[at] = strata.length;
    strata.push({ from, until: from + rows.length });
    from += rows.length;
  }
  return { strata, group };
}

/** Writes the values, centred and with unit spread, as covariate `at` of the rows in `x`; answers their spread. */
function standardise(name: string, values: Float64Array, x: Float64Array, at: number, width: number): number {
  const n = values.length;
  let sum = 0;
  for (let row = 0; row < n; row++) sum += values[row] as number;
  const mean = sum / n;
  if (n > 0 && !Number.isFinite(mean)) throw new RangeError(`covariate ${name} has a value that is not a number`);
  let squares = 0;
  for (let row = 0; row < n; row++) squares += ((values[row] as number) - mean) ** 2;
  const variance = squares / n;
  // A column of equal numbers may leave rounding behind; that is no spread.
  const scale = variance > (1e-12 * mean) ** 2 ? Math.sqrt(variance) : 0;
  if (scale > 0) for (let row = 0; row < n; row++) x[row * width + at] = ((values[row] as number) - mean) / scale;
  return scale;
}
