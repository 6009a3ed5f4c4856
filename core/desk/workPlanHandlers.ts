import type { PlanProgress } from '#shared/contract/work.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { PlanFacts } from '#core/work/plan/makeProblem.ts';
import { workTasks } from '#core/work/workTasks.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { readFreeHours } from './freeHours.ts';
import { nextKey } from './offerPapers.ts';
import { planMark } from './planMark.ts';
import { PlanRun, planRuns } from './planRun.ts';
import { workFactsOf } from './workFactsOf.ts';
import { keptPlanPaper, readChoices, readDistances, readKeptPlan } from './workPapers.ts';

type Names = 'work.tasks' | 'work.plan' | 'work.replan' | 'work.progress' | 'work.stop' | 'work.keepPlan';

/** Milliseconds for which the answer waits for the first plan; where it takes longer, it is asked for while it goes on. */
const patience = 2000;

/** What each search was made from. */
const marks = new WeakMap<PlanRun, string>();

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
    const moved = kept.mark === undefined ? (await store.position()) > kept.position : (await planMark(context.open())) !== kept.mark;
    return { kept: { made: kept.made, plan: kept.plan }, choices, stale: moved ? 'The record, the rules or the hours have moved on since this plan was made. Plan again to take that in.' : null };
  },
  'work.replan': async (_, context) => {
    const { store } = context.open();
    const last = planRuns.get(store);
    last?.stop();
    const asked = await planFactsOf(context);
    // What was last shown is what somebody had before their eyes when they moved a visit of it.
    const before = last !== undefined && last.today === asked.facts.today ? last.plan : asked.kept;
    const run = new PlanRun({ ...asked, before }, await store.position(), context.options.log);
    planRuns.set(store, run);
    marks.set(run, await planMark(context.open()));
    await Promise.race([run.first, new Promise((resolve) => setTimeout(resolve, patience).unref())]);
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
    const { plan } = run;
    if (plan === null) throw new FaultError(refuse('refused', 'The plan was stopped before there was any.', { mend: 'Make one again and wait for it.' }));
    // The day that the book goes by: a demo ends on a day of its own.
    const { stamp } = context.options.now();
    const made = `${await context.open().today(context.options.now().day)}${stamp.slice(10)}`;
    // Keeping it moves the record on by one as well.
    await store.keepPapers([await keptPlanPaper(store, { made, plan, position: run.position + 1, mark: marks.get(run) }, (keys) => nextKey('w', keys))]);
    return { made, plan };
  },
};

/** Everything a plan is made of, read from the book as it is. */
export async function planFactsOf(context: DeskContext): Promise<PlanFacts> {
  const { store } = context.open();
  const facts = await workFactsOf(context);
  const { tasks, pace } = workTasks(facts);
  const kept = (await readKeptPlan(store))?.plan ?? null;
  return { facts, tasks, pace, hours: (await readFreeHours(store)).hours, distances: await readDistances(store), choices: await readChoices(store), kept, before: kept };
}

function progressOf(context: DeskContext): PlanProgress {
  return planRuns.get(context.open().store)?.progress() ?? { state: 'none', plan: null, seconds: 0, says: 'No plan has been worked out yet.' };
}
