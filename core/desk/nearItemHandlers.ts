import type { NearItem, NewItem } from '#shared/contract/nearItems.ts';
import type { Cells } from '#shared/entryForms.ts';
import { itemKinds, namesItem } from '#shared/itemWords.ts';
import type { Store } from '#core/book/store.ts';
import type { CsvRow } from '#core/exchange/readCsv.ts';
import { headOf, nearItems, nearSentence, withHead } from '#core/stock/nearItems.ts';
import type { Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';

export const nearItemHandlers: Handlers<'stock.nearItem'> = {
  'stock.nearItem': async ({ item }, context) => ({ found: await nearItemIn(context.open(), item) }),
};

/** What is asked about an item as typed; null where nothing is. */
export async function nearItemIn(book: Book, typed: string): Promise<NearItem | null> {
  const known = await keptFor(await book.picture(), 'known items', async () => knownItems(book.store));
  return nearItem(typed, known);
}

/** Items that the standing rows of stock and purchases name. */
export async function knownItems(store: Store): Promise<Set<string>> {
  const rows = await store.entries({ kinds: itemKinds });
  return new Set(rows.flatMap(({ entry, struck }) => (struck === null && (entry.kind === 'stock' || entry.kind === 'purchase') ? [headOf(entry.body.item)] : [])));
}

function nearItem(typed: string, known: ReadonlySet<string>): NearItem | null {
  const [item, nearest] = [headOf(typed), nearItems(typed, known)];
  return nearest.length === 0 ? null : { item, nearest: nearest.map((one) => ({ item: one, instead: withHead(typed, one) })), sentence: nearSentence(item, nearest) };
}

function itemOfRow({ entry, item }: Cells): string | null {
  return namesItem(entry?.trim().toLowerCase()) && item !== undefined && item.trim() !== '' ? item : null;
}

/** The rows with the items that were said to be meant. */
export function withMeant(file: readonly CsvRow[], meant: Readonly<Record<string, string>>): readonly CsvRow[] {
  return file.map((row) => {
    const typed = itemOfRow(row.cells);
    const item = typed === null ? undefined : meant[headOf(typed)];
    return typed === null || item === undefined || item === headOf(typed) ? row : { ...row, cells: { ...row.cells, item: withHead(typed, item) } };
  });
}

/** Items of a file that the book does not know and that read almost like ones that it knows, or that more of the file's rows name. */
export function newItems(file: readonly CsvRow[], entering: ReadonlySet<number>, known: ReadonlySet<string>, meant: Readonly<Record<string, string>>): NewItem[] {
  const named = new Map<string, { typed: string; lines: number[] }>();
  for (const { line, cells } of file) {
    const typed = itemOfRow(cells);
    if (typed === null) continue;
    const head = headOf(typed);
    const there = named.get(head);
    if (there === undefined) named.set(head, { typed, lines: [line] });
    else there.lines.push(line);
  }
  const so = new Set(known);
  const found: NewItem[] = [];
  for (const [head, { typed, lines }] of [...named].toSorted(([, a], [, b]) => b.lines.length - a.lines.length)) {
    const near = nearItem(typed, so);
    so.add(head);
    const said = meant[head] ?? null;
    // What is neither entered nor was said to be another is not asked about.
    const asked = near === null || (said === null && !lines.some((line) => entering.has(line))) ? null : near;
    if (asked !== null) found.push({ ...asked, lines: lines.slice(0, 1000), rows: lines.length, meant: said });
  }
  return found;
}
