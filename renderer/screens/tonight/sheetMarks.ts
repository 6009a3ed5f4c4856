import { readCell } from './sheetCell.ts';
import type { ColumnKey } from './sheetColumns.ts';
import type { SheetSetting } from './sheetSetting.ts';

/** Columns whose answers are mostly one sign: `y`, `n`, `-`, a digit. */
const markColumns: ReadonlySet<ColumnKey> = new Set(['eggs', 'queen', 'cells', 'temper']);

/**
 * Down a column of marks no Enter is needed between them: a sign that cannot belong to a mark already typed, but is one
 * by itself, belongs to the next colony. `y` then `n` is two colonies; `s` then `u` is one, supersedure. A space leaves
 * a colony empty. Numbers of frames are never parted, since a slip of the finger there would shift a whole column.
 */
export function runsOn(key: ColumnKey, text: string, sign: string, setting: SheetSetting): boolean {
  if (!markColumns.has(key) || sign.length !== 1 || text === '') return false;
  const done = text === ' ' || readCell(key, text, setting).state === 'read';
  const begins = sign === ' ' || readCell(key, sign, setting).state === 'read';
  // After a blank even a sign that could follow it belongs to the next colony.
  const belongs = text !== ' ' && sign !== ' ' && readCell(key, text + sign, setting).state === 'read';
  return done && begins && !belongs;
}
