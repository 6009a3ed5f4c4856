import { coxLikelihood, type CoxLikelihood } from './coxLikelihood.ts';
import { coxRows, withTerms, type Covariate, type CoxRows } from './coxRows.ts';
import type { GroupColumn } from './groupLevels.ts';
import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import type { SurvivalSpans } from './survivalSpans.ts';
import { cholesky, choleskyInverse, choleskySolve, inverseQuadraticForm, type Matrix } from './symmetricMatrix.ts';
import { normalTwoSided } from './tailProbabilities.ts';

/** Effect of one covariate on the hazard of loss, per unit of the covariate as given. */
export interface CoxTerm {
  readonly name: string;
  readonly coefficient: number;
  readonly se: number;
  readonly z: number;
  readonly p: number;
  readonly hazardRatio: number;
  readonly limits: Interval;
  /**
   * True if the coefficient runs off to infinity (a group without a loss, for one): there is no hazard ratio
   * to show then, only the sign of `coefficient` and the log-likelihood, which tends to a limit, mean anything.
   */
  readonly diverges: boolean;
}

/** A covariate that says nothing of its own. */
export interface DroppedTerm {
  readonly name: string;
  /** `constant`: it does not differ between rows that are at risk together when one is lost. */
  readonly why: 'constant' | 'follows from others';
  /** The one covariate before it that alone says the same, if there is one. */
  readonly sameAs: string | null;
}

export interface CoxModel {
  readonly n: number;
  readonly losses: number;
  /** Rows left out: some covariate unknown, or watched for no time. */
  readonly missing: number;
  readonly zeroLength: number;
  readonly terms: readonly CoxTerm[];
  /** Covariates left out because they are constant or follow from those before them. */
  readonly dropped: readonly DroppedTerm[];
  readonly covariance: Matrix;
  readonly loglikNull: number;
  readonly loglik: number;
  readonly likelihoodRatio: number;
  readonly wald: number;
  /** Score test at coefficients of 0. */
  readonly score: number;
  readonly df: number;
  readonly converged: boolean;
}

const MOST_ITERATIONS = 60;
const MOST_HALVINGS = 30;
/** Newton decrement: the next step would move the coefficients by less than a millionth of their errors. */
const CLOSE_ENOUGH = 1e-12;
const FAR_COEFFICIENT = 15;
const WIDE_ERROR = 100;

/**
 * Cox proportional hazards model with delayed entry, ties after Efron.
 *
 * Source: Cox 1972, JRSS B 34:187-220; Efron 1977, JASA 72:557-565 (from memory); suggested for colonies by
 * Pirk et al. 2013, J Apic Res 52(4). Newton's method from 0 with step halving; covariates are centred and
 * scaled inside. A value used as covariate must have been known at entry; a colony may have several rows
 * (`splitSpans`). With `stratum`, only rows of one level are compared with each other (a baseline of its own for
 * each level, the same coefficients for all: Kalbfleisch and Prentice 1980, from memory).
 * Null if no row was lost or no covariate is left: there is nothing to fit. Errors as for `coxRows`.
 */
export function coxModel(spans: SurvivalSpans, covariates: readonly Covariate[], stratum: GroupColumn | null = null): CoxModel | null {
  const rows = coxRows(spans, covariates, stratum);
  const all = covariates.map((_, term) => term);
  const atZero = coxLikelihood(rows, all.map(() => 0));
  const kept = independentTerms(atZero.information, rows);
  if (rows.losses === 0 || kept.length === 0) return null;
  const own = withTerms(rows, kept);
  const start = own === rows ? atZero : coxLikelihood(own, kept.map(() => 0));
  const fit = climb(own, start);
  const factor = cholesky(fit.at.information);
  if (factor === null) return null;
  const inverse = choleskyInverse(factor);
  const { scale } = own;
  return {
    n: rows.n,
    losses: rows.losses,
    missing: rows.missing,
    zeroLength: rows.zeroLength,
    terms: kept.map((term, i) => termOf(covariates[term]?.name ?? '', fit.b[i] as number, (inverse[i] as readonly number[])[i] as number, scale[i] as number)),
    dropped: all.filter((term) => !kept.includes(term)).map((term) => droppedTerm(term, kept, atZero.information, rows, covariates)),
    covariance: inverse.map((row, i) => row.map((value, j) => value / (scale[i] as number) / (scale[j] as number))),
    loglikNull: start.loglik,
    loglik: fit.at.loglik,
    likelihoodRatio: 2 * (fit.at.loglik - start.loglik),
    wald: fit.b.reduce((sum, bi, i) => sum + bi * fit.b.reduce((inner, bj, j) => inner + bj * ((fit.at.information[i] as readonly number[])[j] as number), 0), 0),
    score: inverseQuadraticForm(start.information, start.gradient) ?? 0,
    df: kept.length,
    converged: fit.converged,
  };
}

