import type { GestureId } from '#shared/brands.ts';
import { addDays, yearOf, type Day } from '#shared/days.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import type { EntryQuery, Store } from '#core/book/store.ts';
import { foldStockInSlices, stockKinds } from '#core/stock/foldStock.ts';
import type { StockBook } from '#core/stock/stockBook.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import { presentOf } from './pastStore.ts';
import type { Picture } from './picture.ts';
import { inSlices } from './turns.ts';
import { standingIn } from './standing.ts';

/*
 * The account of a large operation takes seconds to fold from its beginning, and nearly every write is about the last
 * days. So the book is kept as it was some weeks before and at the end of each year, and only what is later is folded
 * again. What is written or struck leaves those that are of days before it. They serve every day that is looked at.
 */
interface Base {
  readonly book: StockBook;
  /** The last day that is in it. */
  readonly until: Day;
  /** Of a day that was asked for, and forgotten when others are; not the end of a year. */
  readonly passing: boolean;
}

interface Bases {
  /** The house rules and borders that they were folded by. */
  readonly facts: string;
  position: number;
  nextEntry: number;
  gesture: number;
  /** By their days. */
  kept: readonly Base[];
}

/** What lies further back is seldom written about. */
const daysBack = 60;
const smallBook = 3000;
/** More acts than that since the bases were made are not gone through one by one. */
const mostActs = 200;
/** As many days looked at as a book keeps. */
const mostPassing = 4;
const bases = new WeakMap<Store, Bases>();

/** The equipment account at the end of a day, worked out once for as long as the book does not change. */
export async function stockBookOf(book: Book, asOf: Day): Promise<StockBook> {
  const picture = await book.picture();
  return keptFor(picture, `stock ${asOf}`, async () => foldedUntil(presentOf(book.store), picture, asOf));
}

async function foldedUntil(store: Store, picture: Picture, asOf: Day): Promise<StockBook> {
  const known = await standingBases(store, picture);
  const start = known?.kept.findLast(({ until }) => until < asOf);
  const entries = await entriesOf(store, start === undefined ? { until: asOf } : { from: addDays(start.until, 1), until: asOf });
  if (entries.length < smallBook) return inSlices(foldStockInSlices(entries, picture, undefined, start?.book));
  const here = known ?? (await noBases(store, picture));
  bases.set(store, here);
  let book = start?.book;
  let done = 0;
  for (const { until, passing } of stopsBetween(entries[0]?.day ?? asOf, asOf)) {
    const at = entries.findIndex(({ day }) => day > until);
    const next = at < 0 ? entries.length : at;
    if (next === done) continue;
    book = await inSlices(foldStockInSlices(entries.slice(done, next), picture, undefined, book));
    // Somebody who looks at another day may have come to it meanwhile.
    if (!here.kept.some((base) => base.until === until)) here.kept = [...here.kept, { book, until, passing }];
    done = next;
  }
  const passing = here.kept.filter((base) => base.passing);
  const forgotten = new Set(passing.slice(0, Math.max(0, passing.length - mostPassing)));
  here.kept = here.kept.filter((base) => !forgotten.has(base)).toSorted((a, b) => (a.until < b.until ? -1 : a.until > b.until ? 1 : 0));
  return done === entries.length && book !== undefined ? book : inSlices(foldStockInSlices(entries.slice(done), picture, undefined, book));
}

/** The ends of years, and the day some weeks before the one asked for. */
function stopsBetween(first: Day, asOf: Day): Pick<Base, 'until' | 'passing'>[] {
  const last = addDays(asOf, -daysBack);
  const years = Array.from({ length: Math.max(0, yearOf(last) - yearOf(first) + 1) }, (_, at) => `${yearOf(first) + at}-12-31` as Day).filter((until) => until < last);
  // Of years long ago only some: each is a copy of the whole account.
  const kept = years.filter((until, at) => at >= years.length - 2 || yearOf(until) % 4 === 0);
  return [...kept.map((until) => ({ until, passing: false })), { until: last, passing: true }];
}

async function noBases(store: Store, picture: Picture): Promise<Bases> {
  const gestures = await store.gestures();
  return { facts: factsText(picture), position: await store.position(), nextEntry: (await store.nextIds()).entry, gesture: gestures.reduce((most, { id }) => Math.max(most, id), 0), kept: [] };
}

/** The bases of days before all that was written or struck since, brought up to what is in the book now; null where that is not known. */
async function standingBases(store: Store, picture: Picture): Promise<Bases | null> {
  const here = bases.get(store);
  if (here === undefined) return null;
  const since = here.facts === factsText(picture) ? await touchedSince(store, here) : null;
  if (since === null) bases.delete(store);
  else here.kept = here.kept.filter(({ until }) => since.every((day) => day > until));
  return since === null ? null : here;
}

/** The days of all that was written or struck since the bases were looked at last; null where there were too many acts. */
async function touchedSince(store: Store, here: Bases): Promise<Day[] | null> {
  const position = await store.position();
  // Every act moves the position on, so there are no more acts than that.
  const acts = position - here.position;
  if (acts > mostActs) return null;
  const added = await store.entries({ after: (here.nextEntry - 1) as Entry['id'] });
  const days = added.map(({ entry }) => entry.day);
  let last = here.gesture;
  for (let id = here.gesture + 1; id <= here.gesture + acts; id += 1) {
    const marks = await store.marksOf(id as GestureId);
    if (marks.length === 0) continue;
    last = id;
    days.push(...(await store.entries({ ids: marks.map(({ entry }) => entry) })).map(({ entry }) => entry.day));
  }
  here.position = position;
  here.gesture = Math.max(last, ...added.map(({ gesture }) => gesture), here.gesture);
  here.nextEntry = (await store.nextIds()).entry;
  return days;
}

async function entriesOf(store: Store, query: EntryQuery): Promise<Entry[]> {
  const entries = await standingIn(store, { ...query, kinds: stockKinds });
  return entries.toSorted(byOrder);
}

function factsText({ rules, borders }: Picture): string {
  return JSON.stringify([[...rules].toSorted(([a], [b]) => (a < b ? -1 : 1)), borders]);
}
