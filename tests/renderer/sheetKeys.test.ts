import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { columnKeys } from '../../renderer/screens/tonight/sheetColumns.ts';
import { dayAhead, dayAsTyped, dayForKey, readDay } from '../../renderer/screens/tonight/sheetDay.ts';
import { freshSheet, readDraft, withoutSent, writeDraft } from '../../renderer/screens/tonight/sheetDraft.ts';
import { moveForKey, moveFrom } from '../../renderer/screens/tonight/sheetMoves.ts';

const last = columnKeys.length - 1;

describe('moving on the sheet', () => {
  test('Enter goes down each column in turn and meets every cell once', () => {
    const met: string[] = [];
    let cell: { row: number; column: number } | null = { row: 0, column: 0 };
    while (cell !== null) {
      met.push(`${cell.row},${cell.column}`);
      cell = moveFrom(cell, 'enter', 14, columnKeys.length);
    }
    expect(met).toHaveLength(14 * columnKeys.length);
    expect(new Set(met).size).toBe(met.length);
    expect(met.slice(13, 15)).toEqual(['13,0', '0,1']);
  });

  test('Shift Enter goes the same way back', () => {
    for (const from of [{ row: 0, column: 0 }, { row: 13, column: 2 }, { row: 4, column: 7 }]) {
      const next = moveFrom(from, 'enter', 14, columnKeys.length);
      expect(next && moveFrom(next, 'enter-back', 14, columnKeys.length)).toEqual(from);
    }
    expect(moveFrom({ row: 0, column: 0 }, 'enter-back', 14, columnKeys.length)).toBeNull();
  });

  test('arrows stop at the edges', () => {
    expect(moveFrom({ row: 0, column: 0 }, 'up', 3, columnKeys.length)).toBeNull();
    expect(moveFrom({ row: 2, column: 0 }, 'down', 3, columnKeys.length)).toBeNull();
    expect(moveFrom({ row: 1, column: last }, 'right', 3, columnKeys.length)).toBeNull();
    expect(moveFrom({ row: 1, column: 1 }, 'left', 3, columnKeys.length)).toEqual({ row: 1, column: 0 });
  });

  test('left and right move within typed text first', () => {
    const press = (key: string) => ({ key, shift: false, ctrl: false });
    expect(moveForKey(press('ArrowLeft'), { start: 0, end: 3, length: 3 })).toBe('left');
    expect(moveForKey(press('ArrowLeft'), { start: 3, end: 3, length: 3 })).toBeNull();
    expect(moveForKey(press('ArrowRight'), { start: 3, end: 3, length: 3 })).toBe('right');
    expect(moveForKey(press('ArrowRight'), { start: 1, end: 1, length: 3 })).toBeNull();
    expect(moveForKey(press('ArrowRight'), { start: 0, end: 0, length: 0 })).toBe('right');
    expect(moveForKey({ key: 'ArrowRight', shift: true, ctrl: false }, { start: 3, end: 3, length: 3 })).toBeNull();
    expect(moveForKey({ key: 'End', shift: false, ctrl: true }, { start: 0, end: 0, length: 0 })).toBe('last');
  });
});

describe('the day field', () => {
  const from = day('2026-03-01');
  const today = day('2026-11-25');

  test('keys step a day, t is today, y yesterday', () => {
    expect(dayForKey('ArrowLeft', from, today)).toBe('2026-02-28');
    expect(dayForKey('ArrowDown', from, today)).toBe('2026-02-28');
    expect(dayForKey('ArrowRight', from, today)).toBe('2026-03-02');
    expect(dayForKey('ArrowUp', from, today)).toBe('2026-03-02');
    expect(dayForKey('t', from, today)).toBe('2026-11-25');
    expect(dayForKey('Y', from, today)).toBe('2026-11-24');
    expect(dayForKey('5', from, today)).toBeNull();
  });

  test('typed days in ISO or the book’s order; what is shown is read back', () => {
    expect(readDay('5/4/2026', 'month-first')).toEqual({ ok: true, day: '2026-05-04' });
    expect(readDay('5/4/2026', 'day-first')).toEqual({ ok: true, day: '2026-04-05' });
    expect(readDay(' 2026-05-04 ', 'day-first')).toEqual({ ok: true, day: '2026-05-04' });
    for (const order of ['month-first', 'day-first'] as const) expect(readDay(dayAsTyped(from, order), order)).toEqual({ ok: true, day: from });
    expect(readDay('2026-02-30', 'month-first')).toMatchObject({ ok: false, sentence: expect.stringContaining('“2026-02-30” is no day') });
  });

  test('days to come are refused with a sentence, today is not', () => {
    expect(dayAhead(today, today)).toBeNull();
    expect(dayAhead(day('2026-11-26'), today)).toContain('Thu\u00a026\u00a0November\u00a02026 is still to come');
  });

});

describe('a kept draft', () => {
  test('comes back as it was', () => {
    const draft = { ...freshSheet, typed: { 3: { bees: '5,', note: '“q”' } }, wide: { ...freshSheet.wide, sample: '', method: 'sugar roll' as const, hours: '1.5', feed: 'fondant' as const }, labels: { 3: 'LB-03' }, kept: ['3:bees:22'] };
    expect(readDraft(writeDraft(draft))).toEqual(draft);
  });

  test('after entering only what was not sent is left', () => {
    const sent = { 1: { bees: '5' }, 2: { note: 'a' } };
    const now = { ...freshSheet, typed: { 1: { bees: '5', brood: '3' }, 2: { note: 'a' }, 9: { bees: '7' } }, kept: ['1:bees:x'] };
    expect(withoutSent(now, { typed: sent, wide: now.wide }, [1, 2])).toEqual({ ...freshSheet, typed: { 1: { brood: '3' }, 9: { bees: '7' } } });
    expect(withoutSent({ ...now, typed: sent }, { typed: sent, wide: now.wide }, [1, 2]).typed).toEqual({});
  });

  test.each(['', '{', 'null', '[]', '{"form":2}', '{"form":1,"typed":{"1":5},"wide":{"sample":"300","method":""}}', '{"form":1,"typed":{},"wide":{"sample":300}}'])('%s is none of ours', (text) => {
    expect(readDraft(text)).toBeNull();
  });
});
