import type { MilpModel } from '#core/order/milp.ts';
import type { PlanModel } from '#core/work/plan/planModel.ts';
import type { PlanDraft, PlanProblem } from '#core/work/plan/planProblem.ts';
import { highsModel, type Highs } from './highsModel.ts';

/** Days whose outings are free at a time, and by how many days the stretch goes on. */
const stretch = 14;
const goesOn = 7;
const mostTimes = 3;
/** One stretch is looked at until it is as near as this to its best, or for so many steps of the simplex method. */
const closeEnough = 0.002;
const mostSteps = 2500;
/** A backstop only: seconds after which nothing more is begun. */
const mostSeconds = 60;

/**
 * Makes a plan better by the whole-number programme a stretch of days at a time: the outings of the other days stay as they
 * are, those of the stretch and all work are chosen anew, and the stretch goes on over the weeks, again and again while that
 * brings something (fix and optimise, Helber and Sahling 2010). What ends a stretch is counted in steps, so the same problem
 * gives the same plan on any machine.
 */
export function refinePlan(highs: Highs, problem: PlanProblem, { fromDraft, toDraft, outingVariables }: PlanModel, milp: MilpModel, from: PlanDraft, onBetter: (draft: PlanDraft) => void): PlanDraft {
  const began = performance.now();
  const dayOf = new Map(outingVariables.map((variable, at) => [variable, problem.outings[at]?.day ?? -1]));
  let best = from;
  let changes = 0;
  /** How many changes there had been when a stretch was last looked at. */
  const looked = new Map<number, number>();
  const refine = (first: number, last: number) => {
    if (looked.get(first) === changes || performance.now() - began > 1000 * mostSeconds) return;
    const values = fromDraft(best);
    const variables = milp.variables.map((variable, at) => {
      const day = dayOf.get(at);
      const fixed = values[at] ?? 0;
      return day === undefined || (day >= first && day < last) ? variable : { ...variable, low: fixed, high: fixed };
    });
    const found = highs.withModel(highsModel(highs, { variables, rows: milp.rows }), (task): PlanDraft | null => {
      task.options.set({ output_flag: false, mip_rel_gap: closeEnough, random_seed: 1 });
      task.setSolution({ colValue: values });
      let improved: Float64Array | null = null;
      const { mipImprovingSolution, mipInterrupt } = highs.constants.callbackType;
      task.run({
        [mipImprovingSolution]: ({ data }) => {
          improved = data.mip_solution ?? improved;
        },
        [mipInterrupt]: (event) => {
          if (Number(event.data.mip_total_lp_iterations ?? 0) > mostSteps) event.interrupt();
        },
      });
      // What is found at the very end is not told on the way.
      const known = Number(task.info.get('primal_solution_status')) === highs.constants.solutionStatus.feasible;
      return known ? toDraft(task.getSolution().colValue) : improved === null ? null : toDraft(improved);
    });
    if (found !== null && found.cost < best.cost - 1e-6) {
      best = found;
      changes += 1;
      onBetter(best);
    }
    looked.set(first, changes);
  };
  for (let times = 0; times < mostTimes; times += 1) {
    const was = changes;
    for (let first = goesOn - stretch; first < problem.days; first += goesOn) refine(first, first + stretch);
    if (changes === was) break;
  }
  return best;
}
