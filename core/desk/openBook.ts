import { basename, join } from 'node:path';
import type { OpenBook } from '#shared/contract/book.ts';
import type { DateOrder, Day } from '#shared/days.ts';
import { day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { MassUnit } from '#shared/units.ts';
import { createDatabase, openDatabase } from '#core/book/openDatabase.ts';
import { foldVersion } from '#core/journal/colonyState.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import type { Store } from '#core/book/store.ts';
import { pastStore } from './pastStore.ts';
import { readPicture, type Picture } from './picture.ts';
import { breathe } from './turns.ts';

/** Days that were looked at last and are kept, each with its picture. */
const keptDays = 4;

/** The open book: its store, its settings, and the day that records are judged by. */
export class Book {
  readonly path: string;
  readonly store: Store;
  /** The day whose evening this book shows; null where it shows all that is recorded. */
  readonly day: Day | null;
  #picture: Picture | null = null;
  /** Read once for all who ask for it meanwhile. */
  #reading: Promise<Picture> | null = null;
  readonly #past = new Map<Day, Book>();

  private constructor(path: string, store: Store, asOf: Day | null = null) {
    this.path = path;
    this.store = store;
    this.day = asOf;
  }

  static async create(path: string, settings: ReadonlyMap<string, string>): Promise<Book> {
    const book = new Book(path, sqliteStore(createDatabase(path), path, breathe));
    await book.store.keepSettings(new Map([...settings, ['fold', String(foldVersion)]]));
    return book;
  }

  /** A book that an earlier program folded is folded anew, so that its states say all that this one reads. */
  static async open(path: string): Promise<Book> {
    const store = sqliteStore(openDatabase(path), path, breathe);
    try {
      if ((await store.settings()).get('fold') !== String(foldVersion)) await store.rebuild();
    } catch (error) {
      await store.close();
      throw error;
    }
    return new Book(path, store);
  }

  async settings(): Promise<{ name: string; dateOrder: DateOrder; massUnit: MassUnit; demoDay: Day | null }> {
    const kept = await this.store.settings();
    const demoDay = kept.get('demoDay');
    return {
      name: kept.get('name') ?? basename(this.path, '.outyard'),
      dateOrder: kept.get('dateOrder') === 'day-first' ? 'day-first' : 'month-first',
      massUnit: massUnitOf(kept),
      demoDay: demoDay === undefined ? null : day(demoDay),
    };
  }

  /** The demo's records end on a fixed day, and are judged by it; every other book by the clock. One of an earlier day is judged by that day. */
  async today(clock: Day): Promise<Day> {
    return this.day ?? (await this.settings()).demoDay ?? clock;
  }

  /** This book as it was on the evening of that day, to read from. */
  asOf(asked: Day): Book {
    const past = this.#past.get(asked) ?? new Book(this.path, pastStore(this.store, asked, async () => (await this.picture()).states), asked);
    // The one asked for last goes last, so that the first is the one to forget.
    this.#past.delete(asked);
    this.#past.set(asked, past);
    const [oldest] = this.#past.keys();
    if (this.#past.size > keptDays && oldest !== undefined) this.#past.delete(oldest);
    return past;
  }

  async picture(): Promise<Picture> {
    this.#reading ??= this.#read();
    return this.#reading;
  }

  async #read(): Promise<Picture> {
    try {
      this.#picture = await readPicture(this.store, this.#picture);
      return this.#picture;
    } finally {
      this.#reading = null;
    }
  }

  async view(): Promise<OpenBook> {
    const settings = await this.settings();
    const counts = await this.store.counts();
    const { states, yardList } = await this.picture();
    const living = new Map<number, number>();
    for (const state of states) {
      const yard = state.stays.at(-1)?.yard;
      if (state.end === null && yard !== undefined) living.set(yard, (living.get(yard) ?? 0) + 1);
    }
    return {
      path: this.path, name: settings.name, position: await this.store.position(), entries: counts.entries, living: counts.living,
      yards: yardList.map((yard) => ({ ...yard, living: living.get(yard.id) ?? 0 })), firstDay: counts.firstDay, lastDay: counts.lastDay,
      dateOrder: settings.dateOrder, massUnit: settings.massUnit, demo: settings.demoDay !== null,
    };
  }
}

/** A file name for a book of that name, without anything a file system could trip over. */
export function bookPath(folder: string, name: string): string {
  const safe = name.normalize('NFC').replace(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replace(/\s+/g, ' ').replace(/^[. ]+|[. ]+$/g, '');
  if (safe === '') throw new FaultError(refuse('bad-input', 'That name holds nothing a file can be called by.', { field: 'name', mend: 'Use letters or digits.' }));
  return join(folder, `${safe}.outyard`);
}

/** The unit of weights that a book's settings ask for. */
export function massUnitOf(kept: ReadonlyMap<string, string>): MassUnit {
  return kept.get('massUnit') === 'kg' ? 'kg' : 'lb';
}
