/** One place where the computed value is not the expected one. */
export interface Mismatch {
  readonly path: string;
  readonly got: unknown;
  readonly want: unknown;
}

/** A way into a value: keys and positions from the outside in. */
export type Path = readonly (string | number)[];

/**
 * How far a number may be off: `relative` to the expected one (which counts as at least 1e-12), or by
 * `absolute` where the expected one is itself below 1e-12. `exact`: not at all.
 */
export type Allowed = 'exact' | { readonly relative: number; readonly absolute: number };
export type Tolerance = (path: Path, want: number) => Allowed;

/** A value that depends on what is asked: it is given the expected part, to see at which points it was taken. */
export class Asked {
  readonly answer: (want: unknown) => unknown;
  constructor(answer: (want: unknown) => unknown) {
    this.answer = answer;
  }
}

/** Several answers that are all right. */
export class AnyOf {
  readonly answers: readonly unknown[];
  constructor(answers: readonly unknown[]) {
    this.answers = answers;
  }
}

const NEAR_ZERO = 1e-12;

/**
 * Compares every field of `want` with `got` and lists what differs. A field that `got` lacks is a mismatch;
 * fields that only `got` has are not looked at. null matches null only; the texts Inf and -Inf match the
 * infinite numbers; finite numbers match within the tolerance for their path.
 */
export function compare(got: unknown, want: unknown, tolerance: Tolerance, path: Path = []): readonly Mismatch[] {
  if (got instanceof Asked) return compare(got.answer(want), want, tolerance, path);
  if (got instanceof AnyOf) return compareAny(got, want, tolerance, path);
  if (Array.isArray(want)) return compareLists(got, want, tolerance, path);
  if (isRecord(want)) {
    if (!isRecord(got)) return [{ path: written(path), got, want }];
    return Object.entries(want).flatMap(([key, value]) => compare(got[key], value, tolerance, [...path, key]));
  }
  return sameLeaf(got, want, tolerance, path) ? [] : [{ path: written(path), got, want }];
}

function compareAny(got: AnyOf, want: unknown, tolerance: Tolerance, path: Path): readonly Mismatch[] {
  const tries = got.answers.map((answer) => compare(answer, want, tolerance, path));
  return tries.some((mismatches) => mismatches.length === 0) ? [] : (tries[0] ?? [{ path: written(path), got: [], want }]);
}

function compareLists(got: unknown, want: readonly unknown[], tolerance: Tolerance, path: Path): readonly Mismatch[] {
  if (!Array.isArray(got)) return [{ path: written(path), got, want }];
  if (got.length !== want.length) {
    return [{ path: `${written(path)}.length`, got: got.length, want: want.length }];
  }
  return want.flatMap((value, at) => compare(got[at], value, tolerance, [...path, at]));
}

function sameLeaf(got: unknown, want: unknown, tolerance: Tolerance, path: Path): boolean {
  if (want === 'Inf') return got === Infinity || got === 'Inf';
  if (want === '-Inf') return got === -Infinity || got === '-Inf';
  if (typeof want !== 'number') return got === want;
  if (typeof got !== 'number' || !Number.isFinite(got)) return false;
  const allowed = tolerance(path, want);
  if (allowed === 'exact') return got === want;
  const difference = Math.abs(got - want);
  if (difference <= allowed.relative * Math.max(NEAR_ZERO, Math.abs(want))) return true;
  return Math.abs(want) < NEAR_ZERO && difference <= allowed.absolute;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function written(path: Path): string {
  return path.length === 0 ? '(whole)' : path.join('.');
}
