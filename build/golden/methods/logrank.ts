import { z } from 'zod';
import { logRank, logRankPairs } from '#core/stats/logRank.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { logRankForm, logRankTolerance } from '../logRankForm.ts';
import { column, spansOf } from '../survivalColumns.ts';

const input = z.object({ group: z.string() });

export const logrank: GoldenMethod = {
  method: 'logrank',
  compute: (given, columns) => {
    const spans = spansOf(columns);
    const group = column(columns, input.parse(given).group);
    return logRankForm(logRank(spans, group), logRankPairs(spans, group));
  },
  tolerance: logRankTolerance,
};
