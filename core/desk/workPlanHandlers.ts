import type { PlanProgress } from '#shared/contract/work.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { PlanFacts } from '#core/work/plan/makeProblem.ts';
import { workTasks } from '#core/work/workTasks.ts';
import type { Store } from '#core/book/store.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { readFreeHours } from './freeHours.ts';
import { nextKey } from './offerPapers.ts';
import { changedSince, movedOn, planMark, type PlanMark } from './planMark.ts';
import { PlanRun, planRuns } from './planRun.ts';
import { breathe } from './turns.ts';
import { workFactsOf } from './workFactsOf.ts';
import { keptPlanPaper, readChoices, readDistances, readKeptPlan, type KeptPlanPaper } from './workPapers.ts';

type Names = 'work.tasks' | 'work.plan' | 'work.replan' | 'work.progress' | 'work.stop' | 'work.keepPlan';

/** Milliseconds for which the answer waits for the first plan; where it takes longer, it is asked for while it goes on. */
const patience = 2000;

/** What each search was made from. */
const planMarks = new WeakMap<PlanRun, PlanMark>();

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
    const found = planRuns.get(store);
    const choices = await readChoices(store);
    if (kept === null && found === undefined) return { kept: null, choices, stale: null, foundStale: null };
    const now = await planMark(context.open());
    return {
      kept: kept === null ? null : { made: kept.made, plan: kept.plan }, choices,
      stale: kept === null ? null : await keptStale(kept, now, store), foundStale: found === undefined ? null : foundStale(found, now, await context.open().today(context.options.now().day)),
    };
  },
  'work.replan': async (_, context) => (await startPlan(context)).progress(),
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
    await store.keepPapers([await keptPlanPaper(store, { made, plan, position: run.position + 1, ...planMarks.get(run) }, (keys) => nextKey('w', keys))]);
    return { made, plan };
  },
};

/** The same of a plan that was worked out and not kept. */
function foundStale(run: PlanRun, now: PlanMark, today: Day): string | null {
  const then = planMarks.get(run);
  const changed = then === undefined ? null : changedSince(now, then);
  return changed ?? (run.today === today ? null : `This plan was worked out on ${dayInWords(run.today)}, and begins with that day.`);
}

/** Whether what a kept plan was made from has changed since, in words. */
async function keptStale({ mark, parts, position }: KeptPlanPaper, now: PlanMark, store: Store): Promise<string | null> {
  if (mark !== undefined) return changedSince(now, { mark, parts });
  return (await store.position()) > position ? movedOn : null;
}

/** Ends the search that goes on and begins one from the book as it is; answers when there is a first plan, or before that where it takes long. */
export async function startPlan(context: DeskContext): Promise<PlanRun> {
  const { store } = context.open();
  const last = planRuns.get(store);
  last?.stop();
  // Taken before the facts are read: what changes while they are read makes the plan old.
  const [mark, position] = [await planMark(context.open()), await store.position()];
  const asked = await planFactsOf(context);
  // What was last shown is what somebody had before their eyes when they moved a visit of it.
  const before = last !== undefined && last.today === asked.facts.today ? last.plan : asked.kept;
  // Somebody else may have begun another meanwhile.
  if (planRuns.get(store) !== last) planRuns.get(store)?.stop();
  const run = new PlanRun({ ...asked, before }, position, context.options.log);
  planRuns.set(store, run);
  planMarks.set(run, mark);
  await Promise.race([run.first, new Promise((resolve) => setTimeout(resolve, patience).unref())]);
  return run;
}

/** Everything a plan is made of, read from the book as it is. */
export async function planFactsOf(context: DeskContext): Promise<PlanFacts> {
  const { store } = context.open();
  const facts = await workFactsOf(context);
  await breathe();
  const { tasks, pace } = workTasks(facts);
  await breathe();
  const kept = (await readKeptPlan(store))?.plan ?? null;
  return { facts, tasks, pace, hours: (await readFreeHours(store)).hours, distances: await readDistances(store), choices: await readChoices(store), kept, before: kept };
}

export function progressOf(context: DeskContext): PlanProgress {
  return planRuns.get(context.open().store)?.progress() ?? { state: 'none', plan: null, seconds: 0, says: 'No plan has been worked out yet.' };
}
