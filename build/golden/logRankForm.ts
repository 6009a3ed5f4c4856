import { z } from 'zod';
import type { LogRank, LogRankPair } from '#core/stats/logRank.ts';
import { Asked, type Tolerance } from './compare.ts';
import { closedForm, tailProbability } from './tolerances.ts';

const asked = z.object({ groups: z.array(z.string()) });
const askedPairs = z.array(z.object({ a: z.string(), b: z.string() }));

/** A log-rank test in the words of the file, its groups in the order asked for (R sorts text by locale). */
export function logRankForm(test: LogRank, pairs: readonly LogRankPair[] = []): Asked {
  return new Asked((want) => {
    const { groups } = asked.parse(want);
    const order = groups.map((group) => test.groups.indexOf(group));
    return {
      n: test.n,
      // The whole list goes in if a group is missing from the file, so that its lack is seen.
      groups: groups.length === test.groups.length ? order.map((at) => test.groups[at]) : test.groups,
      observed: order.map((at) => test.observed[at]),
      expected: order.map((at) => test.expected[at]),
      variance: order.map((at) => order.map((other) => test.variance[at]?.[other])),
      chisq: test.chiSquare,
      df: test.df,
      p: test.p,
      pairwise: new Asked((wanted) => pairsForm(pairs, wanted)),
    };
  });
}

function pairsForm(pairs: readonly LogRankPair[], wanted: unknown): unknown {
  const forms = askedPairs.parse(wanted).map(({ a, b }) => {
    const pair = pairs.find((one) => (one.a === a && one.b === b) || (one.a === b && one.b === a));
    return pair === undefined ? undefined : { a, b, chisq: pair.chiSquare, p: pair.p, pHolm: pair.pHolm };
  });
  return forms.length === pairs.length ? forms : pairs;
}

const COUNTS = new Set(['n', 'df', 'observed']);

export const logRankTolerance: Tolerance = (path, want) => {
  const field = path.findLast((step) => typeof step === 'string');
  if (field === 'p' || field === 'pHolm') return tailProbability(want);
  return typeof field === 'string' && COUNTS.has(field) ? 'exact' : closedForm;
};
