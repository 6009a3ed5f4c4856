import { groupLevels, type GroupColumn } from './groupLevels.ts';
import { kaplanMeier, type KaplanMeier, type KaplanMeierOptions } from './kaplanMeier.ts';
import type { SurvivalSpans } from './survivalSpans.ts';

/**
 * One Kaplan-Meier curve per level of `group` (yard, queen line, treatment), keyed by the level as text, in
 * ascending order. Use the same `tau` for all, not beyond the last time of the shortest curve. Rows without a
 * level are in no curve.
 */
export function kaplanMeierByGroup(
  spans: SurvivalSpans,
  group: GroupColumn,
  options: KaplanMeierOptions = {},
): ReadonlyMap<string, KaplanMeier> {
  return new Map(groupLevels(group).map(({ level, rows }) => [level, kaplanMeier(spansOfRows(spans, rows), options)]));
}

/** The spans of the given rows only. */
export function spansOfRows(spans: SurvivalSpans, rows: readonly number[]): SurvivalSpans {
  const pick = (column: ArrayLike<number>): Float64Array => {
    const picked = new Float64Array(rows.length);
    for (let at = 0; at < rows.length; at++) {
      const value = column[rows[at] as number];
      if (value === undefined) throw new RangeError(`the group names row ${rows[at]}, but the spans have no such row`);
      picked[at] = value;
    }
    return picked;
  };
  return { entry: pick(spans.entry), exit: pick(spans.exit), status: pick(spans.status) };
}
