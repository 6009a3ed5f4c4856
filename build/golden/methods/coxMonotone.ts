import { Asked } from '../compare.ts';
import { coxFit } from '../coxFit.ts';
import type { GoldenMethod } from '../goldenMethod.ts';

export const coxMonotone: GoldenMethod = {
  method: 'coxMonotone',
  compute: (given, columns) => {
    const { model } = coxFit(given, columns);
    const runaway = model.terms.find((term) => term.diverges);
    return {
      diverges: runaway !== undefined,
      coefSign: runaway === undefined ? null : Math.sign(runaway.coefficient),
      loglikNull: model.loglikNull,
      loglikLimit: model.loglik,
      // Where R happened to stop on the way to infinity: no value of anything.
      coefAtStopInR: new Asked((want) => want),
    };
  },
  tolerance: ([field]) => (field === 'coefSign' ? 'exact' : { relative: 1e-7, absolute: 1e-12 }),
};
