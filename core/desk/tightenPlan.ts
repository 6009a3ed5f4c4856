import type { MilpModel } from '#core/order/milp.ts';
import { dayCuts, type Cut } from '#core/work/plan/dayCuts.ts';
import type { PlanModel } from '#core/work/plan/planModel.ts';
import { highsModel, rowsOf, type Highs } from './highsModel.ts';

/** The relaxed programme is solved and cut so many times, or until a time brings less than this share of the bound. */
const mostTimes = 10;
const worthWhile = 5e-4;

/**
 * The programme with the rows that its relaxed answer breaks: solved as if nothing had to be whole, cut, and solved again
 * (the cutting plane method, Kelley 1960). Rows that do not bind at the end are left out again. `onBound` hears what no plan can cost less than.
 */
export function tightenPlan(highs: Highs, { milp, base, dayWork }: PlanModel, onBound: (bound: number) => void = () => undefined): MilpModel {
  const cuts: Cut[] = [];
  return highs.withModel(highsModel(highs, milp, true), (task): MilpModel => {
    task.options.set({ output_flag: false });
    let last = Number.NEGATIVE_INFINITY;
    for (let times = 0; ; times += 1) {
      task.run();
      if (task.getModelStatus() !== highs.constants.modelStatus.optimal) return milp;
      const { colValue, rowValue } = task.getSolution();
      const bound = base + task.getObjectiveValue();
      onBound(bound);
      const found = times < mostTimes && bound - last > worthWhile * Math.abs(bound) ? dayCuts(dayWork, colValue) : [];
      last = bound;
      if (found.length === 0) return { variables: milp.variables, rows: [...milp.rows, ...cuts.filter(({ high }, at) => (rowValue[milp.rows.length + at] ?? 0) > (high ?? 0) - 1e-6)] };
      cuts.push(...found);
      task.addRows({ lower: Float64Array.from(found, ({ low }) => low ?? -highs.infinity), upper: Float64Array.from(found, ({ high }) => high ?? highs.infinity), matrix: { format: 'csr', numRows: found.length, numCols: milp.variables.length, ...rowsOf(found) } });
    }
  });
}
