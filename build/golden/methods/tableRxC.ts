import { z } from 'zod';
import { chiSquareTable } from '#core/stats/chiSquareTable.ts';
import { fisherExactTable } from '#core/stats/fisherExactTable.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { closedForm, tailProbability } from '../tolerances.ts';

const input = z.object({ table: z.array(z.array(z.number())) });

export const tableRxC: GoldenMethod = {
  method: 'tableRxC',
  compute: (given) => {
    const { table } = input.parse(given);
    const pearson = chiSquareTable(table);
    return {
      fisherP: fisherExactTable(table, 400_000_000),
      chisq: pearson?.chiSquare ?? null,
      df: pearson?.df ?? null,
      chisqP: pearson?.p ?? null,
      minExpected: pearson?.smallestExpected ?? null,
    };
  },
  tolerance: ([field], want) => {
    if (field === 'df') return 'exact';
    if (field === 'fisherP') return { relative: 1e-9, absolute: 1e-300 };
    return field === 'chisqP' ? tailProbability(want) : closedForm;
  },
};
