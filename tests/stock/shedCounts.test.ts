import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { itemName, shedCounts } from '#core/stock/shedCounts.ts';
import { recorded, yards } from '../losses/recorded.ts';

const names = { colony: String, yard: (id: number) => yards.find((yard) => yard.id === id) ?? { code: '', name: '' }, massUnit: 'lb' as const };
const place = fc.constantFrom('shed', 'supplier', 'scrap', 'QY', 'LB');

test('what is anywhere came from a supplier and did not go to scrap', () => {
  fc.assert(fc.property(fc.array(fc.tuple(fc.nat(20), place, place), { maxLength: 30 }), (moves) => {
    const rows = moves.map(([count, from, to]): Cells => ({ date: '2025-01-01', entry: 'stock', item: 'Deep  boxes', quantity: String(count), from, to }));
    const outside = (name: string) => name === 'supplier' || name === 'scrap';
    const expected = moves.reduce((sum, [count, from, to]) => sum + (outside(to) ? 0 : count) - (outside(from) ? 0 : count), 0);
    const { items } = shedCounts(recorded(rows).entries, names);
    expect(items[0]?.total ?? 0).toBe(expected);
    expect(items.every(({ item }) => item === 'deep box')).toBe(true);
  }), { numRuns: 60 });
});

test('more out than in shows as a negative count', () => {
  const { items } = shedCounts(recorded([{ date: '2025-01-01', entry: 'stock', item: 'stand', quantity: '3', from: 'shed', to: 'QY' }]).entries, names);
  expect(items[0]?.counts).toEqual([{ place: 'shed', count: -3 }, { place: 'QY', count: 3 }]);
});

test('one spelling of an item', () => {
  expect(['Deep Boxes', 'bee brushes', 'stands', 'glass', 'frames '].map(itemName)).toEqual(['deep box', 'bee brush', 'stand', 'glass', 'frame']);
});
