import { expect, test } from 'vitest';
import { columnKeys } from '../../renderer/screens/tonight/sheetColumns.ts';
import type { ColumnKey } from '../../renderer/screens/tonight/sheetColumns.ts';
import { runsOn as runs } from '../../renderer/screens/tonight/sheetMarks.ts';
import { plainSetting } from '../../renderer/screens/tonight/sheetSetting.ts';

const runsOn = (key: ColumnKey, text: string, sign: string) => runs(key, text, sign, plainSetting);

test('one mark after another is the next colony’s; a letter that belongs to the mark is not', () => {
  for (const [first, next] of [['y', 'n'], ['n', 'y'], ['y', 'y'], ['yes', 'n'], ['y', ' ']] as const) expect(runsOn('eggs', first, next), `${first} ${next}`).toBe(true);
  for (const [first, next] of [['y', 'e'], ['ye', 's'], ['n', 'o'], ['y', 'x'], ['', 'y'], ['maybe', 'y']] as const) expect(runsOn('queen', first, next), `${first} ${next}`).toBe(false);
  for (const [first, next] of [['s', '-'], ['-', 's'], ['s', 's'], ['su', 's'], ['e', '-'], ['-', '-']] as const) expect(runsOn('cells', first, next), `${first} ${next}`).toBe(true);
  for (const [first, next] of [['s', 'u'], ['s', 'w'], ['su', 'p'], ['e', 'm'], ['n', 'o']] as const) expect(runsOn('cells', first, next), `${first} ${next}`).toBe(false);
  expect(runsOn('temper', '2', '3')).toBe(true);
  expect(runsOn('temper', '2', '7')).toBe(false);
});

test('a space leaves one colony empty and the next mark goes to the one after', () => {
  expect(runsOn('eggs', 'y', ' ')).toBe(true);
  expect(runsOn('eggs', ' ', 'y')).toBe(true);
  expect(runsOn('eggs', ' ', ' ')).toBe(true);
});

test('words typed out in full stay in their cell', () => {
  for (const [key, text] of [['eggs', 'yes'], ['queen', 'no'], ['cells', 'supersedure'], ['cells', 'swarm'], ['cells', 'emergency'], ['cells', 'none']] as const) {
    for (let at = 1; at < text.length; at += 1) expect(runsOn(key, text.slice(0, at), text.charAt(at)), text.slice(0, at + 1)).toBe(false);
  }
});

test('numbers, causes and notes never run on', () => {
  for (const key of columnKeys.filter((one) => !['eggs', 'queen', 'cells', 'temper'].includes(one))) {
    for (const next of '0123456789xy .') expect(runsOn(key, '8', next)).toBe(false);
  }
});
