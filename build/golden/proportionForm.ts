import type { Proportion } from '#core/stats/proportion.ts';
import type { Allowed, Path } from './compare.ts';
import { closedForm, quantile } from './tolerances.ts';

const NO_INTERVAL = { lower: null, upper: null };

/** A proportion in the words of the golden file. */
export function proportionForm({ rate, wilson, clopperPearson }: Proportion): unknown {
  return { rate, wilson: wilson ?? NO_INTERVAL, clopperPearson: clopperPearson ?? NO_INTERVAL };
}

export function proportionTolerance(path: Path): Allowed {
  return path.includes('clopperPearson') ? quantile : closedForm;
}
