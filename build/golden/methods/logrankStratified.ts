import { z } from 'zod';
import { logRankStratified } from '#core/stats/logRank.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { logRankForm, logRankTolerance } from '../logRankForm.ts';
import { column, spansOf } from '../survivalColumns.ts';

const input = z.object({ group: z.string(), stratum: z.string() });

export const logrankStratified: GoldenMethod = {
  method: 'logrankStratified',
  compute: (given, columns) => {
    const { group, stratum } = input.parse(given);
    return logRankForm(logRankStratified(spansOf(columns), column(columns, group), column(columns, stratum)));
  },
  tolerance: logRankTolerance,
};
