import { z } from 'zod';
import { chiSquareTable } from '#core/stats/chiSquareTable.ts';
import { fisherExactTwoByTwo } from '#core/stats/fisherExactTwoByTwo.ts';
import { relativeRisk } from '#core/stats/relativeRisk.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm, tailProbability } from '../tolerances.ts';

const input = z.object({ a: z.number(), b: z.number(), c: z.number(), d: z.number() });

export const table2x2: GoldenMethod = {
  method: 'table2x2',
  compute: (given) => {
    const table = input.parse(given);
    const { a, b, c, d } = table;
    const fisher = fisherExactTwoByTwo(table);
    const ratio = relativeRisk(table);
    const difference = riskDifference(table);
    const plain = chiSquareTable([[a, b], [c, d]]);
    const yates = chiSquareTable([[a, b], [c, d]], true);
    const sample = (a * d) / (b * c);
    return {
      fisherP: fisher.p,
      orConditional: fisher.oddsRatio,
      orLower: fisher.limits.lower,
      orUpper: fisher.limits.upper,
      orSample: Number.isNaN(sample) ? null : sample,
      relativeRisk: {
        correctedByHalf: ratio.correctedByHalf,
        value: ratio.value,
        lower: ratio.limits.lower,
        upper: ratio.limits.upper,
        rawValue: ratio.rawValue,
      },
      riskDifference: {
        value: difference?.value ?? null,
        waldLower: difference?.wald.lower ?? null,
        waldUpper: difference?.wald.upper ?? null,
        newcombeLower: difference?.newcombe.lower ?? null,
        newcombeUpper: difference?.newcombe.upper ?? null,
      },
      chisq: plain?.chiSquare ?? null,
      chisqP: plain?.p ?? null,
      chisqYates: yates?.chiSquare ?? null,
      chisqYatesP: yates?.p ?? null,
    };
  },
  tolerance: ([field], want) => {
    if (field === 'fisherP') return { relative: 1e-9, absolute: 1e-300 };
    if (field === 'chisqP' || field === 'chisqYatesP') return tailProbability(want);
    return typeof field === 'string' && field.startsWith('or') ? { relative: 1e-6, absolute: 1e-12 } : closedForm;
  },
};
