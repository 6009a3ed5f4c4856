import type { MilpAnswer, MilpModel, MilpSolver } from '#core/order/milp.ts';
import { highsModel, loadHighs, type Highs } from './highsModel.ts';

let loaded: Promise<MilpSolver> | null = null;

/** The solver, loaded when it is first needed (some tens of milliseconds) and kept. */
export function highsSolver(): Promise<MilpSolver> {
  loaded ??= loadHighs().then((highs) => ({ name: 'HiGHS', solve: (model) => solve(highs, model) }), (error: unknown) => {
    loaded = null;
    throw error;
  });
  return loaded;
}

/** Gaps are set to nothing, so that “optimal” means the best there is and not nearly so. */
function solve(highs: Highs, model: MilpModel): MilpAnswer {
  return highs.withModel(
    highsModel(highs, model),
    (task): MilpAnswer => {
      task.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-6, time_limit: 30 });
      task.run();
      const code = task.getModelStatus();
      const word = Object.entries(highs.constants.modelStatus).find(([, value]) => value === code)?.[0] ?? String(code);
      if (code === highs.constants.modelStatus.optimal) {
        return { status: 'optimal', word, objective: task.getObjectiveValue(), values: Array.from(task.getSolution().colValue), gap: Number(task.info.get('mip_gap')) };
      }
      const { infeasible, unboundedOrInfeasible } = highs.constants.modelStatus;
      return { status: code === infeasible || code === unboundedOrInfeasible ? 'infeasible' : 'other', word, objective: Number.NaN, values: [], gap: Number.NaN };
    },
  );
}
