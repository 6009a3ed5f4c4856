import type { OutputOf } from '#shared/contract/contract.ts';
import type { DecisionQuestion } from '#shared/contract/decision.ts';
import type { Chance } from './chance.ts';
import { prepareOrder, type DecisionFacts } from './decideOrder.ts';
import type { MilpSolver } from './milp.ts';
import { solveOrder } from './solveOrder.ts';

type Curves = OutputOf<'order.curves'>;

export const curveConfidences = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95] as const;

/** Cost against confidence at the target asked for, and against targets about it at the confidence asked for. */
export function orderCurves(question: DecisionQuestion, facts: DecisionFacts, solver: MilpSolver, chance: Chance): Curves {
  const { problem, target, confidence } = prepareOrder(question, facts, chance);
  const point = (at: { target: number; confidence: number }): Curves['byTarget'][number] => {
    const order = solveOrder({ ...problem, ...at }, solver);
    return { ...at, total: order?.total ?? null, cash: order?.cash ?? null, bought: order?.choice.bought ?? null, splits: order?.choice.splits ?? null };
  };
  const step = Math.max(1, Math.round(target / 20));
  const targets = [-3, -2, -1, 0, 1, 2, 3].map((times) => target + times * step).filter((one) => one >= 0);
  return {
    byConfidence: curveConfidences.map((one) => point({ target, confidence: one })),
    byTarget: targets.map((one) => point({ target: one, confidence })),
  };
}
