import type { CoxRows, CoxStratum } from './coxRows.ts';
import type { Matrix } from './symmetricMatrix.ts';

/** Partial log-likelihood at some coefficients, with its gradient and its information matrix. */
export interface CoxLikelihood {
  readonly loglik: number;
  readonly gradient: readonly number[];
  readonly information: Matrix;
}

/**
 * Cox partial likelihood with Efron's treatment of ties and delayed entry, for scaled coefficients `b` of the
 * covariates numbered in `terms`. Strata have risk sets, and so a baseline, of their own; their
 * likelihoods are added up.
 *
 * Sweeps each stratum once down in time: a row joins the running sums when its exit is reached and leaves them when its
 * entry is. Taking away what was added loses digits where few are left of many, so the sums carry Neumaier's
 * compensation, and start afresh whenever nobody is at risk. O(n p^2).
 */
export function coxLikelihood(rows: CoxRows, terms: readonly number[], b: readonly number[]): CoxLikelihood {
  const p = terms.length;
  const columns = terms.map((term) => rows.x[term] as Float64Array);
  const size = 1 + p + (p * (p + 1)) / 2;
  const risk = new Sums(size);
  const dead = new Sums(size);
  const gradient = new Float64Array(p);
  const information = Array.from({ length: p }, () => new Float64Array(p));
  const means = new Float64Array(p);
  let loglik = 0;

  for (const stratum of rows.strata) {
    const { eta, weight, shift } = riskWeights(stratum, columns, b);
    risk.clear();
    let come = stratum.from;
    let gone = stratum.from;
    while (come < stratum.until) {
      const time = nextLossTime(rows, come, stratum.until);
      if (time === null) break;
      while (come < stratum.until && (rows.exit[come] as number) > time) addRow(risk, columns, weight, stratum.from, come++, 1);
      dead.clear();
      let deaths = 0;
      for (; come < stratum.until && rows.exit[come] === time; come++) {
        addRow(risk, columns, weight, stratum.from, come, 1);
        if (rows.status[come] !== 1) continue;
        addRow(dead, columns, weight, stratum.from, come, 1);
        deaths++;
        loglik += eta[come - stratum.from] as number;
        for (let i = 0; i < p; i++) gradient[i] = (gradient[i] as number) + ((columns[i] as Float64Array)[come] as number);
      }
      while (gone < stratum.until && (rows.entry[rows.byEntry[gone] as number] as number) >= time) {
        addRow(risk, columns, weight, stratum.from, rows.byEntry[gone++] as number, -1);
      }
      for (let l = 0; l < deaths; l++) {
        const taken = l / deaths;
        const phi = risk.at(0) - taken * dead.at(0);
        loglik -= Math.log(phi) + shift;
        for (let i = 0; i < p; i++) {
          means[i] = (risk.at(1 + i) - taken * dead.at(1 + i)) / phi;
          gradient[i] = (gradient[i] as number) - (means[i] as number);
        }
        let at = 1 + p;
        for (let i = 0; i < p; i++) {
          const row = information[i] as Float64Array;
          for (let j = 0; j <= i; j++, at++) {
            row[j] = (row[j] as number) + (risk.at(at) - taken * dead.at(at)) / phi - (means[i] as number) * (means[j] as number);
          }
        }
      }
      if (come === gone) risk.clear();
    }
  }
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < i; j++) (information[j] as Float64Array)[i] = (information[i] as Float64Array)[j] as number;
  }
  return { loglik, gradient: [...gradient], information: information.map((row) => [...row]) };
}

/** exp(x b) of a stratum's rows, all divided by exp(shift), the largest: they then lie in (0, 1] whatever b is. */
function riskWeights({ from, until }: CoxStratum, columns: readonly Float64Array[], b: readonly number[]) {
  const eta = new Float64Array(until - from);
  for (const [i, column] of columns.entries()) {
    const coefficient = b[i] as number;
    for (let row = from; row < until; row++) eta[row - from] = (eta[row - from] as number) + coefficient * (column[row] as number);
  }
  const shift = eta.reduce((top, value) => Math.max(top, value), eta.length === 0 ? 0 : -Infinity);
  return { eta, weight: eta.map((value) => Math.exp(value - shift)), shift };
}

function nextLossTime(rows: CoxRows, from: number, until: number): number | null {
  for (let row = from; row < until; row++) if (rows.status[row] === 1) return rows.exit[row] as number;
  return null;
}

/** Adds (or takes away) w, w x_i and w x_i x_j of one row; `weight` begins at the row `first`. */
function addRow(sums: Sums, columns: readonly Float64Array[], weight: Float64Array, first: number, row: number, sign: 1 | -1): void {
  const w = sign * (weight[row - first] as number);
  const p = columns.length;
  sums.add(0, w);
  let at = 1 + p;
  for (let i = 0; i < p; i++) {
    const wx = w * ((columns[i] as Float64Array)[row] as number);
    sums.add(1 + i, wx);
    for (let j = 0; j <= i; j++) sums.add(at++, wx * ((columns[j] as Float64Array)[row] as number));
  }
}

/** Running sums that remember what rounding took from them. */
class Sums {
  readonly #sum: Float64Array;
  readonly #lost: Float64Array;

  constructor(size: number) {
    this.#sum = new Float64Array(size);
    this.#lost = new Float64Array(size);
  }

  add(at: number, value: number): void {
    const sum = this.#sum[at] as number;
    const next = sum + value;
    const lost = Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    this.#lost[at] = (this.#lost[at] as number) + lost;
    this.#sum[at] = next;
  }

  at(at: number): number {
    return (this.#sum[at] as number) + (this.#lost[at] as number);
  }

  clear(): void {
    this.#sum.fill(0);
    this.#lost.fill(0);
  }
}
