import { z } from 'zod';
import { kaplanMeierByGroup } from '#core/stats/kaplanMeierByGroup.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { kaplanMeierForm, kaplanMeierTolerance } from '../kaplanMeierForm.ts';
import { column, spansOf } from '../survivalColumns.ts';

const input = z.object({ group: z.string(), tau: z.number(), probs: z.array(z.number()) });

export const kmBy: GoldenMethod = {
  method: 'kmBy',
  compute: (given, columns) => {
    const { group, tau, probs } = input.parse(given);
    const curves = kaplanMeierByGroup(spansOf(columns), column(columns, group), { tau, probabilities: probs });
    return Object.fromEntries([...curves].map(([level, curve]) => [level, kaplanMeierForm(curve)]));
  },
  // The first step of the path is the group level, which might be spelled like a count.
  tolerance: (path) => kaplanMeierTolerance(path.slice(1)),
};
