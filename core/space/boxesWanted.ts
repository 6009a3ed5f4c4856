import { partFor, boxNames, hiveRules } from '#core/stock/hives.ts';
import { forHive } from '#core/stock/colonyMoves.ts';
import { yardKey } from '#core/stock/places.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import type { YardId } from '#shared/brands.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';

export interface BoxWanted {
  readonly yard: YardId;
  readonly box: 'deep' | 'medium';
  readonly frames: 8 | 10;
  readonly count: number;
}

export interface BoxesFor {
  readonly yard: YardId;
  readonly box: 'deep' | 'medium';
  readonly frames: 8 | 10;
  readonly wanted: number;
  readonly inYard: number;
  readonly fromShed: number;
  /** Neither there nor in the shed; null where no stock row names the box, so that nobody has counted it. */
  readonly lack: number | null;
}

/** Sound boxes free in the shed; null where no stock row names them, so that the account of them is not kept. */
export function freeInShed(book: StockBook, box: 'deep' | 'medium', frames: 8 | 10, rules: RuleValues): number | null {
  const item = partFor(boxNames[box].box, frames, hiveRules(rules).usual);
  return book.keptFrom.has(item) ? Math.max(0, book.places.get('shed')?.available(item, forHive) ?? 0) : null;
}

/** Boxes by yard against what lies free: first what is in the yard itself, then the shed's, given out in the order of the yards. */
export function boxesWanted(wanted: readonly BoxWanted[], book: StockBook, rules: RuleValues): BoxesFor[] {
  const { usual } = hiveRules(rules);
  const shed = new Map<string, number>();
  const sums = new Map<string, { yard: YardId; box: 'deep' | 'medium'; frames: 8 | 10; count: number }>();
  for (const { yard, box, frames, count } of wanted) {
    const key = `${yard} ${box} ${frames}`;
    sums.set(key, { yard, box, frames, count: (sums.get(key)?.count ?? 0) + count });
  }
  return [...sums.values()].map(({ yard, box, frames, count }) => {
    const item = partFor(boxNames[box].box, frames, usual);
    const inYard = Math.min(count, Math.max(0, book.places.get(yardKey(yard))?.available(item, forHive) ?? 0));
    const free = freeInShed(book, box, frames, rules);
    const left = shed.get(item) ?? free ?? 0;
    const fromShed = Math.min(count - inYard, left);
    shed.set(item, left - fromShed);
    return { yard, box, frames, wanted: count, inYard, fromShed, lack: free === null && count > inYard ? null : count - inYard - fromShed };
  });
}
