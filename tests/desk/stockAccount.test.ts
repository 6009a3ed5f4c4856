import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { colonyDues, isOpen } from '#core/attention/colonyDues.ts';
import type { DueRecord } from '#core/attention/dueRule.ts';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';
import { openRecordsOf, recordsOf } from '#core/desk/dueHandlers.ts';
import { enterRows } from '#core/desk/enterRows.ts';
import type { Book } from '#core/desk/openBook.ts';
import { stockBookOf } from '#core/desk/stockAccount.ts';
import { redo, strikeEntry, undo } from '#core/desk/strikeAndUndo.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { foldStock } from '#core/stock/foldStock.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import { standingEntries } from '../journal/trialBook.ts';

const folder = mkdtempSync(join(tmpdir(), 'outyard-account-'));
const today = day('2026-11-25');
const stamp = `${today} 21:00`;
let book: Book;

beforeAll(async () => {
  book = await openDemo(demoBook('ossar', folder));
});
afterAll(async () => {
  await book.store.close();
  rmSync(folder, { recursive: true, force: true });
});

function textOf(account: StockBook): string {
  return JSON.stringify([[...account.places].filter(([, stacks]) => stacks.items().length > 0).map(([place, stacks]) => [place, stacks.items().map((item) => [item, stacks.of(item)])]), [...account.shortages], account.counts, account.items().map((item) => account.outsideCount('supplier', item))]);
}

/** The days on which the account kept differs from one folded from the beginning. */
async function differing(): Promise<string[]> {
  const { rules, borders } = await book.picture();
  const entries = await standingEntries(book.store);
  const found: string[] = [];
  const days = [today, day('2026-10-20'), day('2024-07-01'), day('2025-12-31')];
  const atOnce = await Promise.all([...days, day('2025-08-01')].flatMap((asOf) => [stockBookOf(book, asOf), stockBookOf(book.asOf(asOf), asOf)]));
  for (const [at, asOf] of days.entries()) {
    const fresh = foldStock(entries.filter((entry) => entry.day <= asOf), { rules, borders });
    if (atOnce.slice(2 * at, 2 * at + 2).some((account) => textOf(account) !== textOf(fresh))) found.push(`${asOf}, asked for together`);
    if (textOf(await stockBookOf(book, asOf)) !== textOf(fresh)) found.push(asOf);
    if (textOf(await stockBookOf(book.asOf(asOf), asOf)) !== textOf(fresh)) found.push(`${asOf}, looked back at`);
  }
  return found;
}

test('after any act, of these days or of long ago, the account is what all standing entries fold to', async () => {
  const enter = (row: Cells) => enterRows(book.store, [row], undefined, 'month-first', stamp);
  const stock = (date: string, item: string, from: string, to: string): Cells => ({ date, entry: 'stock', item, quantity: '2', from, to });
  expect(await differing()).toEqual([]);
  await enter(stock('2026-11-24', 'deep box', 'shed', 'QY'));
  expect(await differing()).toEqual([]);
  await enter({ date: '2026-11-25', entry: 'loss', colony: 'QY-01', yard: 'QY', cause: 'mites' }).catch(() => enter(stock('2026-11-25', 'stand', 'shed', 'LB')));
  expect(await differing()).toEqual([]);
  await enter(stock('2022-05-01', 'medium super', 'supplier', 'shed'));
  expect(await differing()).toEqual([]);
  const old = (await standingEntries(book.store)).find((entry) => entry.kind === 'stock' && entry.body.from === 'supplier' && entry.day > '2021-06-01');
  await strikeEntry(book.store, old!.id, 'written twice', stamp);
  expect(await differing()).toEqual([]);
  await undo(book.store, undefined, stamp);
  expect(await differing()).toEqual([]);
  await redo(book.store, stamp);
  expect(await differing()).toEqual([]);
  const late = (await standingEntries(book.store)).findLast((entry) => entry.kind === 'stock');
  await strikeEntry(book.store, late!.id, 'written twice', stamp);
  expect(await differing()).toEqual([]);
  await book.store.keepRule('stock.drawnDays', 30);
  expect(await differing()).toEqual([]);
  await book.store.keepPapers([{ kind: 'trial', key: 'one', body: '{}' }]);
  await enter(stock('2026-11-20', 'feeder', 'shed', 'scrap'));
  expect(await differing()).toEqual([]);
});

test('what is open is found in the last weeks of the record as in all of it', async () => {
  let found = 0;
  for (const asOf of [day('2024-06-20'), day('2024-09-12'), day('2025-05-20'), day('2025-08-30'), day('2026-07-08')]) {
    const past = book.asOf(asOf);
    const picture = await past.picture();
    for (const rules of [picture.rules, new Map([...picture.rules, ['attention.letGo', 3], ['attention.recount.from', 60]])]) {
      const here = { ...picture, rules };
      const living = picture.states.filter((state) => aliveOn(state, asOf));
      const open = (records: readonly DueRecord[]) => records.map((record) => [record.state.label, colonyDues(record, rules, asOf).filter(isOpen)]);
      const all = open(await recordsOf(past, here, living));
      expect(open(await openRecordsOf(past, here, living, asOf))).toEqual(all);
      found += all.filter(([, items]) => items?.length !== 0).length;
    }
  }
  expect(found).toBeGreaterThan(40);
});
