import { writeCsv } from '#core/exchange/writeCsv.ts';
import { writeRow } from '#core/journal/writeRow.ts';
import type { Book } from './openBook.ts';

/** The standing entries in the exchange form, in the journal's order. */
export async function exportJournal(book: Book): Promise<{ text: string; rows: number }> {
  const { names } = await book.picture();
  const standing = (await book.store.entries({})).filter(({ struck }) => struck === null);
  return { text: writeCsv(standing.map(({ entry }) => writeRow(entry, names))), rows: standing.length };
}
