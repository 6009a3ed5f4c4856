import { z } from 'zod';
import { proportion as proportionOf } from '#core/stats/proportion.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { proportionForm, proportionTolerance } from '../proportionForm.ts';

const input = z.object({ x: z.number(), n: z.number() });

export const proportion: GoldenMethod = {
  method: 'proportion',
  compute: (given) => {
    const { x, n } = input.parse(given);
    return proportionForm(proportionOf(x, n));
  },
  tolerance: proportionTolerance,
};
