import { expect, test } from 'vitest';
import type { EntryId, YardId } from '#shared/brands.ts';
import type { PlacedOrder } from '#shared/contract/placed.ts';
import { day } from '#shared/days.ts';
import { loadLines } from '#shared/loadWords.ts';
import { deliveryTasks } from '#core/work/deliveryTasks.ts';
import type { WorkFacts } from '#core/work/workFacts.ts';

const order = (more: Partial<PlacedOrder>): PlacedOrder => ({
  entry: 7 as EntryId, kind: 'package', item: '3 lb packages', left: 1, quantity: 1, delivery: [day('2026-05-04'), day('2026-05-09')], sentence: 'Ordered on 3 February 2026.', awaited: true, ...more,
} as PlacedOrder);
const tasks = (one: PlacedOrder) => deliveryTasks({
  today: day('2026-05-01'), until: day('2026-06-25'), states: [], yards: [{ id: 1 as YardId, code: 'QY', name: 'Quarry', room: 12, minutes: 18 }], rules: new Map(), needs: [], awaited: [one], own: [], recorded: [], fitting: () => [], deadOuts: new Set(),
} satisfies WorkFacts, { factor: 1, rounds: 0, measured: null });

test('bees that arrive take along what they are put into, one or several in words that fit', () => {
  const [hive, cage, eggs] = tasks(order({}));
  expect([hive?.what, cage?.bring, eggs?.bring]).toEqual(['Hive 1\u00a0package', [], []]);
  expect(loadLines(hive?.bring ?? [])).toEqual(['1 hive with frames', '1 feeder', '1 3 lb package']);
  const [nucs] = tasks(order({ kind: 'nuc', item: 'nuc', left: 4 }));
  expect(nucs?.what).toBe('Put 4 nucs in their places');
  expect(loadLines(nucs?.bring ?? [])).toEqual(['4 hives with frames', '4 feeders', '4 nucs']);
  const [queens] = tasks(order({ kind: 'queen', item: 'mated queens', left: 1 }));
  expect(queens).toMatchObject({ what: 'Take over 1 mated queen', yard: null });
});
