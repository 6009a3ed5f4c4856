import { parentPort, workerData } from 'node:worker_threads';
import highsPackage from 'highs';
import { planModel } from '#core/work/plan/planModel.ts';
import { searchPlan } from '#core/work/plan/searchPlan.ts';
import type { PlanDraft, PlanProblem } from '#core/work/plan/planProblem.ts';

/*
 * A thread of its own that makes a plan: a good one at once, then the search for longer, then the whole-number programme from
 * where it came to rest. It says each better plan and each better bound as it comes, and ends by itself; stopping it is ending the thread.
 * The search counts its steps, so it ends with the same plan on any machine; the programme proves how near to the best that is
 * for so many seconds, and may come further on a faster machine.
 */
export interface PlanNews {
  readonly draft: PlanDraft | null;
  /** No plan can cost less; null while nothing is proven. */
  readonly bound: number | null;
  readonly done: boolean;
}

const firstSearch = 20;
const longSearch = 200;
/** Outings to choose from with half a dozen yards; where there are more, the search is so much shorter. */
const usual = 1500;
const seconds = 14;
const closeEnough = 0.01;

type Load = typeof highsPackage.default;

async function improve(problem: PlanProblem, say: (news: PlanNews) => void): Promise<void> {
  const share = Math.min(1, usual / Math.max(1, problem.outings.length));
  const start = searchPlan(problem, Math.floor(firstSearch * share));
  say({ draft: start, bound: null, done: false });
  const searched = searchPlan(problem, Math.ceil(longSearch * share), start.outing);
  const from = searched.cost < start.cost ? searched : start;
  if (from !== start) say({ draft: from, bound: null, done: false });
  const highs = await ((typeof highsPackage === 'function' ? highsPackage : highsPackage.default) as Load)();
  const { milp, base, toDraft, fromDraft } = planModel(problem);
  const { variables, rows } = milp;
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
      task.options.set({ output_flag: false, mip_rel_gap: closeEnough, time_limit: seconds, random_seed: 1 });
      task.setSolution({ colValue: fromDraft(from) });
      let [best, bound] = [from.cost, Number.NEGATIVE_INFINITY];
      task.run({
        [mipImprovingSolution]: ({ data }) => {
          if (data.mip_solution === undefined) return;
          const draft = toDraft(data.mip_solution);
          if (draft.cost >= best - 1e-6) return;
          best = draft.cost;
          say({ draft, bound: null, done: false });
        },
        [mipLogging]: ({ data }) => {
          const now = data.mip_dual_bound;
          if (now === undefined || !Number.isFinite(now) || now <= bound + 1e-6) return;
          bound = now;
          say({ draft: null, bound: base + now, done: false });
        },
      });
      const proven = task.info.get('mip_dual_bound');
      say({ draft: null, bound: Number.isFinite(proven) ? base + Number(proven) : null, done: true });
    },
  );
}

if (parentPort !== null) {
  const port = parentPort;
  improve(workerData as PlanProblem, (news) => port.postMessage(news)).catch((error: unknown) => setImmediate(() => {
    throw error;
  }));
}
