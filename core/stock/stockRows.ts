import type { YardId } from '#shared/brands.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { ColonyMoves } from './colonyMoves.ts';
import { anyPiece, forHive } from './colonyMoves.ts';
import { partFor, type HiveRules } from './hives.ts';
import { countedAs, itemOf, readItem, type StockItem } from './itemName.ts';
import { colonyKey, isOutside, isYard, keyOfPlace, yardKey, type PlaceKey } from './places.ts';
import { plain, type Marks, type Rank } from './stacks.ts';
import type { StockBook } from './stockBook.ts';
import { readCountNote } from './stockCount.ts';

interface Row {
  readonly name: StockItem;
  readonly counted: string;
  readonly quantity: number;
  readonly from: PlaceKey;
  readonly to: PlaceKey;
}

/** A stock row moves equipment; a purchase moves it only where it says where to. */
export function rowOf(entry: Entry, usual: 8 | 10): Row | null {
  if (entry.kind !== 'stock' && (entry.kind !== 'purchase' || entry.body.to === undefined)) return null;
  const name = readItem(entry.body.item);
  const counted = countedAs(name, usual);
  if (entry.kind === 'stock') return { name, counted, quantity: entry.body.quantity, from: keyOfPlace(entry.body.from), to: keyOfPlace(entry.body.to) };
  return { name, counted, quantity: entry.body.quantity ?? 1, from: 'supplier', to: keyOfPlace(entry.body.to ?? 'shed') };
}

/** The note of rows that look a dead-out's hive over; the label ends at a colon or with the note. */
export function checkNote(label: string, words: string): string {
  return `dead-out ${label}${words === '' ? '' : `: ${words}`}`;
}

/** The rows of stock and purchases, and the boxes that they bring to the hives of a yard. */
export class StockRows {
  readonly #book: StockBook;
  readonly #hives: HiveRules;
  readonly #colonies: ColonyMoves;
  /** Deep boxes that rows brought to yards today, by yard and item. */
  readonly #brought = new Map<string, { yard: YardId; item: string; count: number; entry: Entry }>();
  #toRead: { entry: Entry; row: Row; place: PlaceKey }[] = [];

  constructor(book: StockBook, hives: HiveRules, colonies: ColonyMoves) {
    this.#book = book;
    this.#hives = hives;
    this.#colonies = colonies;
  }

