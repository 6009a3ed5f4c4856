import type { Allowed } from './compare.ts';

/** A closed formula or a sum of terms. */
export const closedForm: Allowed = { relative: 1e-9, absolute: 1e-12 };

/** A root or a quantile of a distribution. */
export const quantile: Allowed = { relative: 1e-7, absolute: 1e-12 };

/** A p-value: always relative, so that a small tail is not passed as "about 0"; wider far out. */
export function tailProbability(want: number): Allowed {
  return { relative: want < 1e-12 ? 1e-5 : 1e-7, absolute: 1e-300 };
}
