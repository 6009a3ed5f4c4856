import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { byStand, withAbsent } from '#core/lineage/standOrder.ts';

const id = (of: number) => of as ColonyId;
const colony = (of: number, label: string) => ({ id: id(of), label });

test('colonies stand by their place; those without one come last, by label', () => {
  const rows = [colony(1, 'LB-10'), colony(2, 'LB-2'), colony(3, 'LB-1'), colony(4, 'LB-7')];
  expect(rows.toSorted(byStand([id(4), id(1)])).map(({ label }) => label)).toEqual(['LB-7', 'LB-10', 'LB-1', 'LB-2']);
  expect(rows.toSorted(byStand([])).map(({ label }) => label)).toEqual(['LB-1', 'LB-2', 'LB-7', 'LB-10']);
});

test('a colony that is away keeps its place behind the one it stood behind', () => {
  expect(withAbsent([1, 2, 3, 4].map(id), [4, 1, 3].map(id))).toEqual([4, 1, 2, 3]);
  expect(withAbsent([1, 2, 3, 4].map(id), [4].map(id))).toEqual([1, 2, 3, 4]);
  expect(withAbsent([9].map(id), [1, 2].map(id))).toEqual([9, 1, 2]);
});

test('a new order names everybody once and keeps what was given in its order', () => {
  const ids = fc.uniqueArray(fc.integer({ min: 1, max: 30 }).map(id), { maxLength: 20 });
  fc.assert(
    fc.property(ids, ids, (earlier, next) => {
      const order = withAbsent(earlier, next);
      expect(new Set(order)).toEqual(new Set([...earlier, ...next]));
      expect(order).toHaveLength(new Set(order).size);
      expect(order.filter((one) => next.includes(one))).toEqual(next);
    }),
  );
});
