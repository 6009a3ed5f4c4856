import { parentPort, workerData } from 'node:worker_threads';
import highsPackage from 'highs';
import { planModel } from '#core/work/plan/planModel.ts';
import { PlanSearch, searchPlan } from '#core/work/plan/searchPlan.ts';
import type { PlanDraft, PlanProblem } from '#core/work/plan/planProblem.ts';

/*
 * The threads that make a plan. One searches: a good plan at once, then better ones, by counted steps, so that it ends with
 * the same plan on any machine. The other proves how near to the best that is, by the whole-number programme, and ends when
 * that is near enough or when its seconds are over; a plan that it finds on the way is taken where it is better. Each says
 * better plans and bounds as they come and ends by itself; stopping one is ending its thread.
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
const longSearch = 180;
/** The search goes on by so many steps while they bring something, up to a number of times. */
const moreSearch = 150;
const mostSearches = 4;
/** Outings to choose from with half a dozen yards; where there are more, the search is so much shorter. */
const usual = 1500;
const seconds = 14;
const closeEnough = 0.01;

type Load = typeof highsPackage.default;
type Say = (news: PlanNews) => void;

function search(problem: PlanProblem, say: Say): void {
  const share = Math.min(1, usual / Math.max(1, problem.outings.length));
  const searched = new PlanSearch(problem);
  let best = searched.search(Math.floor(firstSearch * share));
  say({ draft: best, bound: null, done: false });
  for (let times = 0; times <= mostSearches; times += 1) {
    const next = searched.search(Math.ceil((times === 0 ? longSearch : moreSearch) * share));
    if (next.cost >= best.cost - 1e-6) break;
    best = next;
    say({ draft: best, bound: null, done: false });
  }
  say({ draft: null, bound: null, done: true });
}

/** Begins with a plan that is as good as the search's first. */
async function prove(problem: PlanProblem, say: Say): Promise<void> {
  const highs = await ((typeof highsPackage === 'function' ? highsPackage : highsPackage.default) as Load)();
  const { milp, base, toDraft, fromDraft } = planModel(problem);
  const { variables, rows } = milp;
  const from = searchPlan(problem, Math.floor(firstSearch * Math.min(1, usual / Math.max(1, problem.outings.length))));
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { terms } of rows) {
    for (const [variable, factor] of terms) {
      indices.push(variable);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const { continuous, integer } = highs.constants.variableType;
  const { mipLogging, mipImprovingSolution } = highs.constants.callbackType;
  highs.withModel(
    {
      numCols: variables.length, numRows: rows.length, colCost: variables.map(({ cost }) => cost), colLower: variables.map(({ low }) => low), colUpper: variables.map(({ high }) => high ?? highs.infinity),
      rowLower: rows.map(({ low }) => low ?? -highs.infinity), rowUpper: rows.map(({ high }) => high ?? highs.infinity),
      matrix: { format: 'csr', numRows: rows.length, numCols: variables.length, starts, indices, values }, integrality: variables.map(({ whole }) => (whole ? integer : continuous)),
    },
    (task) => {
      // Without output nothing is said of the bound on the way either.
      task.options.set({ output_flag: true, log_to_console: false, mip_rel_gap: closeEnough, time_limit: seconds, random_seed: 1 });
      task.setSolution({ colValue: fromDraft(from) });
      let [best, bound] = [from.cost, Number.NEGATIVE_INFINITY];
      const note = (now: number | undefined): undefined => {
        if (now === undefined || !Number.isFinite(now) || now <= bound + 1e-6) return;
        bound = now;
        say({ draft: null, bound: base + now, done: false });
      };
      task.run({
        [mipImprovingSolution]: ({ data }) => {
          if (data.mip_solution === undefined) return;
          const draft = toDraft(data.mip_solution);
          if (draft.cost >= best - 1e-6) return;
          best = draft.cost;
          say({ draft, bound: null, done: false });
        },
        [mipLogging]: ({ data }) => note(data.mip_dual_bound),
      });
      note(Number(task.info.get('mip_dual_bound')));
      say({ draft: null, bound: null, done: true });
    },
  );
}

if (parentPort !== null) {
  const port = parentPort;
  const { problem, part } = workerData as PlanWork;
  const say: Say = (news) => port.postMessage(news);
  if (part === 'search') search(problem, say);
  else {
    prove(problem, say).catch((error: unknown) => setImmediate(() => {
      throw error;
    }));
  }
}
