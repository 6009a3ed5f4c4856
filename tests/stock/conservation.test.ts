import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { FaultError } from '#shared/faults.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { foldStock } from '#core/stock/foldStock.ts';
import { stockItems } from '#core/stock/stockTable.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import { anyRow, founding } from '../journal/anyRows.ts';
import { acts, standingEntries, trialBook, yardCodes } from '../journal/trialBook.ts';

const facts = { rules: new Map<string, number>(), borders: defaultBorders };
const names = { colony: String, yard: (id: number) => ({ code: yardCodes[id - 1] ?? '', name: '' }), massUnit: 'lb' as const };

/** The stocks of a book as text. */
function textOf(book: StockBook): string {
  return JSON.stringify([[...book.places].map(([place, stacks]) => [place, stacks.items().map((item) => [item, stacks.of(item)])]), [...book.shortages], book.latest]);
}

const parts = ['deep box', 'deep frame', 'deep frame, drawn, 2021', 'deep box, to mend', 'deep box, 8-frame', 'stand', 'medium super', 'medium frame, sound', 'queen excluder', 'bottom board'];
const place = fc.constantFrom('supplier', 'shed', 'scrap', ...yardCodes);
const stockRow = fc.tuple(fc.integer({ min: 0, max: 420 }), fc.constantFrom(...parts), fc.constantFrom('1', '4', '12', '30'), place, place, fc.constantFrom('', 'counted 3, the book had 7', 'dead-out G1: looked over')).map(
  ([days, item, quantity, from, to, note]): Cells => ({ date: addDays(day('2024-02-20'), days), entry: 'stock', item, quantity, from, to, ...(note === '' ? {} : { note }) }),
);
type Act = { enter: Cells } | { strike: number };
const anyAct: fc.Arbitrary<Act> = fc.oneof({ arbitrary: anyRow.map((enter) => ({ enter })), weight: 6 }, { arbitrary: stockRow.map((enter) => ({ enter })), weight: 4 }, { arbitrary: fc.nat(60).map((strike) => ({ strike })), weight: 2 });

async function entriesAfter(sequence: readonly Act[]): Promise<Entry[]> {
  const store = await trialBook();
  await acts.enter(store, founding);
  for (const act of sequence) {
    try {
      if ('enter' in act) await acts.enter(store, [act.enter]);
      else {
        const standing = await standingEntries(store);
        const entry = standing[act.strike % Math.max(1, standing.length)];
        if (entry !== undefined) await acts.strike(store, entry.id);
      }
    } catch (error) {
      if (!(error instanceof FaultError)) throw error;
    }
  }
  const entries = await standingEntries(store);
  await store.close();
  return entries;
}

test('after any entries and strikes, on any day, what came in is what is there and what went out', async () => {
  let moved = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(anyAct, { minLength: 10, maxLength: 60 }), fc.array(fc.nat(430), { minLength: 3, maxLength: 3 }), async (sequence, days) => {
      const entries = await entriesAfter(sequence);
      for (const asOf of [...days.map((days) => addDays(day('2024-02-20'), days)), day('2026-01-01')]) {
        // The account kept here from the movements alone: every one leaves a place and reaches another.
        const sums = new Map<string, Map<string, number>>();
        const add = (item: string, place: string, change: number) => {
          const own = sums.get(item) ?? new Map<string, number>();
          sums.set(item, own.set(place, (own.get(place) ?? 0) + change));
        };
        const until = entries.filter((entry) => entry.day <= asOf);
        const book = foldStock(until, facts, ({ item, count, from, to }) => {
          add(item, from, -count);
          add(item, to, count);
          moved += 1;
        });
        for (const [item, own] of sums) {
          expect([...own.values()].reduce((sum, count) => sum + count, 0)).toBe(0);
          for (const [place, count] of own) {
            const kept = place === 'supplier' || place === 'scrap' || place === 'sold' ? book.outsideCount(place, item) : (book.places.get(place as 'shed')?.count(item) ?? 0);
            expect([item, place, kept]).toEqual([item, place, count]);
          }
        }
        // Nothing is there that no movement brought, and no hive holds less than nothing.
        for (const [key, stacks] of book.places) for (const item of stacks.items()) {
          expect(sums.get(item)?.get(key) ?? 0).toBe(stacks.count(item));
          if (key.startsWith('c')) expect([stacks.below(item), book.hives.has(Number(key.slice(1)) as never)]).toEqual([0, true]);
          expect(stacks.of(item).some(({ marks }) => marks.more.startsWith('\u0000'))).toBe(false);
        }
        for (const line of stockItems(book, { names, ...facts, asOf })) expect(line.balances, line.item).toBe(true);
        // Whatever is below nothing is named with the entry that took it, and nothing else is.
        const below = [...book.places].flatMap(([place, stacks]) => stacks.items().filter((item) => stacks.below(item) < 0).map((item) => `${place} ${item}`));
        expect([...book.shortages.keys()].toSorted()).toEqual(below.toSorted());
        for (const { entry } of book.shortages.values()) expect(until.some(({ id }) => id === entry)).toBe(true);
        expect(textOf(foldStock(structuredClone(until), facts))).toBe(textOf(book));
      }
    }),
    { numRuns: 60 },
  );
  expect(moved).toBeGreaterThan(2000);
});
