import { coxFit } from '../coxFit.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { tailProbability } from '../tolerances.ts';

const COUNTS = new Set(['n', 'nEvents', 'df']);

export const cox: GoldenMethod = {
  method: 'cox',
  compute: (given, columns) => {
    const { names, model } = coxFit(given, columns);
    const terms = names.map((name) => model.terms.find((term) => term.name === name));
    const places = names.map((name) => model.terms.findIndex((term) => term.name === name));
    return {
      terms: names,
      n: model.n,
      nEvents: model.losses,
      coef: terms.map((term) => term?.coefficient ?? null),
      se: terms.map((term) => term?.se ?? null),
      vcov: places.map((i) => places.map((j) => model.covariance[i]?.[j] ?? null)),
      z: terms.map((term) => term?.z ?? null),
      p: terms.map((term) => term?.p ?? null),
      hr: terms.map((term) => term?.hazardRatio ?? null),
      hrLower: terms.map((term) => term?.limits.lower ?? null),
      hrUpper: terms.map((term) => term?.limits.upper ?? null),
      loglikNull: model.loglikNull,
      loglik: model.loglik,
      lrChisq: model.likelihoodRatio,
      waldChisq: model.wald,
      scoreChisq: model.score,
      converged: model.converged && !model.terms.some((term) => term.diverges),
      df: model.df,
    };
  },
  tolerance: ([field], want) => {
    if (typeof field === 'string' && COUNTS.has(field)) return 'exact';
    return field === 'p' ? tailProbability(want) : { relative: 1e-7, absolute: 1e-12 };
  },
};
