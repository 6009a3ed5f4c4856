import type { LossReview, LossRow } from '#shared/contract/losses.ts';
import type { Period } from '#shared/seasons.ts';

/** Below this many colonies at risk the counts and the range lead, not the rate. */
export const fewColonies = 10;
/** Fewer yards than this say nothing of how much yards differ, and the range that allows for it is useless. */
export const enoughYards = 3;

/** The season's rates for one period: yards from the highest rate down, those without a rate last, then "all". */
export function ratesOf(review: LossReview, period: Period): { yards: LossRow[]; all: LossRow | undefined } {
  const rows = review.rates.filter((row) => row.season === review.season && row.period === period && row.united === review.united);
  const yards = rows
    .filter((row) => row.group !== 'all')
    .sort((a, b) => (b.rate ?? -1) - (a.rate ?? -1) || b.atRisk - a.atRisk || a.group.localeCompare(b.group));
  return { yards, all: rows.find((row) => row.group === 'all') };
}

/** The rates of all yards together, season by season, newest first; seasons without a colony at risk left out. */
export function pastRates(review: LossReview, period: Period): LossRow[] {
  return review.rates
    .filter((row) => row.group === 'all' && row.period === period && row.united === review.united && row.atRisk > 0)
    .sort((a, b) => b.season - a.season);
}

/** The range to show: for all yards the one that allows for yards sharing their fate, where it can be given. */
export function rangeOf(row: LossRow): readonly [number, number] | null {
  return row.quasi && row.quasi.units >= enoughYards ? [row.quasi.lower, row.quasi.upper] : row.wilson;
}

/** True when the whole range of a yard lies above that of all yards together. */
export function isAbove(row: LossRow, total: LossRow | undefined): boolean {
  const whole = total === undefined ? null : rangeOf(total);
  return row !== total && whole !== null && row.wilson !== null && row.wilson[0] > whole[1];
}

/** The colonies that ended in a yard ("all" for every yard). */
export function endedIn(review: LossReview, group: string): LossReview['ended'] {
  const name = review.yards.find((yard) => yard.code === group)?.name;
  return review.ended.filter((colony) => group === 'all' || colony.yard === group || colony.yard === name);
}
