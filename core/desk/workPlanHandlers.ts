import { FaultError, refuse } from '#shared/faults.ts';
import type { Handlers } from './desk.ts';

type Names = 'work.tasks' | 'work.plan' | 'work.replan' | 'work.progress' | 'work.stop' | 'work.keepPlan';

const later = () => {
  throw new FaultError(refuse('refused', 'The plan of the work cannot be made yet.'));
};
export const workPlanHandlers: Handlers<Names> = { 'work.tasks': later, 'work.plan': later, 'work.replan': later, 'work.progress': later, 'work.stop': later, 'work.keepPlan': later };
