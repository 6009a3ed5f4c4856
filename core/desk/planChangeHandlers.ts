import type { PlanChoice } from '#shared/contract/work.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Store } from '#core/book/store.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { choicePaperOf, noLongerHeld, requireChoice, sameChoice, unusedKey, withoutChoice } from './planChoices.ts';
import { planRuns, type PlanRun } from './planRun.ts';
import { readChoices, readKeptPlan } from './workPapers.ts';
import { progressOf, startPlan } from './workPlanHandlers.ts';

/** What was said of a plan at once, and the plan that was there before it. */
interface Change {
  readonly key: string;
  readonly lifted: readonly PlanChoice[];
  readonly chosen: readonly PlanChoice[];
  readonly before: Shown;
}

interface Shown {
  /** Null: the kept plan was shown. */
  readonly run: PlanRun | null;
  readonly keptAt: number | null;
  readonly choices: readonly PlanChoice[];
}

/** Plans are large, and nobody goes back further step by step. */
const remembered = 8;

/** The changes of each open book, the oldest first; they go with the book, as the searches do. */
const changes = new WeakMap<Store, Change[]>();

/** What is said of a plan all at once, and taken back with the very plan that was there. */
export const planChangeHandlers: Handlers<'work.change' | 'work.changeBack'> = {
  'work.change': async ({ lift, choose }, context) => {
    const { store } = context.open();
    for (const said of choose) await requireChoice(context, said);
    const before = await shownNow(context);
    const lifted = before.choices.filter(({ key }) => lift.includes(key));
    if (lifted.length < new Set(lift).size) throw noLongerHeld();
    const chosen: PlanChoice[] = [];
    for (const said of choose) {
      const there = [...before.choices.filter((one) => !lifted.includes(one)), ...chosen];
      if (!there.some((one) => sameChoice(one, said))) chosen.push({ key: await unusedKey(store, 'c', [...before.choices, ...chosen]), ...said });
    }
    const own = changes.get(store) ?? [];
    const change: Change = { key: await unusedKey(store, 'b', own), lifted, chosen, before };
    await store.keepPapers([...lifted.map(({ key }) => withoutChoice(key)), ...chosen.map(choicePaperOf)]);
    changes.set(store, [...own, change].slice(-remembered));
    await startPlan(context);
    return { back: change.key, progress: progressOf(context) };
  },
  'work.changeBack': async ({ back }, context) => {
    const { store } = context.open();
    const own = changes.get(store) ?? [];
    const change = own.find(({ key }) => key === back);
    if (change === undefined) throw new FaultError(refuse('unknown', 'That can no longer be taken back.', { mend: 'Let go below the plan what is not to hold.' }));
    const now = await readChoices(store);
    if (!change.chosen.every((one) => now.some(({ key }) => key === one.key)) || change.lifted.some((one) => now.some((other) => sameChoice(one, other)))) {
      throw new FaultError(refuse('moved-on', 'Something of it was changed meanwhile, so nothing was taken back.', { mend: 'See what is fixed below the plan.' }));
    }
    await store.keepPapers([...change.chosen.map(({ key }) => withoutChoice(key)), ...change.lifted.map(choicePaperOf)]);
    changes.set(store, own.filter((one) => one !== change));
    const same = await putBack(change.before, context);
    if (!same) await startPlan(context);
    return { same, progress: progressOf(context) };
  },
};

async function shownNow(context: DeskContext): Promise<Shown> {
  const { store } = context.open();
  const run = planRuns.get(store) ?? null;
  return { run: run?.plan == null ? null : run, keptAt: (await readKeptPlan(store))?.position ?? null, choices: await readChoices(store) };
}

/** Shows a plan as it was, if all that holds it is as it was then; false where that is not so. */
async function putBack({ run, keptAt, choices }: Shown, context: DeskContext): Promise<boolean> {
  const { store } = context.open();
  const now = await shownNow(context);
  const inOrder = (own: readonly PlanChoice[]) => JSON.stringify(own.toSorted((a, b) => (a.key < b.key ? -1 : 1)));
  if (inOrder(now.choices) !== inOrder(choices)) return false;
  // A plan that was worked out on an earlier day begins with days that are over.
  if (run === null ? now.keptAt !== keptAt || keptAt === null : run.today !== (await context.open().today(context.options.now().day))) return false;
  planRuns.get(store)?.stop();
  if (run === null) planRuns.delete(store);
  else planRuns.set(store, run);
  return true;
}
