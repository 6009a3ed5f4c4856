import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EntryId, Minor, YardId } from '#shared/brands.ts';
import { costLines } from '#shared/contract/budgetLines.ts';
import { day } from '#shared/days.ts';
import { seasonOf } from '#shared/seasons.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { categoryOfPurchase, categoryOfSale, returnLines } from '#core/returns/categories.ts';
import { partOf, seasonMoney, type MoneyLine, type MoneyRules } from '#core/returns/moneyLines.ts';
import { perUnit, returnsTable } from '#core/returns/returnsTable.ts';

const yards = [1, 2, 3] as YardId[];
const anyLine: fc.Arbitrary<MoneyLine> = fc.record({
  entry: fc.nat(50).map((id) => id as EntryId), day: fc.constant(day('2026-05-01')), kind: fc.constant('purchase' as const), description: fc.constant(''), quantity: fc.constant(null), basis: fc.constant('paid' as const), bought: fc.constant(null),
  amount: fc.nat(500_000), yard: fc.option(fc.constantFrom(...yards, 9 as YardId), { nil: null }),
  of: fc.oneof(fc.constantFrom(...costLines).map((line) => ({ side: 'cost' as const, line })), fc.constantFrom(...returnLines).map((line) => ({ side: 'return' as const, line }))),
}).map(({ of, ...rest }) => ({ ...rest, ...of }));

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const at = { seasonOf, yardOfColony: () => null, lineChosen: () => null };
const rules = (more: Partial<MoneyRules> = {}): MoneyRules => ({ hour: null, mile: 0, years: 10, ...more });
let last = 0;
const entry = <Kind extends Entry['kind']>(on: string, kind: Kind, body: Extract<Entry, { kind: Kind }>['body']): Entry => {
  last += 1;
  return { id: last as EntryId, day: day(on), place: last, kind, body } as Entry;
};

test('lines add up to the totals, yards and what is not assigned to the total, returns less costs to the net', () => {
  fc.assert(
    fc.property(fc.array(anyLine, { maxLength: 60 }), (lines) => {
      const table = returnsTable(lines, yards);
      const amount = (side: MoneyLine['side']) => sum(lines.filter((line) => line.side === side).map((line) => line.amount));
      expect([table.allReturns.total, table.allCosts.total]).toEqual([amount('return'), amount('cost')]);
      for (const { byYard, notAssigned, total } of [...table.returns, ...table.costs, table.allReturns, table.allCosts, table.net]) expect(sum(byYard) + notAssigned).toBe(total);
      for (const [rows, whole] of [[table.returns, table.allReturns], [table.costs, table.allCosts]] as const) {
        expect(sum(rows.map(({ total }) => total))).toBe(whole.total);
        yards.forEach((_, column) => expect(sum(rows.map(({ byYard }) => byYard[column] ?? 0))).toBe(whole.byYard[column]));
      }
      expect(table.net.total).toBe(table.allReturns.total - table.allCosts.total);
    }),
  );
});

describe('equipment written off', () => {
  test('the parts of any amount over any years add up to it, and none is further than a cent from another', () => {
    fc.assert(
      fc.property(fc.nat(10_000_000), fc.integer({ min: 1, max: 30 }), (amount, years) => {
        const parts = Array.from({ length: years }, (_, part) => partOf(amount, part, years));
        expect(sum(parts)).toBe(amount);
        expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(1);
      }),
    );
  });
  const box = entry('2024-05-01', 'purchase', { item: 'deep box', quantity: 15, price: 42_000 as Minor, to: { yard: 2 as YardId } });
  test('a part in each of its seasons from the first on, and none before or after; or all of it as paid', () => {
    const of = (season: number, more: Partial<MoneyRules> = {}) => seasonMoney([box], season, rules({ years: 3, ...more }), at);
    expect([2023, 2024, 2025, 2026, 2027].map((season) => of(season).lines.map(({ amount }) => amount))).toEqual([[], [14_000], [14_000], [14_000], []]);
    expect(of(2025).lines[0]).toMatchObject({ line: 'equipment', basis: 'reckoned', yard: 2, description: 'deep box, part 2 of 3' });
    expect([of(2024).equipmentPaid, of(2025).equipmentPaid]).toEqual([42_000, 0]);
    expect([of(2024, { years: null }).lines, of(2025, { years: null }).lines].map((lines) => lines.map(({ amount, basis }) => [amount, basis]))).toEqual([[[42_000, 'paid']], []]);
  });
});

