import type { InputOf } from '#shared/contract/contract.ts';
import type { OrderPlan } from '#shared/contract/order.ts';
import type { United } from '#shared/contract/values.ts';
import { useRead, type Reading } from '../../desk/useDesk.ts';
import type { PlanChoice } from './usePlanChoice.ts';

/** The plan for a choice; nothing is asked until there is one. */
export function usePlan(choice: PlanChoice | null | undefined, united: United): Reading<OrderPlan> {
  return useRead('order.plan', planInput(choice, united), { enabled: choice !== null && choice !== undefined, keep: true });
}

function planInput(choice: PlanChoice | null | undefined, united: United): InputOf<'order.plan'> {
  return {
    ...(choice?.target === null || choice?.target === undefined ? {} : { target: choice.target }),
    ...(choice ? { confidence: choice.confidence } : {}),
    source: choice?.source ?? 'package',
    hiveFrames: choice?.hiveFrames ?? 10,
    united,
  };
}
