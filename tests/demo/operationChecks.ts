import { columns, type Cells } from '#shared/entryForms.ts';
import type { DemoOperation } from '#core/demo/demoOperation.ts';
import { countedAs, readItem } from '#core/stock/itemName.ts';
import { RecordChecker } from './recordChecker.ts';

/** Enters an operation act by act as the desk would; answers every fault that shows after any act. */
export function enterActByAct(operation: DemoOperation): { faults: string[]; checker: RecordChecker } {
  const checker = new RecordChecker();
  const faults: string[] = [];
  for (const [index, act] of operation.acts.entries()) {
    let found: string[];
    if ('rows' in act) found = checker.enter(act.rows);
    else {
      const before = operation.acts[act.strike.act];
      const row = act.strike.act < index && before !== undefined && 'rows' in before ? before.rows[act.strike.row] : undefined;
      found = row === undefined ? [`act ${index} strikes nothing entered before`] : checker.strike(row);
    }
    faults.push(...found.map((fault) => `act ${index} (${act.at}): ${fault}`));
  }
  return { faults, checker };
}

/** Quantities by place and item after every stock row in date order; answers each time one would be below zero. */
export function stockShortages(rows: readonly Cells[]): string[] {
  const counts = new Map<string, number>();
  const shortages: string[] = [];
  for (const row of inDateOrder(rows)) {
    if (row.entry !== 'stock') continue;
    // A row within one place moves nothing; it says what the pieces there are.
    if (row.from === row.to) continue;
    const quantity = Number(row.quantity);
    const item = countedAs(readItem(row.item ?? ''), 10);
    for (const [place, change] of [[row.from, -quantity], [row.to, quantity]] as const) {
      if (place === 'supplier' || place === 'scrap') continue;
      const key = `${place} ${item}`;
      counts.set(key, (counts.get(key) ?? 0) + change);
      if ((counts.get(key) ?? 0) < 0) shortages.push(`${row.date}: ${key} at ${counts.get(key)}`);
    }
  }
  return shortages;
}

/** By date, rows of one day in the order in which they were entered. */
export function inDateOrder(rows: readonly Cells[]): Cells[] {
  return rows.map((row, place) => ({ row, place })).sort((a, b) => ((a.row.date ?? '') < (b.row.date ?? '') ? -1 : (a.row.date ?? '') > (b.row.date ?? '') ? 1 : a.place - b.place)).map(({ row }) => row);
}

export function repeatedRows(rows: readonly Cells[]): string[] {
  const seen = new Set<string>();
  const repeated: string[] = [];
  for (const row of rows) {
    const key = columns.map((column) => row[column] ?? '').join('|');
    if (seen.has(key)) repeated.push(key);
    seen.add(key);
  }
  return repeated;
}

/** Acts that are not in rising order of time, or not at a minute of a real day. */
export function misplacedActs(operation: DemoOperation): string[] {
  let before = '';
  const misplaced: string[] = [];
  for (const act of operation.acts) {
    const rising = act.at > before && act.at.slice(0, 10) <= operation.lastDay && /^\d{4}-\d\d-\d\d ([01]\d|2[0-3]):[0-5]\d$/.test(act.at);
    const fromTheFuture = 'rows' in act && act.rows.some((row) => (row.date ?? '') > act.at.slice(0, 10));
    if (!rising || fromTheFuture || act.title === '') misplaced.push(act.at);
    before = act.at;
  }
  return misplaced;
}