  /** From the day of the first row that names an item its account is kept. */
  keep(entry: Entry): void {
    const row = rowOf(entry, this.#hives.usual);
    if (row !== null && !this.#book.keptFrom.has(row.counted)) this.#book.keptFrom.set(row.counted, entry.day);
  }

  enter(entry: Entry): void {
    const row = rowOf(entry, this.#hives.usual);
    if (row === null) return;
    if (readCountNote(entry.body.note) !== null) {
      // A count is of what lay there at the day's end, so it is entered when all else of the day is settled.
      this.#toRead.push({ entry, row, place: row.from === 'supplier' ? row.to : row.from });
      return;
    }
    this.#carryOut(entry, row);
  }

  #carryOut(entry: Entry, { name, counted, quantity, from, to }: Row, counts = false): void {
    const book = this.#book;
    if (from === to) {
      if (isOutside(from)) return;
      // Nothing moves; the row says what the pieces there are.
      book.move(counted, Math.min(quantity, book.at(from).available(counted, anyPiece)), from, to, this.#rank(name, from, to, entry.body.note), (marks) => renamed(marks, name, true), entry);
      return;
    }
    const here = !counts && (from === 'supplier' || isYard(from)) ? this.#colonies.alreadyCarried(from, to, counted, quantity) : 0;
    const count = quantity - here;
    if (isYard(from)) this.#offHives(from, counted, count, entry);
    book.move(counted, count, from, to, this.#rank(name, from, to, entry.body.note), (marks) => renamed(marks, name, false), entry);
    if (!counts && isYard(to) && itemOf(counted) === 'deep box' && (name.state === null || name.state === 'sound')) {
      const known = this.#brought.get(`${to} ${counted}`);
      this.#brought.set(`${to} ${counted}`, { yard: Number(to.slice(1)) as YardId, item: counted, count: count + (known?.count ?? 0), entry });
    }
  }

  /** Second boxes go on the hives that have not all of theirs, the oldest colonies first. */
  fillHives(): void {
    const { fullDeeps, usual } = this.#hives;
    for (const { yard, item, count, entry } of this.#brought.values()) {
      let left = Math.min(count, this.#book.at(yardKey(yard)).available(item, forHive));
      for (const colony of this.#book.standing.get(yard) ?? []) {
        if (left < 1) break;
        const hive = this.#book.hives.get(colony);
        if (hive === undefined || partFor('deep box', hive.frames, usual) !== item) continue;
        const lacking = Math.min(Math.floor(left), fullDeeps - this.#book.at(colonyKey(colony)).count(item));
        if (lacking <= 0) continue;
        this.#colonies.need(colony, item, lacking, yard, entry);
        this.#colonies.need(colony, 'deep frame', lacking * hive.frames, yard, entry);
        left -= lacking;
      }
    }
    this.#brought.clear();
  }

  /** Boxes carried out of a yard beyond what lies free there come off hives that have more than one, the youngest colonies first. */
  #offHives(from: PlaceKey, item: string, count: number, entry: Entry): void {
    if (itemOf(item) !== 'deep box') return;
    const book = this.#book;
    const yard = Number(from.slice(1)) as YardId;
    let short = count - book.at(from).available(item, anyPiece);
    if (short <= 0) return;
    for (const colony of [...(book.standing.get(yard) ?? [])].reverse()) {
      if (short <= 0) return;
      const hive = book.hives.get(colony);
      if (hive === undefined || partFor('deep box', hive.frames, this.#hives.usual) !== item) continue;
      const on = book.at(colonyKey(colony));
      const spare = Math.min(Math.ceil(short), Math.floor(on.count(item)) - 1);
      if (spare <= 0) continue;
      for (const [part, number] of [[item, spare], ['deep frame', Math.min(spare * hive.frames, on.count('deep frame'))]] as const) {
        book.move(part, number, colonyKey(colony), from, anyPiece, (marks) => this.#colonies.offHive(marks, part, entry.day), entry);
      }
      short -= spare;
    }
  }

  readCounts(): void {
    for (const { entry, row, place } of this.#toRead) {
      const read = readCountNote(entry.body.note);
      if (read === null) continue;
      const had = this.#book.at(place).count(row.counted);
      this.#book.counts.push({ entry: entry.id, day: entry.day, place, item: row.counted, counted: read.counted, noted: read.had, had });
      this.#carryOut(entry, row, true);
    }
    this.#toRead = [];
  }

  /** Pieces as the name says them come first; what goes to scrap goes oldest first, out of a yard from a dead-out first. */
  #rank(name: StockItem, from: PlaceKey, to: PlaceKey, note: string | undefined): Rank {
    const more = name.more.join(', ');
    const label = /^dead-out ([^:]+)/.exec(note ?? '')?.[1]?.trim() ?? null;
    const wanted = label === null ? null : (this.#book.labels.get(label) ?? new Set());
    const state = name.state === 'sound' ? null : name.state;
    return (marks) => {
      // The latest dead-outs are carried home first: older ones that were left standing are left once more.
      const latest = marks.deadOut === null ? 0 : (this.#book.deadOuts.get(marks.deadOut)?.order ?? 0);
      let place = marks.state === 'to check' ? 5e6 - latest : (anyPiece(marks) ?? 0);
      if (to === 'scrap') place = marks.state === 'worn out' ? -2e5 : marks.state === 'to mend' ? -1e5 : (marks.year ?? 9000);
      if (isYard(from) && marks.state === 'to check' && (to === 'scrap' || from === to)) place = -1e7 - latest;
      if (name.comb !== null && marks.comb === name.comb) place -= 2e7;
      if (name.year !== null && marks.year === name.year) place -= 2e7;
      if (more !== '' && marks.more === more) place -= 2e7;
      if (state !== null && marks.state === state && from !== to) place -= 4e7;
      // A row within one place changes what is not so yet.
      if (from === to && wanted === null && marks.state === state) place += 8e7;
      if (wanted !== null && marks.deadOut !== null && wanted.has(marks.deadOut)) place -= 1e9;
      return place;
    };
  }

  /** Check notes know dead-outs by their labels. */
  learnLabel(entry: Entry): void {
    if (entry.kind !== 'install' && entry.kind !== 'split') return;
    const colony = entry.kind === 'install' ? entry.body.colony : entry.body.child;
    const known = this.#book.labels.get(entry.body.label);
    if (known === undefined) this.#book.labels.set(entry.body.label, new Set([colony]));
    else known.add(colony);
  }
}

/** What the pieces are once the row has named them. Moving a dead-out's parts is a check of them: unless the name says otherwise they are sound. */
function renamed(marks: Marks, name: StockItem, stays: boolean): Marks {
  const said = name.state === 'sound' ? null : name.state;
  const state = name.state !== null ? said : stays || marks.state === 'to check' ? null : marks.state;
  return { ...plain, state, comb: name.comb ?? marks.comb, year: name.year ?? marks.year, more: name.more.length > 0 ? name.more.join(', ') : marks.more };
}
