/** A grouping column: one level a row; null where it is not known. */
export type GroupColumn = ArrayLike<string | number | null>;

/** A level of a group as text, with the rows (from 0) that carry it. */
export interface GroupLevel {
  readonly level: string;
  readonly rows: readonly number[];
}

/**
 * The levels of a grouping column in ascending order (numbers by size, everything else by code point), each
 * with its rows. Rows with a null level belong to none.
 */
export function groupLevels(column: GroupColumn): readonly GroupLevel[] {
  const rows = new Map<string | number, number[]>();
  for (let row = 0; row < column.length; row++) {
    const level = column[row];
    if (level === null || level === undefined) continue;
    const of = rows.get(level);
    if (of === undefined) rows.set(level, [row]);
    else of.push(row);
  }
  return [...rows].toSorted(([a], [b]) => compareLevels(a, b)).map(([level, of]) => ({ level: String(level), rows: of }));
}

function compareLevels(a: string | number, b: string | number): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  const left = String(a);
  const right = String(b);
  return left < right ? -1 : left > right ? 1 : 0;
}
