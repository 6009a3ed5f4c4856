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
  readonly x: readonly Float64Array[];
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
    if (covariates.some(({ values }) => values[row] === null) || (stratum !== null && stratum[row] === null)) missing++;
    else if (to === from) zeroLength++;
    else kept[n++] = row;
  }
  const { order, strata } = inStrata(kept.subarray(0, n), stratum, (row) => spans.exit[row] as number);
  const entry = Float64Array.from(order, (row) => spans.entry[row] as number);
  const status = Uint8Array.from(order, (row) => spans.status[row] as number);
  const standard = covariates.map((covariate) => standardised(covariate, order));
  return {
    n,
    losses: status.reduce((sum, ended) => sum + ended, 0),
    missing,
    zeroLength,
    entry,
    exit: Float64Array.from(order, (row) => spans.exit[row] as number),
    status,
    byEntry: withinStrata(strata, n, (at) => entry[at] as number),
    strata,
    x: standard.map(({ x }) => x),
    scale: standard.map(({ scale }) => scale),
  };
}

/** The rows stratum by stratum, each in descending order of `key`. */
function inStrata(kept: Uint32Array, stratum: GroupColumn | null, key: (row: number) => number): { readonly order: Uint32Array; readonly strata: readonly CoxStratum[] } {
  if (stratum === null) return { order: descending(kept, key), strata: [{ from: 0, until: kept.length }] };
  const order = new Uint32Array(kept.length);
  const strata: CoxStratum[] = [];
  let from = 0;
  for (const { rows } of groupLevels(Array.from(kept, (row) => stratum[row] as string | number))) {
    order.set(descending(Uint32Array.from(rows, (at) => kept[at] as number), key), from);
    strata.push({ from, until: from + rows.length });
    from += rows.length;
  }
  return { order, strata };
}

function withinStrata(strata: readonly CoxStratum[], n: number, key: (position: number) => number): Uint32Array {
  const positions = Uint32Array.from({ length: n }, (_, at) => at);
  for (const { from, until } of strata) positions.set(descending(positions.slice(from, until), key), from);
  return positions;
}

function descending(positions: Uint32Array, key: (position: number) => number): Uint32Array {
  return positions.toSorted((a, b) => key(b) - key(a) || a - b);
}

function standardised({ name, values }: Covariate, order: Uint32Array): { readonly x: Float64Array; readonly scale: number } {
  const x = Float64Array.from(order, (row) => values[row] as number);
  const mean = x.reduce((sum, value) => sum + value, 0) / x.length;
  if (x.length > 0 && !Number.isFinite(mean)) throw new RangeError(`covariate ${name} has a value that is not a number`);
  const variance = x.reduce((sum, value) => sum + (value - mean) ** 2, 0) / x.length;
  // A column of equal numbers may leave rounding behind; that is no spread.
  const scale = variance > (1e-12 * mean) ** 2 ? Math.sqrt(variance) : 0;
  return { x: x.map((value) => (scale === 0 ? 0 : (value - mean) / scale)), scale };
}
