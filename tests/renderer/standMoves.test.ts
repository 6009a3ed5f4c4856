import { expect, test } from 'vitest';
import { inOrder, movedTo } from '../../renderer/screens/yards/standMoves.ts';

test('a line takes the place it was put on, and no more than the ends', () => {
  const order = ['a', 'b', 'c', 'd'];
  expect(movedTo(order, 0, 2)).toEqual(['b', 'c', 'a', 'd']);
  expect(movedTo(order, 3, 0)).toEqual(['d', 'a', 'b', 'c']);
  expect(movedTo(order, 1, 9)).toEqual(['a', 'c', 'd', 'b']);
  expect(movedTo(order, 0, -1)).toBe(order);
  expect(movedTo(order, 7, 1)).toBe(order);
});

test('an order moved by hand holds only while it names exactly what is there', () => {
  const rows = [{ id: 1 }, { id: 2 }, { id: 3 }];
  expect(inOrder(rows, [3, 1, 2])).toEqual([{ id: 3 }, { id: 1 }, { id: 2 }]);
  expect(inOrder(rows, [3, 1])).toBe(rows);
  expect(inOrder(rows, [3, 1, 4])).toBe(rows);
  expect(inOrder(rows, null)).toBe(rows);
});
