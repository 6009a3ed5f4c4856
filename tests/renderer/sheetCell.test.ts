import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { causes, queenCells } from '#shared/entryForms.ts';
import { readCell as read } from '../../renderer/screens/tonight/sheetCell.ts';
import { plainSetting, type SheetSetting } from '../../renderer/screens/tonight/sheetSetting.ts';
import { columnKeys, type ColumnKey } from '../../renderer/screens/tonight/sheetColumns.ts';

const readCell = (key: ColumnKey, typed: string, setting: SheetSetting = plainSetting) => read(key, typed, setting);
const valueOf = (key: ColumnKey, typed: string, setting: SheetSetting = plainSetting) => {
  const cell = readCell(key, typed, setting);
  return cell.state === 'read' ? cell.value : cell.state;
};

describe('reading a cell of the round sheet', () => {
  test.each(columnKeys)('%s: empty and blank are not recorded', (key) => {
    expect(readCell(key, '')).toEqual({ state: 'empty' });
    expect(readCell(key, '  \t')).toEqual({ state: 'empty' });
  });

  test.each([
    ['8', '8'], ['5.5', '5.5'], ['5,5', '5.5'], ['0', '0'], ['.5', '0.5'], ['1.', '1'], ['007', '7'], [' 3 ', '3'], ['2.25', '2.25'],
    ['.', 'refused'], [',', 'refused'], ['-1', 'refused'], ['1,000', 'refused'], ['5.5.5', 'refused'], ['five', 'refused'], ['1e3', 'refused'],
    ['12345', 'refused'], ['٣', 'refused'],
  ])('frames: "%s" is %s', (typed, expected) => {
    expect(valueOf('bees', typed)).toBe(expected);
  });

  test('more frames than fit are asked about, not refused', () => {
    for (const [key, most] of [['bees', 20], ['brood', 10], ['stores', 20]] as const) {
      expect(readCell(key, String(most))).toEqual({ state: 'read', value: String(most) });
      const beyond = readCell(key, String(most + 0.5));
      expect(beyond.state === 'read' && beyond.question).toContain(`${most + 0.5} frames`);
    }
  });

  test.each([['y', 'yes'], ['Y', 'yes'], ['ye', 'yes'], ['yes', 'yes'], ['n', 'no'], ['no', 'no'], ['NO', 'no'], ['-', 'refused'], ['1', 'refused'], ['yn', 'refused'], ['none', 'refused']])(
    'yes or no: "%s" is %s',
    (typed, expected) => {
      expect(valueOf('eggs', typed)).toBe(expected);
      expect(valueOf('queen', typed)).toBe(expected);
    },
  );

  test.each([
    ['s', 'swarm'], ['sw', 'swarm'], ['su', 'supersedure'], ['S', 'swarm'], ['e', 'emergency'], ['-', 'none'], ['–', 'none'], ['0', 'none'], ['n', 'none'],
    ['sx', 'refused'], ['2', 'refused'], ['q', 'refused'],
  ])('queen cells: "%s" is %s', (typed, expected) => {
    expect(valueOf('cells', typed)).toBe(expected);
  });

  test.each([['1', '1'], ['5', '5'], ['0', 'refused'], ['6', 'refused'], ['2.5', 'refused'], ['1 5', 'refused']])('temper: "%s" is %s', (typed, expected) => {
    expect(valueOf('temper', typed)).toBe(expected);
  });

  test.each([['0', '0'], ['12', '12'], ['012', '12'], ['1.5', 'refused'], ['1,5', 'refused'], ['-3', 'refused'], ['1,000', 'refused'], ['few', 'refused']])('mites: "%s" is %s', (typed, expected) => {
    expect(valueOf('mites', typed)).toBe(expected);
  });

  test('a sample of no bees is refused, an odd one is asked about', () => {
    expect(valueOf('sample', '0')).toBe('refused');
    expect(readCell('sample', '300')).toEqual({ state: 'read', value: '300' });
    expect(readCell('sample', '30')).toMatchObject({ state: 'read', value: '30', question: expect.stringContaining('30 bees') });
    expect(readCell('sample', '3000')).toMatchObject({ question: expect.stringContaining('3000 bees') });
  });

  test.each([
    ['x', 'unknown'], ['X', 'unknown'], ['unknown', 'unknown'], ['starv', 'starvation'], ['mites', 'mites'], ['mi', 'mites'], ['mo', 'moisture'],
    ['queen', 'queen failure'], ['weak', 'weak in autumn'], ['cold', 'cold'], ['vandal', 'bear or vandal'], ['autumn', 'weak in autumn'],
    ['starv; mites', 'starvation; mites'], ['weak;cold;', 'weak in autumn; cold'], ['mites; mi', 'mites'],
    ['m', 'refused'], ['xx', 'refused'], ['swarmed', 'refused'], [';', 'refused'], ['cold, mites', 'refused'],
  ])('lost: "%s" is %s', (typed, expected) => {
    expect(valueOf('act', typed)).toBe(expected);
  });

  test('letters that fit two causes are told apart, never guessed', () => {
    expect(readCell('act', 'm')).toEqual({ state: 'refused', sentence: '“m” could be mites or moisture. Type another letter.' });
  });

  test('a note is taken as written, up to its length', () => {
    expect(valueOf('note', ' =SUM(A1) "quoted", too ')).toBe('=SUM(A1) "quoted", too');
    expect(valueOf('note', 'a'.repeat(4000))).toHaveLength(4000);
    expect(readCell('note', 'a'.repeat(4001))).toMatchObject({ state: 'refused', sentence: expect.stringContaining('4,001') });
  });

  test('every cause and every kind of cells can be typed in full and reads as itself', () => {
    for (const cause of causes) expect(valueOf('act', cause)).toBe(cause);
    for (const kind of queenCells) expect(valueOf('cells', kind)).toBe(kind);
  });

  test('whatever is typed, reading answers, and what it read reads the same again', () => {
    fc.assert(
      fc.property(fc.constantFrom(...columnKeys), fc.oneof(fc.string(), fc.double().map(String), fc.constantFrom(...causes)), (key, typed) => {
        const once = readCell(key, typed);
        if (once.state !== 'read') return;
        expect(readCell(key, once.value)).toEqual(once);
      }),
    );
  });
});
