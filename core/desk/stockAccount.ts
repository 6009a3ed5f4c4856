import type { GestureId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import type { EntryQuery, Store } from '#core/book/store.ts';
import { foldStock, stockKinds } from '#core/stock/foldStock.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';

/*
 * The account of a large operation takes seconds to fold from its beginning, and nearly every write is about the last
 * days. So the book is kept as it was some weeks before, and only what is later is folded again, as long as nothing
 * was written or struck that is dated before.
 */
interface Base {
  readonly book: StockBook;
  /** The last day that is in it. */
  readonly until: Day;
  /** The house rules and borders that it was folded by. */
  readonly facts: string;
  position: number;
  nextEntry: number;
  gesture: number;
}

/** What lies further back is seldom written about. */
const daysBack = 60;
const smallBook = 3000;
/** More acts than that since the base are not gone through one by one. */
const mostActs = 200;
const bases = new WeakMap<Store, Base>();

/** The equipment account at the end of a day, worked out once for as long as the book does not change. */
export async function stockBookOf(book: Book, asOf: Day): Promise<StockBook> {
  const picture = await book.picture();
  return keptFor(picture, `stock ${asOf}`, async () => foldedUntil(book.store, picture, asOf));
}

async function foldedUntil(store: Store, picture: Picture, asOf: Day): Promise<StockBook> {
  const base = await standingBase(store, picture);
  if (base !== null && base.until < asOf) return foldStock(await entriesOf(store, { from: addDays(base.until, 1), until: asOf }), picture, undefined, base.book);
  const entries = await entriesOf(store, { until: asOf });
  if (entries.length < smallBook || base !== null) return foldStock(entries, picture);
  const until = addDays(asOf, -daysBack);
  const at = entries.findIndex((entry) => entry.day > until);
  const early = foldStock(at < 0 ? entries : entries.slice(0, at), picture);
  const gestures = await store.gestures();
  bases.set(store, { book: early, until, facts: factsText(picture), position: await store.position(), nextEntry: (await store.nextIds()).entry, gesture: gestures.reduce((most, { id }) => Math.max(most, id), 0) });
  return at < 0 ? early : foldStock(entries.slice(at), picture, undefined, early);
}

/** The base, if nothing of its days was written or struck since; brought up to what is in the book now. */
async function standingBase(store: Store, picture: Picture): Promise<Base | null> {
  const base = bases.get(store);
  if (base === undefined) return null;
  const stands = await isStanding(store, base, picture);
  if (!stands) bases.delete(store);
  return stands ? base : null;
}

async function isStanding(store: Store, base: Base, picture: Picture): Promise<boolean> {
  const position = await store.position();
  if (base.facts !== factsText(picture)) return false;
  // Every act moves the position on, so there are no more acts than that.
  const acts = position - base.position;
  if (acts > mostActs) return false;
  const added = await store.entries({ after: (base.nextEntry - 1) as Entry['id'] });
  if (added.some(({ entry }) => entry.day <= base.until)) return false;
  let last = base.gesture;
  for (let id = base.gesture + 1; id <= base.gesture + acts; id += 1) {
    const marks = await store.marksOf(id as GestureId);
    if (marks.length === 0) continue;
    last = id;
    const struck = await store.entries({ ids: marks.map(({ entry }) => entry) });
    if (struck.some(({ entry }) => entry.day <= base.until)) return false;
  }
  base.position = position;
  base.gesture = Math.max(last, ...added.map(({ gesture }) => gesture), base.gesture);
  base.nextEntry = (await store.nextIds()).entry;
  return true;
}

async function entriesOf(store: Store, query: EntryQuery): Promise<Entry[]> {
  const entries = (await store.entries({ ...query, kinds: stockKinds })).flatMap(({ entry, struck }) => (struck === null ? [entry] : []));
  return entries.toSorted(byOrder);
}

function factsText({ rules, borders }: Picture): string {
  return JSON.stringify([[...rules].toSorted(([a], [b]) => (a < b ? -1 : 1)), borders]);
}
