import type { Tolerance } from './compare.ts';
import type { Columns } from './goldenFile.ts';

/** A method of the golden file that this program computes: one adapter, one file in methods/. */
export interface GoldenMethod {
  /** As spelled in the file. */
  readonly method: string;
  /** The value in the file's own form, from the input and the data set's columns. Throws if it cannot be had. */
  readonly compute: (input: Readonly<Record<string, unknown>>, columns: Columns) => unknown;
  readonly tolerance: Tolerance;
}
