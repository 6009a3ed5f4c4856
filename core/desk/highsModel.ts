import highsPackage from 'highs';
import type { MilpModel } from '#core/order/milp.ts';

type Load = typeof highsPackage.default;
export type Highs = Awaited<ReturnType<Load>>;

/** The package's types describe its CommonJS form; as an ES module its default is the loader itself. */
export const loadHighs = (typeof highsPackage === 'function' ? highsPackage : highsPackage.default) as Load;

/** Rows as the solver takes them: where each begins, its variables, its factors. */
export function rowsOf(rows: MilpModel['rows']): { starts: Int32Array; indices: Int32Array; values: Float64Array } {
  const [starts, indices, values]: [number[], number[], number[]] = [[0], [], []];
  for (const { terms } of rows) {
    for (const [variable, factor] of terms) {
      indices.push(variable);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  return { starts: Int32Array.from(starts), indices: Int32Array.from(indices), values: Float64Array.from(values) };
}

/** The programme as the solver takes it; `relaxed`: variables that are to be whole may be any number. */
export function highsModel(highs: Highs, { variables, rows }: MilpModel, relaxed = false) {
  const { continuous, integer } = highs.constants.variableType;
  return {
    numCols: variables.length,
    numRows: rows.length,
    colCost: variables.map(({ cost }) => cost),
    colLower: variables.map(({ low }) => low),
    colUpper: variables.map(({ high }) => high ?? highs.infinity),
    rowLower: rows.map(({ low }) => low ?? -highs.infinity),
    rowUpper: rows.map(({ high }) => high ?? highs.infinity),
    matrix: { format: 'csr' as const, numRows: rows.length, numCols: variables.length, ...rowsOf(rows) },
    integrality: variables.map(({ whole }) => (whole && !relaxed ? integer : continuous)),
  };
}
