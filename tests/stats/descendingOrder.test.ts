import fc from 'fast-check';
import { expect, test } from 'vitest';
import { descendingOrder, groupedOrder } from '#core/stats/descendingOrder.ts';

const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
const times = fc.oneof(fc.array(fc.integer({ min: -40, max: 40 }).map((half) => half / 2), { maxLength: 60 }), fc.array(finite, { maxLength: 60 }), fc.array(fc.constantFrom(0, -0, 1e9, 1 / 3), { maxLength: 60 }));

test('positions in descending order of any keys, equal ones as they came; the keys stay as they were', () => {
  fc.assert(
    fc.property(times, (keys) => {
      const column = Float64Array.from(keys);
      const order = descendingOrder(column);
      expect([...order]).toEqual(keys.map((_, at) => at).toSorted((a, b) => (keys[b] ?? 0) - (keys[a] ?? 0) || a - b));
      expect([...column]).toEqual(keys);
    }),
  );
});

test('groups come in the order of their numbers, and within one the order stands', () => {
  fc.assert(
    fc.property(fc.array(fc.record({ key: finite, group: fc.nat(4) }), { maxLength: 60 }), (rows) => {
      const order = descendingOrder(Float64Array.from(rows, ({ key }) => key));
      const grouped = groupedOrder(order, Uint32Array.from(rows, ({ group }) => group), 5);
      expect([...grouped]).toEqual([...order].toSorted((a, b) => (rows[a]?.group ?? 0) - (rows[b]?.group ?? 0)));
    }),
  );
});
