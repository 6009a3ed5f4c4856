import type { WorkPlan } from '#shared/contract/work.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { workTasks } from '#core/work/workTasks.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { readFreeHours } from './freeHours.ts';
import { nextKey } from './offerPapers.ts';
import { PlanRun, planRuns } from './planRun.ts';
import { workFactsOf } from './workFactsOf.ts';
import { keptPlanPaper, readChoices, readDistances, readKeptPlan } from './workPapers.ts';

type Names = 'work.tasks' | 'work.plan' | 'work.replan' | 'work.progress' | 'work.stop' | 'work.keepPlan';

/** The tasks of the next weeks, and the plan that goes to them. */
export const workPlanHandlers: Handlers<Names> = {
  'work.tasks': async (_, context) => {
    const facts = await workFactsOf(context);
    const { tasks } = workTasks(facts);
    const without = facts.yards.filter(({ id, minutes }) => minutes === null && tasks.some(({ yard }) => yard === id));
    return { today: facts.today, until: facts.until, tasks, remarks: without.map(({ name }) => `Nobody wrote down how long it takes to drive to ${name}.`) };
  },
  'work.plan': async (_, context) => {
    const { store } = context.open();
    const kept = await readKeptPlan(store);
    const choices = await readChoices(store);
    if (kept === null) return { kept: null, choices, stale: null };
    const moved = (await store.position()) - kept.position;
    return { kept: { made: kept.made, plan: kept.plan }, choices, stale: moved <= 0 ? null : 'The record has moved on since this plan was kept. Plan again to take it in.' };
  },
  'work.replan': async (_, context) => {
    const { store } = context.open();
    const last = planRuns.get(store);
    last?.stop();
    const facts = await workFactsOf(context);
    const { tasks, pace } = workTasks(facts);
    const { hours } = await readFreeHours(store);
    const kept = (await readKeptPlan(store))?.plan ?? null;
    // What was last shown is what somebody had before their eyes when they moved a visit of it.
    const before: WorkPlan | null = last !== undefined && last.today === facts.today ? last.plan : kept;
    const run = new PlanRun({ facts, tasks, pace, hours, distances: await readDistances(store), choices: await readChoices(store), before }, kept, await store.position());
    planRuns.set(store, run);
    return run.progress();
  },
  'work.progress': (_, context) => Promise.resolve(progressOf(context)),
  'work.stop': (_, context) => {
    planRuns.get(context.open().store)?.stop();
    return Promise.resolve(progressOf(context));
  },
  'work.keepPlan': async (_, context) => {
    const { store } = context.open();
    const run = planRuns.get(store);
    if (run === undefined) throw new FaultError(refuse('refused', 'No plan has been worked out yet.', { mend: 'Make a plan first.' }));
    run.stop();
    const made = context.options.now().stamp;
    await store.keepPapers([await keptPlanPaper(store, { made, plan: run.plan, position: run.position }, (keys) => nextKey('w', keys))]);
    return { made, plan: run.plan };
  },
};

function progressOf(context: DeskContext) {
  return planRuns.get(context.open().store)?.progress() ?? { state: 'none' as const, plan: null, seconds: 0, says: 'No plan has been worked out yet.' };
}
