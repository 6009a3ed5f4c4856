import { contract, type OperationName } from './contract.ts';

/**
 * Reads that answer the same whatever day is looked at: they are about the file, about something that is being typed,
 * or about what the desk did and what waits beside the journal. Every other read shows the operation, and may be asked with `asOf`: the
 * day whose evening it shows.
 */
export const alwaysNow: ReadonlySet<OperationName> = new Set<OperationName>([
  'act.consequence', 'act.page', 'book.check', 'calendar.look', 'calendar.status', 'draft.fetch', 'export.journal', 'import.preview', 'journal.consequence', 'journal.entry', 'order.kept', 'round.sheet', 'rules.book', 'rules.list',
  'sheets.look', 'sheets.preview', 'sortOut.counts', 'sortOut.judge', 'sortOut.list', 'sortOut.row', 'stock.counted', 'stock.nearItem', 'work.progress', 'lots.water',
]);

/** Writes that enter nothing into the book, so that they may be done while another day is looked at. */
const entersNothing: ReadonlySet<OperationName> = new Set<OperationName>(['book.create', 'book.open', 'book.demo', 'book.close', 'draft.keep', 'draft.drop', 'work.stop']);

export function answersAsOf(name: OperationName): boolean {
  return contract[name].kind === 'read' && !alwaysNow.has(name);
}

/** Whatever is written and not known to enter nothing: a new operation is refused until somebody says otherwise. */
export function isRefusedLookingBack(name: OperationName): boolean {
  return contract[name].kind === 'write' && !entersNothing.has(name);
}
