import type { AtRiskAndLost } from './atRiskAndLost.ts';
import { checkCounts } from './checkCounts.ts';
import type { Interval } from './interval.ts';
import { NORMAL_QUANTILE_975 } from './normalQuantile.ts';
import { studentTQuantile } from './studentTQuantile.ts';

/** Why there is no quasi-binomial interval. */
export type QuasiBinomialUndefined =
  | 'dispersion needs at least 2 units'
  | 'total loss is 0 or 1, logit not finite';

/**
 * The quasi-binomial fit. `intercept` and `se` are on the logit scale; `dispersion` is Pearson chi-square
 * over its degrees of freedom (1 = units as alike as chance makes them); the intervals are shares in [0, 1].
 * T takes the t quantile with `df`, Z the normal one; Floor1 never lets the dispersion fall below 1.
 */
export type QuasiBinomial =
  | {
      readonly defined: true;
      readonly units: number;
      readonly df: number;
      readonly intercept: number;
      readonly se: number;
      readonly dispersion: number;
      readonly ciT: Interval;
      readonly ciZ: Interval;
      readonly ciTDispersionFloor1: Interval;
      readonly ciZDispersionFloor1: Interval;
    }
  | { readonly defined: false; readonly reason: QuasiBinomialUndefined };

/**
 * 95 % interval of the total loss when units (yards) differ by more than chance.
 *
 * Method: intercept-only quasi-binomial regression with logit link, which needs no iteration. Source:
 * vanEngelsdorp et al. 2013, Standard epidemiological methods to understand and improve Apis mellifera
 * health, J Apic Res 52, doi 10.3896/IBRA.1.52.4.15.
 * Units with nothing at risk are left out. Undefined with fewer than two units, and when nothing or
 * everything was lost. Per unit 0 <= lost <= atRisk, whole numbers, else RangeError.
 */
export function quasiBinomialInterval(counts: readonly AtRiskAndLost[]): QuasiBinomial {
  for (const unit of counts) checkCounts(unit.lost, unit.atRisk);
  const units = counts.filter((unit) => unit.atRisk > 0);
  if (units.length < 2) return { defined: false, reason: 'dispersion needs at least 2 units' };
  let atRisk = 0;
  let lost = 0;
  for (const unit of units) {
    atRisk += unit.atRisk;
    lost += unit.lost;
  }
  if (lost === 0 || lost === atRisk) return { defined: false, reason: 'total loss is 0 or 1, logit not finite' };

  const rate = lost / atRisk;
  const binomial = rate * (1 - rate);
  let pearson = 0;
  for (const unit of units) pearson += (unit.lost - unit.atRisk * rate) ** 2 / (unit.atRisk * binomial);
  const df = units.length - 1;
  const dispersion = pearson / df;
  const intercept = Math.log(lost / (atRisk - lost));
  const seAt = (phi: number): number => Math.sqrt(phi / (atRisk * binomial));
  const limits = (quantile: number, se: number): Interval => ({
    lower: logistic(intercept - quantile * se),
    upper: logistic(intercept + quantile * se),
  });
  const t = studentTQuantile(0.975, df);
  const se = seAt(dispersion);
  const seFloor = seAt(Math.max(1, dispersion));
  return {
    defined: true,
    units: units.length,
    df,
    intercept,
    se,
    dispersion,
    ciT: limits(t, se),
    ciZ: limits(NORMAL_QUANTILE_975, se),
    ciTDispersionFloor1: limits(t, seFloor),
    ciZDispersionFloor1: limits(NORMAL_QUANTILE_975, seFloor),
  };
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
