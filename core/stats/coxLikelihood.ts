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
 * covariates. Strata have risk sets, and so a baseline, of their own; their likelihoods are added up.
 *
 * Sweeps each stratum once down in time: a row joins the running sums when its exit is reached and leaves them when its
 * entry is. Taking away what was added loses digits where few are left of many, so the sums carry what each addition
 * rounded off (Knuth's two-sum), and start afresh whenever nobody is at risk. O(n p^2).
 */
export function coxLikelihood(rows: CoxRows, b: readonly number[]): CoxLikelihood {
  const p = rows.width;
  const size = 1 + p + (p * (p + 1)) / 2;
  const risk = new Float64Array(2 * size);
  const dead = new Float64Array(2 * size);
  const gradient = new Float64Array(p);
  const information = new Float64Array(size - 1 - p);
  const means = new Float64Array(p);
  const eta = new Float64Array(rows.n);
  const weight = new Float64Array(rows.n);
  const coefficients = Float64Array.from(b);
  const { entry, exit, status, byEntry, x } = rows;
  let loglik = 0;

  for (const stratum of rows.strata) {
    const shift = riskWeights(stratum, x, coefficients, eta, weight);
    const { until } = stratum;
    risk.fill(0);
    let come = stratum.from;
    let gone = stratum.from;
    while (come < until) {
      const loss = nextLoss(status, come, until);
      if (loss === until) break;
      const time = exit[loss] as number;
      for (; come < until && (exit[come] as number) > time; come++) addRow(risk, x, p, come, weight[come] as number);
      dead.fill(0);
      let deaths = 0;
      for (; come < until && exit[come] === time; come++) {
        if (status[come] !== 1) {
          addRow(risk, x, p, come, weight[come] as number);
          continue;
        }
        addRow(dead, x, p, come, weight[come] as number);
        deaths++;
        loglik += eta[come] as number;
        for (let i = 0; i < p; i++) gradient[i] = (gradient[i] as number) + (x[come * p + i] as number);
      }
      for (let at = 0; at < 2 * size; at += 2) addTo(risk, at, dead[at] as number, dead[at + 1] as number);
      for (; gone < until; gone++) {
        const row = byEntry[gone] as number;
        if ((entry[row] as number) < time) break;
        addRow(risk, x, p, row, -(weight[row] as number));
      }
      loglik -= deaths * shift + atLosses(risk, dead, deaths, p, means, gradient, information);
      if (come === gone) risk.fill(0);
    }
  }
  return { loglik, gradient: [...gradient], information: full(information, p) };
}

/**
 * exp(x b) of a stratum's rows into `weight`, all divided by exp(shift), the largest: they then lie in (0, 1] whatever
 * b is. x b goes into `eta`; the shift is the answer.
 */
function riskWeights({ from, until }: CoxStratum, x: Float64Array, b: Float64Array, eta: Float64Array, weight: Float64Array): number {
  const p = b.length;
  let shift = from === until ? 0 : -Infinity;
  for (let row = from, at = from * p; row < until; row++) {
    let sum = 0;
    for (let i = 0; i < p; i++, at++) sum += (b[i] as number) * (x[at] as number);
    eta[row] = sum;
    shift = Math.max(shift, sum);
  }
  for (let row = from; row < until; row++) weight[row] = Math.exp((eta[row] as number) - shift);
  return shift;
}

/** The first row from `from` on that was lost, or `until`. */
function nextLoss(status: Uint8Array, from: number, until: number): number {
  let row = from;
  while (row < until && status[row] !== 1) row++;
  return row;
}

/**
 * Adds w, w x_i and w x_i x_j of one row to the sums; a negative w takes them away. Each sum stands at an even place,
 * what rounding took from it right after.
 */
function addRow(sums: Float64Array, x: Float64Array, p: number, row: number, w: number): void {
  const first = row * p;
  addTo(sums, 0, w, 0);
  let at = 2 + 2 * p;
  for (let i = 0; i < p; i++) {
    const wx = w * (x[first + i] as number);
    addTo(sums, 2 + 2 * i, wx, 0);
    for (let j = 0; j <= i; j++, at += 2) addTo(sums, at, wx * (x[first + j] as number), 0);
  }
}

function addTo(sums: Float64Array, at: number, value: number, lost: number): void {
  const sum = sums[at] as number;
  const next = sum + value;
  const added = next - sum;
  sums[at] = next;
  sums[at + 1] = (sums[at + 1] as number) + (sum - (next - added) + (value - added)) + lost;
}

/** Adds what the losses of one time say to gradient and information; answers the sum of the logarithms of who was at risk. */
function atLosses(risk: Float64Array, dead: Float64Array, deaths: number, p: number, means: Float64Array, gradient: Float64Array, information: Float64Array): number {
  let logs = 0;
  for (let l = 0; l < deaths; l++) {
    const taken = l / deaths;
    const phi = left(risk, dead, 0, taken);
    logs += Math.log(phi);
    for (let i = 0; i < p; i++) {
      const mean = left(risk, dead, 2 + 2 * i, taken) / phi;
      means[i] = mean;
      gradient[i] = (gradient[i] as number) - mean;
    }
    for (let i = 0, place = 0, at = 2 + 2 * p; i < p; i++) {
      for (let j = 0; j <= i; j++, place++, at += 2) {
        information[place] = (information[place] as number) + left(risk, dead, at, taken) / phi - (means[i] as number) * (means[j] as number);
      }
    }
  }
  return logs;
}

/** A sum over those at risk, without a share of those lost. */
function left(risk: Float64Array, dead: Float64Array, at: number, taken: number): number {
  return (risk[at] as number) + (risk[at + 1] as number) - taken * ((dead[at] as number) + (dead[at + 1] as number));
}

/** The whole symmetric matrix from its lower half by rows. */
function full(half: Float64Array, p: number): Matrix {
  const places = Array.from({ length: p }, (_, at) => at);
  return places.map((i) => places.map((j) => half[(Math.max(i, j) * (Math.max(i, j) + 1)) / 2 + Math.min(i, j)] as number));
}
