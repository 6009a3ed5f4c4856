import { largeOperationRows } from '#core/demo/largeOperation.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { readRow } from '#core/journal/readRow.ts';
import { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import { foldStock, stockKinds } from '#core/stock/foldStock.ts';
import { deadOutsToCheck, stockItems } from '#core/stock/stockTable.ts';
import type { YardId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';

// npm run -s bench -- stock [colonies] [seasons]
// The equipment account of a large operation, from the entries that move equipment, with the rows of a shed beside them.
const colonies = Number(process.argv[2] ?? 10_000);
const seasons = Number(process.argv[3] ?? 10);
const kinds = new Set<string>(stockKinds);
const bought: Cells[] = ['deep box', 'deep frame', 'medium super', 'medium frame', 'bottom board', 'inner cover', 'outer cover', 'entrance reducer', 'stand', 'feeder'].map((item) => ({
  date: '2000-01-01', entry: 'stock', item, quantity: String(colonies * 40), from: 'supplier', to: 'shed',
}));
const rows = [...bought, ...[...largeOperationRows({ seed: 1, colonies, seasons })].filter((row) => kinds.has(row.entry ?? '') && row.entry !== 'stock')].toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : (a.date ?? '') > (b.date ?? '') ? 1 : 0));
const codes = [...new Set(rows.flatMap((row) => [row.yard, row.to_yard]).filter((code) => code !== undefined))];
const yards = new YardBook(codes.map((code, at) => ({ id: (at + 1) as YardId, code, name: code, room: null, minutes: null })));
const working = new WorkingSet({ yards, colonies: [], nextEntry: 1, nextColony: 1 });
for (const row of rows) {
  const reading = readRow(row, 'month-first');
  if (reading.ok) working.add(reading.row);
}
const entries = working.added.toSorted(byOrder);
const facts = { rules: new Map<string, number>(), borders: defaultBorders };
const names = { colony: String, yard: (id: YardId) => yards.get(id), massUnit: 'lb' as const };
const took = (what: string, work: () => string) => {
  const started = performance.now();
  const words = work();
  console.log(`${what.padEnd(20)}${(performance.now() - started).toFixed(0).padStart(8)} ms  ${words}`);
};
let book = foldStock([], facts);
took('fold', () => {
  book = foldStock(entries, facts);
  return `${entries.length} entries, ${book.hives.size} hives standing`;
});
took('table', () => {
  const items = stockItems(book, { names, ...facts, asOf: day('2026-11-25') });
  return `${items.length} items, ${items.every(({ balances }) => balances) ? 'all balance' : 'not all balance'}, ${deadOutsToCheck(book, names).length} dead-outs`;
});
console.log(`Memory at most: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB.`);
