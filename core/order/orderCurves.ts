import type { OutputOf } from '#shared/contract/contract.ts';
import type { DecisionQuestion } from '#shared/contract/decision.ts';
import type { Chance } from './chance.ts';
import { prepareOrder, type DecisionFacts, type PreparedOrder } from './decideOrder.ts';
import type { MilpSolver } from './milp.ts';
import { solveOrder } from './solveOrder.ts';

type Curves = OutputOf<'order.curves'>;

export const curveConfidences = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95] as const;

/** What an order costs at one target and confidence; a prepared question may be asked at many. */
function pointOf({ problem, coming }: PreparedOrder, at: { target: number; confidence: number }, solver: MilpSolver): Curves['byTarget'][number] {
  const order = solveOrder({ ...problem, target: Math.max(0, at.target - coming), confidence: at.confidence }, solver);
  return { ...at, total: order?.total ?? null, cash: order?.cash ?? null, bought: order?.choice.bought ?? null, splits: order?.choice.splits ?? null };
}

export function orderPoint(question: DecisionQuestion, at: { target: number; confidence: number }, facts: DecisionFacts, solver: MilpSolver, chance: Chance): Curves['byTarget'][number] {
  return pointOf(prepareOrder({ ...question, ...at }, facts, chance), at, solver);
}

/** Cost against confidence at the target asked for, and against targets about it at the confidence asked for. */
export function orderCurves(question: DecisionQuestion, facts: DecisionFacts, solver: MilpSolver, chance: Chance): Curves {
  const prepared = prepareOrder(question, facts, chance);
  const { target, confidence } = prepared;
  const point = (at: { target: number; confidence: number }) => pointOf(prepared, at, solver);
  const step = Math.max(1, Math.round(target / 20));
  const targets = [-3, -2, -1, 0, 1, 2, 3].map((times) => target + times * step).filter((one) => one >= 0);
  return {
    byConfidence: curveConfidences.map((one) => point({ target, confidence: one })),
    byTarget: targets.map((one) => point({ target: one, confidence })),
  };
}
