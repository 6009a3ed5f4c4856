import { expect, test } from 'vitest';
import { equipmentList } from '#core/order/equipment.ts';
import { itemName } from '#core/stock/shedCounts.ts';

const rules = new Map<string, number | string>();
const question = { hives: 30, survivors: 18, deadOuts: 2, frames: 10 as const };
const row = (stock: (item: string) => { shed: number; yards: number } | null, item: string) => equipmentList({ ...question, stock }, rules).find((one) => one.item === item);

test('supers that the stock rows tell of are counted by those rows alone, not again under every survivor', () => {
  const stock = (item: string) => (item === 'medium super' ? { shed: 40, yards: 5 } : null);
  expect(row(stock, 'medium super')).toMatchObject({ need: 99, onHives: 5, fromDeadOuts: 0, shed: 40, have: 45, order: 54 });
});

test('without stock rows each survivor is taken to have its supers', () => {
  expect(row(() => null, 'medium super')).toMatchObject({ need: 99, onHives: 54, fromDeadOuts: 5, shed: 0, have: 59, order: 40 });
});

test('brood boxes stay on the hive; a shed that owes pieces counts as none', () => {
  expect(row(() => ({ shed: -3, yards: 40 }), 'deep box')).toMatchObject({ need: 66, onHives: 36, fromDeadOuts: 3, shed: 0, have: 39, order: 27 });
});

test('the trade’s other names of a part are the same part', () => {
  expect(['Deeps', 'medium boxes', 'Bottoms', 'queen excluders', 'excluder', 'deep frames'].map(itemName)).toEqual([
    'deep box', 'medium super', 'bottom board', 'queen excluder', 'queen excluder', 'deep frame',
  ]);
});