interface Fit {
  readonly b: readonly number[];
  readonly at: CoxLikelihood;
  readonly converged: boolean;
}

function climb(rows: CoxRows, start: CoxLikelihood): Fit {
  let b: readonly number[] = start.gradient.map(() => 0);
  let at = start;
  for (let iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
    const factor = cholesky(at.information);
    if (factor === null) return { b, at, converged: false };
    const step = choleskySolve(factor, at.gradient);
    const decrement = step.reduce((sum, delta, i) => sum + delta * (at.gradient[i] as number), 0);
    const next = stepAlong(rows, b, step, at);
    if (next === null) return { b, at, converged: decrement < 1e-6 };
    ({ b, at } = next);
    if (decrement < CLOSE_ENOUGH) return { b, at, converged: true };
  }
  return { b, at, converged: false };
}

/** The step, halved until the likelihood does not fall; null if it always does, so that nothing is to be gained. */
function stepAlong(rows: CoxRows, b: readonly number[], step: readonly number[], from: CoxLikelihood) {
  // Rounding may take this much from a sum of that size without the likelihood having fallen.
  const slack = 1e-13 * Math.abs(from.loglik);
  for (let halving = 0, length = 1; halving < MOST_HALVINGS; halving++, length /= 2) {
    const tried = b.map((value, i) => value + length * (step[i] as number));
    const at = coxLikelihood(rows, tried);
    if (Number.isFinite(at.loglik) && at.loglik >= from.loglik - slack && cholesky(at.information) !== null) return { b: tried, at };
  }
  return null;
}

/** Terms in order, without those that are constant or follow from the ones before. */
function independentTerms(information: Matrix, rows: CoxRows): readonly number[] {
  const kept: number[] = [];
  for (const term of information.keys()) if (!saysNothing(term, information, rows) && cholesky(part(information, [...kept, term])) !== null) kept.push(term);
  return kept;
}

/** Covariates have unit spread, so what a loss tells of one is about 1; rounding leaves a little of nothing. */
const NOTHING = 1e-10;

function saysNothing(term: number, information: Matrix, rows: CoxRows): boolean {
  return rows.scale[term] === 0 || !(((information[term] as readonly number[])[term] as number) > NOTHING * rows.losses);
}

function part(matrix: Matrix, terms: readonly number[]): Matrix {
  return terms.map((i) => terms.map((j) => (matrix[i] as readonly number[])[j] as number));
}

function droppedTerm(term: number, kept: readonly number[], information: Matrix, rows: CoxRows, covariates: readonly Covariate[]): DroppedTerm {
  const name = covariates[term]?.name ?? '';
  if (saysNothing(term, information, rows)) return { name, why: 'constant', sameAs: null };
  const same = kept.find((other) => other < term && cholesky(part(information, [other, term])) === null);
  return { name, why: 'follows from others', sameAs: same === undefined ? null : (covariates[same]?.name ?? '') };
}

function termOf(name: string, scaled: number, variance: number, scale: number): CoxTerm {
  const coefficient = scaled / scale;
  const se = Math.sqrt(variance) / scale;
  const z = coefficient / se;
  return {
    name,
    coefficient,
    se,
    z,
    p: normalTwoSided(z),
    hazardRatio: Math.exp(coefficient),
    limits: { lower: Math.exp(coefficient - NORMAL_QUANTILE_975 * se), upper: Math.exp(coefficient + NORMAL_QUANTILE_975 * se) },
    diverges: Math.abs(scaled) > FAR_COEFFICIENT || Math.sqrt(variance) > WIDE_ERROR,
  };
}
