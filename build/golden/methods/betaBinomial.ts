import { z } from 'zod';
import { betaBinomial as betaBinomialOf } from '#core/stats/betaBinomial.ts';
import { discreteQuantile } from '#core/stats/discreteQuantile.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm } from '../tolerances.ts';

const input = z.object({ n: z.number(), alpha: z.number(), beta: z.number() });

export const betaBinomial: GoldenMethod = {
  method: 'betaBinomial',
  compute: (given) => {
    const { n, alpha, beta } = input.parse(given);
    const distribution = betaBinomialOf(n, alpha, beta);
    return {
      pmf: distribution.pmf,
      cdf: distribution.cdf,
      mean: distribution.mean,
      var: distribution.variance,
      q10: discreteQuantile(distribution.cdf, 0.1),
      q50: discreteQuantile(distribution.cdf, 0.5),
      q90: discreteQuantile(distribution.cdf, 0.9),
    };
  },
  tolerance: ([field]) => (typeof field === 'string' && field.startsWith('q') ? 'exact' : closedForm),
};
