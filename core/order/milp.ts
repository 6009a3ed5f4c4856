/** A whole-number programme: least cost of the variables, each row of terms within its bounds. Null is no bound. */
export interface MilpModel {
  readonly variables: readonly { readonly name: string; readonly low: number; readonly high: number | null; readonly whole: boolean; readonly cost: number }[];
  readonly rows: readonly { readonly name: string; readonly terms: readonly Term[]; readonly low: number | null; readonly high: number | null }[];
}

/** Place of a variable in the model, and its factor. */
export type Term = readonly [variable: number, factor: number];

export interface MilpAnswer {
  /** `optimal` only where the solver proved it within the tolerance it was given. */
  readonly status: 'optimal' | 'infeasible' | 'other';
  /** The solver's own word for it. */
  readonly word: string;
  readonly objective: number;
  readonly values: readonly number[];
  /** Relative gap between the answer and the bound. */
  readonly gap: number;
}

/** Whatever solves it; the rooms know no library. */
export interface MilpSolver {
  readonly name: string;
  readonly solve: (model: MilpModel) => MilpAnswer;
}

/** Puts a model together; variables are named by the place they were given. */
export class MilpBuilder {
  readonly variables: MilpModel['variables'][number][] = [];
  readonly rows: MilpModel['rows'][number][] = [];

  whole(name: string, low: number, high: number | null, cost = 0): number {
    return this.variables.push({ name, low, high, whole: true, cost }) - 1;
  }

  real(name: string, low: number, high: number | null, cost = 0): number {
    return this.variables.push({ name, low, high, whole: false, cost }) - 1;
  }

  row(name: string, terms: readonly Term[], low: number | null, high: number | null): void {
    this.rows.push({ name, terms, low, high });
  }
}
