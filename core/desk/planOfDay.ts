import type { WorkPlan } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { DeskContext } from './desk.ts';
import { planRuns } from './planRun.ts';
import { readKeptPlanOf } from './workPapers.ts';

export interface PlanOfDay {
  readonly plan: WorkPlan | null;
  /** The last that was kept of those that reach that day. */
  readonly kept: WorkPlan | null;
}

/** The plan that tells what is done on a day: the one worked out last, else the last kept one that reaches it. */
export async function planOfDay(context: DeskContext, day: Day): Promise<PlanOfDay> {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const reaches = ({ from, until }: WorkPlan) => from <= day && day <= until;
  const found = planRuns.get(book.store)?.plan ?? null;
  // Papers have no day of their own in the book: a plan kept later than the day looked at was not there then.
  const kept = (await readKeptPlanOf(book.store, day, today))?.plan ?? null;
  return { plan: found !== null && reaches(found) ? found : kept, kept };
}
