import { parentPort, workerData } from 'node:worker_threads';
import { planModel } from '#core/work/plan/planModel.ts';
import { PlanSearch, searchPlan } from '#core/work/plan/searchPlan.ts';
import type { PlanDraft, PlanProblem } from '#core/work/plan/planProblem.ts';
import { highsModel, loadHighs } from './highsModel.ts';
import { refinePlan } from './refinePlan.ts';
import { tightenPlan } from './tightenPlan.ts';

/*
 * The threads that make a plan. One searches: a good plan at once, then better ones, at first by moves and then a stretch of
 * days at a time by the whole-number programme; all of that ends by counted steps, so that it ends with the same plan on any
 * machine. The other proves how near to the best that is: it cuts and solves the relaxed programme, then the programme itself
 * until that is near enough or its seconds are over. Plans are never taken from it, as what it finds in its seconds depends on
 * the machine. Each says better plans and bounds as they come and ends by itself; stopping one is ending its thread.
 */
export interface PlanWork {
  readonly problem: PlanProblem;
  readonly part: 'search' | 'prove';
}

export interface PlanNews {
  readonly draft: PlanDraft | null;
  /** No plan can cost less; null while nothing is proven. */
  readonly bound: number | null;
  readonly done: boolean;
}

const firstSearch = 20;
const longSearch = 40;
/** Outings to choose from with half a dozen yards; where there are more, the search is so much shorter. */
const usual = 1500;
const seconds = 14;
const closeEnough = 0.01;

type Say = (news: PlanNews) => void;

async function search(problem: PlanProblem, say: Say): Promise<void> {
  const share = Math.min(1, usual / Math.max(1, problem.outings.length));
  const searched = new PlanSearch(problem);
  let best = searched.search(Math.floor(firstSearch * share));
  const better = (draft: PlanDraft) => {
    if (draft.cost >= best.cost - 1e-6) return;
    best = draft;
    say({ draft, bound: null, done: false });
  };
  say({ draft: best, bound: null, done: false });
  better(searched.search(Math.ceil(longSearch * share)));
  const highs = await loadHighs();
  const model = planModel(problem);
  refinePlan(highs, problem, model, tightenPlan(highs, model), best, better);
  say({ draft: null, bound: null, done: true });
}

/** Begins with a plan that is as good as the search's first, so that it need not look where nothing is better. */
async function prove(problem: PlanProblem, say: Say): Promise<void> {
  const highs = await loadHighs();
  const model = planModel(problem);
  const { base, fromDraft } = model;
  let known = Number.NEGATIVE_INFINITY;
  const note = (bound: number): undefined => {
    if (!Number.isFinite(bound) || bound <= known + 1e-6) return;
    known = bound;
    say({ draft: null, bound, done: false });
  };
  const began = performance.now();
  const milp = tightenPlan(highs, model, note);
  const from = searchPlan(problem, Math.floor(firstSearch * Math.min(1, usual / Math.max(1, problem.outings.length))));
  highs.withModel(highsModel(highs, milp), (task) => {
    // Without output nothing is said of the bound on the way either.
    task.options.set({ output_flag: true, log_to_console: false, mip_rel_gap: closeEnough, time_limit: Math.max(1, seconds - (performance.now() - began) / 1000), random_seed: 1 });
    task.setSolution({ colValue: fromDraft(from) });
    task.run({ [highs.constants.callbackType.mipLogging]: ({ data }) => (data.mip_dual_bound === undefined ? undefined : note(base + data.mip_dual_bound)) });
    note(base + Number(task.info.get('mip_dual_bound')));
  });
  say({ draft: null, bound: null, done: true });
}

if (parentPort !== null) {
  const port = parentPort;
  const { problem, part } = workerData as PlanWork;
  const say: Say = (news) => port.postMessage(news);
  (part === 'search' ? search(problem, say) : prove(problem, say)).catch((error: unknown) => setImmediate(() => {
    throw error;
  }));
}
