import { z } from 'zod';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { kaplanMeierForm, kaplanMeierTolerance } from '../kaplanMeierForm.ts';
import { spansOf } from '../survivalColumns.ts';

const input = z.object({ tau: z.number(), probs: z.array(z.number()) });

export const km: GoldenMethod = {
  method: 'km',
  compute: (given, columns) => {
    const { tau, probs } = input.parse(given);
    return kaplanMeierForm(kaplanMeier(spansOf(columns), { tau, probabilities: probs }));
  },
  tolerance: kaplanMeierTolerance,
};
