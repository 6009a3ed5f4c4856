import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';

export interface Yard {
  readonly id: YardId;
  readonly code: string;
  readonly name: string;
  readonly room: number | null;
  readonly minutes: number | null;
}

/** What is written down of a yard that is no part of the journal; null where nothing is. */
export interface YardDetails {
  /** How to get in, and who to ask. */
  readonly access: string | null;
  readonly notes: string | null;
  /** The number under which the yard is registered. */
  readonly registration: string | null;
  /** The day by which the registration has to be renewed. */
  readonly renewal: Day | null;
}

export const noDetails: YardDetails = { access: null, notes: null, registration: null, renewal: null };

/** The yards by id, and by code or name as people write them (letter case does not matter). */
export class YardBook {
  readonly #byId = new Map<YardId, Yard>();
  readonly #byName = new Map<string, Yard>();

  constructor(yards: Iterable<Yard>) {
    const all = [...yards];
    for (const yard of all) this.#byName.set(yard.name.toLowerCase(), yard);
    // A code wins over another yard's name.
    for (const yard of all) {
      this.#byId.set(yard.id, yard);
      this.#byName.set(yard.code.toLowerCase(), yard);
    }
  }

  list(): Yard[] {
    return [...this.#byId.values()];
  }

  find(name: string): Yard | null {
    return this.#byName.get(name.trim().toLowerCase()) ?? null;
  }

  get(id: YardId): Yard {
    const yard = this.#byId.get(id);
    if (yard === undefined) throw new Error(`no yard has the id ${id}`);
    return yard;
  }

  /** With yards added under the names given, numbered from `next`; names already known are left alone. */
  with(names: readonly string[], next: number): YardBook {
    const yards = this.list();
    let book = new YardBook(yards);
    let id = next;
    for (const name of names) {
      if (book.find(name) !== null) continue;
      yards.push({ id: id as YardId, code: name, name, room: null, minutes: null });
      id += 1;
      book = new YardBook(yards);
    }
    return book;
  }
}
