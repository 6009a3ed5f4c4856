/** The values of one group (yard, queen line). */
export interface GroupOfValues {
  readonly group: string;
  readonly values: readonly number[];
}

/**
 * Gathers values by group, groups in order of first appearance. `values` and `groups` run along the same
 * rows, else RangeError, as for a value that is not finite.
 */
export function groupedValues(values: readonly number[], groups: readonly string[]): readonly GroupOfValues[] {
  if (values.length !== groups.length) throw new RangeError(`${values.length} values have ${groups.length} groups`);
  const gathered = new Map<string, number[]>();
  for (const [row, value] of values.entries()) {
    if (!Number.isFinite(value)) throw new RangeError(`row ${row}: ${value} is not a number`);
    const group = groups[row] as string;
    const of = gathered.get(group);
    if (of === undefined) gathered.set(group, [value]);
    else of.push(value);
  }
  return [...gathered].map(([group, of]) => ({ group, values: of }));
}
