import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { counted, dayShort, dayText, dayWithWeekday, fixed, massFromPounds, missing, money, number, percent, rate } from '../../renderer/parts/format.ts';

/** The window holds a figure and its unit together with a space that does not break; people read a plain one. */
const read = (text: string) => text.replaceAll('\u00a0', ' ');

test('a rate stands with its n and its interval', () => {
  expect(read(rate(5, 24, [0.0886, 0.4048]))).toBe('5 of 24\u200321 %\u2002(9–40)');
  expect(read(rate(0, 8, null))).toBe('0 of 8\u20030 %');
  expect(rate(0, 0, null)).toBe(missing);
});

test('what is not known is an en dash, never 0', () => {
  for (const shown of [number(null), fixed(undefined, 1), percent(null), money(null), massFromPounds(null, 'kg'), dayText(null)]) expect(shown).toBe('–');
  expect(number(0)).toBe('0');
});

test('numbers, counts and masses', () => {
  expect(number(12041)).toBe('12,041');
  expect(number(5.5, 1)).toBe('5.5');
  expect(fixed(3, 1)).toBe('3.0');
  expect(read(counted(1, 'colony', 'colonies'))).toBe('1 colony');
  expect(read(counted(96, 'colony', 'colonies'))).toBe('96 colonies');
  expect(massFromPounds(100, 'kg', 1)).toBe('45.4');
  expect(money(17450)).toBe('174.50');
});

test('days in words; 18 May 2026 is a Monday', () => {
  expect(read(dayText(day('2026-05-18')))).toBe('18 May 2026');
  expect(read(dayShort(day('2026-09-08')))).toBe('8 Sep');
  expect(read(dayWithWeekday(day('2026-05-18')))).toBe('Mon 18 May 2026');
  expect(read(dayWithWeekday(day('1969-12-31')))).toBe('Wed 31 December 1969');
});
