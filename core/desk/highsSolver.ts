import highsPackage from 'highs';
import type { MilpAnswer, MilpModel, MilpSolver } from '#core/order/milp.ts';

type Load = typeof highsPackage.default;
type Highs = Awaited<ReturnType<Load>>;

/** The package's types describe its CommonJS form; as an ES module its default is the loader itself. */
const load = (typeof highsPackage === 'function' ? highsPackage : highsPackage.default) as Load;

let loaded: Promise<MilpSolver> | null = null;

/** The solver, loaded when it is first needed (some tens of milliseconds) and kept. */
export function highsSolver(): Promise<MilpSolver> {
  loaded ??= load().then((highs) => ({ name: 'HiGHS', solve: (model) => solve(highs, model) }), (error: unknown) => {
    loaded = null;
    throw error;
  });
  return loaded;
}

/** Gaps are set to nothing, so that “optimal” means the best there is and not nearly so. */
function solve(highs: Highs, model: MilpModel): MilpAnswer {
  const { continuous, integer } = highs.constants.variableType;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { terms } of model.rows) {
    for (const [variable, factor] of terms) {
      indices.push(variable);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const bound = (value: number | null, none: number) => value ?? none;
  return highs.withModel(
    {
      numCols: model.variables.length,
      numRows: model.rows.length,
      colCost: model.variables.map(({ cost }) => cost),
      colLower: model.variables.map(({ low }) => low),
      colUpper: model.variables.map(({ high }) => bound(high, highs.infinity)),
      rowLower: model.rows.map(({ low }) => bound(low, -highs.infinity)),
      rowUpper: model.rows.map(({ high }) => bound(high, highs.infinity)),
      matrix: { format: 'csr', numRows: model.rows.length, numCols: model.variables.length, starts, indices, values },
      integrality: model.variables.map(({ whole }) => (whole ? integer : continuous)),
    },
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