test('hours count for each person, valued or not; miles at their price; what has no price is named and not made nought', () => {
  const work = entry('2026-06-01', 'work', { hours: 1.5, people: 2, miles: 40, task: 'round' });
  const found = (more: Partial<MoneyRules>) => seasonMoney([work, entry('2026-06-02', 'purchase', { item: 'white sugar' }), entry('2026-06-03', 'sale', { item: 'honey', quantity: 4 })], 2026, rules(more), at);
  const valued = found({ hour: 1800, mile: 50 });
  expect(valued.lines.map(({ line, amount, quantity }) => [line, amount, quantity])).toEqual([['labour', 5400, 3], ['fuel', 2000, 40]]);
  expect(valued.unpriced).toHaveLength(2);
  expect(found({})).toMatchObject({ lines: [], hours: 3, miles: 40 });
});

test('an order for bees is told by the bees that came of it; one for equipment is told by itself', () => {
  const order = (item: string) => entry('2026-01-20', 'purchase', { item, quantity: 4, price: 60_000 as Minor, note: 'Ordered, delivery 2026-04-24' });
  expect(seasonMoney([order('package')], 2025, rules({ years: null }), at).lines).toEqual([]);
  expect(seasonMoney([order('medium super')], 2025, rules({ years: null }), at).lines).toMatchObject([{ line: 'equipment', amount: 60_000 }]);
});

test('a line that was chosen goes before the words of the item, with all that follows from it; bees on order stay with their hives', () => {
  const box = entry('2026-05-01', 'purchase', { item: 'deep box', quantity: 3, price: 9_000 as Minor });
  const order = entry('2026-01-20', 'purchase', { item: 'package', quantity: 4, price: 60_000 as Minor, note: 'Ordered, delivery 2026-04-24' });
  const chose = (line: 'feed' | 'equipment' | 'bees') => ({ ...at, lineChosen: () => line });
  const years = rules({ years: 3 });
  expect(seasonMoney([box], 2026, years, at).lines).toMatchObject([{ line: 'equipment', amount: 3_000, bought: { guess: 'equipment', chosen: false } }]);
  // Feed is not written off: all of it counts in the season that it was bought in, and nothing after.
  expect(seasonMoney([box], 2026, years, chose('feed'))).toMatchObject({ equipmentPaid: 0, lines: [{ line: 'feed', amount: 9_000, basis: 'paid', bought: { guess: 'equipment', chosen: true } }] });
  expect(seasonMoney([box], 2027, years, chose('feed')).lines).toEqual([]);
  expect(seasonMoney([box], 2026, years, chose('bees')).lines).toMatchObject([{ line: 'bees', amount: 9_000 }]);
  expect(seasonMoney([order], 2025, years, chose('equipment')).lines).toEqual([]);
});

test('what goes under which line', () => {
  const bought = { 'honey jar, 1 lb': 'containers', 'white sugar, 50 lb bag': 'feed', 'deep box, 8-frame': 'equipment', feeder: 'equipment', 'formic acid pads': 'treatments', 'pollen substitute': 'feed', 'queen cages': 'equipment', queens: 'bees', 'queen excluder': 'equipment', '3 lb package': 'bees', '5-frame nuc': 'bees', 'nuc box': 'equipment', 'nuc, four frames': 'bees', diesel: 'fuel', 'yard rent': 'other costs' };
  for (const [item, line] of Object.entries(bought)) expect([item, categoryOfPurchase(item)]).toEqual([item, line]);
  const sold = { 'honey, 1 lb jar': 'honey', 'pollination, 20 colonies': 'pollination', 'nuc, four frames': 'bees sold', beeswax: 'other returns', 'comb honey': 'honey', 'used hive boxes': 'other returns', 'wax candles': 'other returns' };
  for (const [item, line] of Object.entries(sold)) expect([item, categoryOfSale(item, false)]).toEqual([item, line]);
  expect([categoryOfSale(undefined, true), categoryOfSale(undefined, false)]).toEqual(['bees sold', 'other returns']);
});

test('nothing is divided by nothing', () => {
  expect([perUnit(500, 0), perUnit(0, 4), perUnit(500, 4)]).toEqual([null, 0, 125]);
  expect(() => perUnit(500, -1)).toThrow(RangeError);
  expect(() => perUnit(500, Number.NaN)).toThrow(RangeError);
});
