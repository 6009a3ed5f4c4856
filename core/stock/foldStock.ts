import type { Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import { whole, type Slices } from '#shared/slices.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { ColonyMoves } from './colonyMoves.ts';
import { hiveRules } from './hives.ts';
import { StockBook, type Movement } from './stockBook.ts';
import { StockRows } from './stockRows.ts';

/** Kinds of entries that move equipment, and harvests, which tell that comb was drawn. */
export const stockKinds: readonly Kind[] = ['install', 'split', 'combine', 'move', 'supers on', 'supers off', 'harvest', 'loss', 'sale', 'gift', 'absconded', 'stock', 'purchase'];

export interface StockFacts {
  readonly rules: RuleValues;
  readonly borders: Borders;
}

/**
 * The equipment account: the fold of the standing entries, given in the journal's order, as double entries between
 * supplier, shed, yards, colonies and scrap. Within a day what befell the colonies comes first and the stock rows
 * after it, whatever the order of writing, and only then is it settled where the hives' new parts came from: what lies
 * free in the yard at the day's end, then the shed. So it makes no difference whether a keeper writes rows for what
 * was carried out that day. With a book to start from, which stays as it is, the entries are those of the days after it.
 */
export function foldStock(entries: readonly Entry[], facts: StockFacts, onMove?: (made: Movement) => void, start?: StockBook): StockBook {
  return whole(foldStockInSlices(entries, facts, onMove, start));
}

/** The same, day by day. */
export function* foldStockInSlices(entries: readonly Entry[], { rules, borders }: StockFacts, onMove?: (made: Movement) => void, start?: StockBook): Slices<StockBook> {
  const book = start?.copy(onMove) ?? new StockBook(onMove);
  const hives = hiveRules(rules);
  const colonies = new ColonyMoves(book, hives, borders);
  const rows = new StockRows(book, hives, colonies);
  let from = 0;
  while (from < entries.length) {
    const day = entries[from]?.day as Day;
    let until = from;
    while (until < entries.length && entries[until]?.day === day) until += 1;
    const today = entries.slice(from, until);
    colonies.begin(today);
    for (const entry of today) {
      rows.keep(entry);
      rows.learnLabel(entry);
    }
    for (const entry of today) colonies.enter(entry);
    for (const entry of today) rows.enter(entry);
    colonies.settle();
    rows.fillHives();
    colonies.settle();
    rows.readCounts();
    book.closeDay();
    from = until;
    yield;
  }
  return book;
}
