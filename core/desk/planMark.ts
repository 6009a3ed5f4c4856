import { createHash } from 'node:crypto';
import { readFreeHours } from './freeHours.ts';
import type { Book } from './openBook.ts';
import { readDistances, readOwnTasks } from './workPapers.ts';

/**
 * Stands for all that a plan was made from: the journal, the rules, hours, ways and own tasks. What else is written beside the
 * journal (what a calendar was told, the plan itself) makes no plan old, though it moves the book’s position on.
 */
export async function planMark(book: Book): Promise<string> {
  const { store } = book;
  const { entry } = await store.nextIds();
  const { entries } = await store.counts();
  const { rules, yardList } = await book.picture();
  const told = JSON.stringify([entry, entries, [...rules], yardList, (await readFreeHours(store)).hours, await readDistances(store), await readOwnTasks(store)]);
  return createHash('sha256').update(told).digest('hex').slice(0, 24);
}
