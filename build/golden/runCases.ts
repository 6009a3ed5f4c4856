import { compare, type Mismatch } from './compare.ts';
import { columnsOf, type GoldenCase, type GoldenFile } from './goldenFile.ts';
import type { GoldenMethod } from './goldenMethod.ts';

/** A case that was computed and compared; `threw` is the message if computing it failed. */
export interface CaseResult {
  readonly id: string;
  readonly method: string;
  readonly mismatches: readonly Mismatch[];
  readonly threw: string | null;
}

export interface RunResult {
  readonly results: readonly CaseResult[];
  /** Methods of the file that have no adapter, with how many cases each. */
  readonly notCovered: ReadonlyMap<string, number>;
}

/** Runs the cases of a file whose method is in `only` (null: every case). */
export function runCases(
  file: GoldenFile,
  methods: ReadonlyMap<string, GoldenMethod>,
  only: ReadonlySet<string> | null = null,
): RunResult {
  const results: CaseResult[] = [];
  const notCovered = new Map<string, number>();
  for (const one of file.cases) {
    if (only !== null && !only.has(one.method)) continue;
    const method = methods.get(one.method);
    if (method === undefined) notCovered.set(one.method, (notCovered.get(one.method) ?? 0) + 1);
    else results.push(runCase(file, one, method));
  }
  return { results, notCovered };
}

function runCase(file: GoldenFile, one: GoldenCase, method: GoldenMethod): CaseResult {
  const { id, method: name } = one;
  try {
    const got = method.compute(one.input, columnsOf(file, one));
    return { id, method: name, mismatches: compare(got, one.expected, method.tolerance), threw: null };
  } catch (error) {
    return { id, method: name, mismatches: [], threw: error instanceof Error ? error.message : String(error) };
  }
}

export function failed(result: CaseResult): boolean {
  return result.threw !== null || result.mismatches.length > 0;
}
