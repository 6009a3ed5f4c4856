import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { boxNames, hiveRules, partFor } from '#core/stock/hives.ts';
import { colonyKey } from '#core/stock/places.ts';
import type { StockBook } from '#core/stock/stockBook.ts';

/** The boxes that a colony stands on by the equipment account. */
export interface HiveBoxes {
  readonly frames: 8 | 10;
  readonly deep: number;
  readonly medium: number;
  readonly shallow: number;
}

/** What an answer needs beside the colony's own record. */
export interface SpaceFacts {
  readonly day: Day;
  readonly rules: RuleValues;
  /** Null where the account knows of no box. */
  readonly boxes: HiveBoxes | null;
  /** The days on which it was split, from the records of its daughters; earliest first. */
  readonly splitDays: readonly Day[];
}

/** Heights of frames of the three depths in inches (hobby page on hive parts, read-weak): a comb counts by its height. */
const frameHeights = { deep: 9.125, medium: 6.25, shallow: 5.375 } as const;

export function hiveBoxesOf(book: StockBook, colony: ColonyId, rules: RuleValues): HiveBoxes | null {
  const hive = book.hives.get(colony);
  const stacks = book.places.get(colonyKey(colony));
  if (hive === undefined || stacks === undefined) return null;
  const { usual } = hiveRules(rules);
  const count = (depth: keyof typeof boxNames) => Math.max(0, stacks.count(partFor(boxNames[depth].box, hive.frames, usual)));
  const found = { frames: hive.frames, deep: count('deep'), medium: count('medium'), shallow: count('shallow') };
  return found.deep + found.medium + found.shallow === 0 ? null : found;
}

/** All combs of a hive as so many deep frames. */
export function deepFramesIn({ frames, deep, medium, shallow }: HiveBoxes): number {
  return frames * (deep + (medium * frameHeights.medium + shallow * frameHeights.shallow) / frameHeights.deep);
}

/** "2 deeps and 1 medium of 10 frames" */
export function boxesInWords({ frames, deep, medium, shallow }: HiveBoxes): string {
  const parts = ([[deep, 'deep'], [medium, 'medium'], [shallow, 'shallow']] as const).flatMap(([count, name]) => (count === 0 ? [] : [`${count} ${name}${count === 1 ? '' : 's'}`]));
  return `${parts.length < 3 ? parts.join(' and ') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`} of ${frames} frames`;
}

/** The days of a colony's splits, from its daughters. */
export function splitDaysOf(state: Pick<ColonyState, 'daughters'>, byId: ReadonlyMap<ColonyId, Pick<ColonyState, 'start'>>, until: Day): Day[] {
  return state.daughters.flatMap((id) => byId.get(id)?.start ?? []).filter((start) => start <= until).toSorted();
}
