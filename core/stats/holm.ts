/**
 * Holm's adjustment of p-values for making many comparisons at once (Holm 1979, Scandinavian Journal of
 * Statistics 6:65-70, from memory): in ascending order times m, m-1, ...; running maximum; at most 1.
 * Gives the adjusted values in the order given.
 */
export function holm(pValues: readonly number[]): readonly number[] {
  const adjusted = pValues.map(() => 1);
  let highest = 0;
  const ascending = pValues.map((p, at) => ({ p, at })).toSorted((one, other) => one.p - other.p);
  for (const [rank, { p, at }] of ascending.entries()) {
    highest = Math.max(highest, Math.min(1, p * (pValues.length - rank)));
    adjusted[at] = highest;
  }
  return adjusted;
}
