import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { unwritten } from '#core/demo/shedCounting.ts';
import { standingRows } from '#core/demo/demoOperation.ts';
import { readRow } from '#core/journal/readRow.ts';
import { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import type { YardId } from '#shared/brands.ts';
import { foldStock } from '#core/stock/foldStock.ts';
import { deadOutsToCheck, stockItems } from '#core/stock/stockTable.ts';
import { inDateOrder } from './operationChecks.ts';

const operation = ossarValley();
const yards = new YardBook(operation.yards.map((yard, at) => ({ ...yard, id: (at + 1) as YardId })));
const working = new WorkingSet({ yards, colonies: [], nextEntry: 1, nextColony: 1 });
for (const cells of inDateOrder(standingRows(operation))) {
  const reading = readRow(cells, 'month-first');
  if (!reading.ok || !working.add(reading.row).ok) throw new Error(JSON.stringify(cells));
}
const facts = { rules: new Map<string, number>(), borders: defaultBorders };
const book = foldStock(working.added, facts);
const names = { colony: String, yard: (id: YardId) => yards.get(id), massUnit: 'lb' as const };

test('the account derived from the entries has at every yearly count what the generator’s own shed held', () => {
  expect(book.counts).toHaveLength(6 * 7);
  for (const { day: on, item, had, noted } of book.counts) expect([on, item, had]).toEqual([on, item, noted]);
});

test('the differences shown are those that the generator left unwritten, and no others', () => {
  const shown = book.counts.filter(({ counted, had }) => counted !== had).map(({ day: on, item, counted, had }) => [Number(on.slice(0, 4)), item, counted - had]);
  expect(shown).toEqual(Object.entries(unwritten).map(([year, { item, change }]) => [Number(year), item, change]));
});

test('on the last day all items balance, nothing is below nothing, every living colony stands on a hive', () => {
  const items = stockItems(book, { names, ...facts, asOf: day('2026-11-25') });
  expect(items.filter(({ balances }) => !balances)).toEqual([]);
  expect([...book.shortages.values()]).toEqual([]);
  const living = working.states().filter((state) => state.end === null).length;
  expect(items.filter(({ item }) => item.startsWith('bottom board')).reduce((sum, { onHives }) => sum + onHives, 0)).toBe(living);
  expect(items.find(({ item }) => item === 'medium super')).toMatchObject({ onHives: 0, toMend: 4 });
  expect(deadOutsToCheck(book, names).map(({ yard }) => yard)).toContain('OO');
});
