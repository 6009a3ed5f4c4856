import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { combOn } from './comb.ts';
import { boxNames, framesInNote, hiveInNote, partFor, type HiveRules } from './hives.ts';
import { isFrame, itemOf } from './itemName.ts';
import { colonyKey, yardKey, type PlaceKey } from './places.ts';
import { plain, type Marks, type Rank, type Stack } from './stacks.ts';
import type { Cause, StockBook } from './stockBook.ts';

/** A part that a hive has got, whose place of origin is settled at the end of the day. */
interface Pending {
  readonly colony: ColonyId;
  readonly item: string;
  readonly stack: Stack;
  readonly count: number;
  readonly yard: YardId;
  readonly cause: Cause;
  /** Only if it lies in the yard. */
  readonly ifThere: boolean;
}

type Of<Name extends Entry['kind']> = Extract<Entry, { kind: Name }>;

/** Sound pieces, for a hive: drawn comb before foundation, newer comb before older. */
export const forHive: Rank = (marks) => (marks.state === null ? (marks.comb === 'drawn' ? 0 : 10_000) + (3000 - (marks.year ?? 2000)) : null);
/** Any piece: sound ones first, then those to check, to mend, worn out. */
export const anyPiece: Rank = (marks) => {
  const sound = forHive({ ...marks, state: null }) ?? 0;
  return marks.state === null ? sound : sound + (marks.state === 'to check' ? 100_000 : marks.state === 'to mend' ? 200_000 : 300_000);
};

/** What befalls colonies, as movements of the parts they stand on. */
export class ColonyMoves {
  readonly #book: StockBook;
  readonly #hives: HiveRules;
  readonly #borders: Borders;
  #pending: Pending[] = [];
  #number = 0;
  /** What the day's entries carried from one place to another; a stock row of the same day that says so again is not counted twice. */
  readonly #carried = new Map<string, number>();
  #harvested = new Set<ColonyId | YardId | string>();

  constructor(book: StockBook, hives: HiveRules, borders: Borders) {
    this.#book = book;
    this.#hives = hives;
    this.#borders = borders;
  }

  begin(today: readonly Entry[]): void {
    this.#carried.clear();
    this.#harvested.clear();
    for (const entry of today) {
      if (entry.kind === 'harvest') this.#harvested.add(entry.body.colony === undefined ? `y${entry.body.yard ?? 0}` : `c${entry.body.colony}`);
    }
  }

  /** Takes off what the day's entries carried on that way already; answers how many of the count that are. */
  alreadyCarried(from: PlaceKey, to: PlaceKey, item: string, count: number): number {
    const key = `${from}|${to}|${item}`;
    const known = Math.min(count, this.#carried.get(key) ?? 0);
    if (known > 0) this.#carried.set(key, (this.#carried.get(key) ?? 0) - known);
    return known;
  }

  enter(entry: Entry): void {
    switch (entry.kind) {
      case 'install':
        return this.#install(entry);
      case 'split':
        return this.#split(entry);
      case 'supers on':
        return this.#supersOn(entry);
      case 'supers off':
        return this.#supersOff(entry);
      case 'move':
        return this.#move(entry);
      case 'loss':
      case 'absconded':
        return this.#deadOut(entry);
      case 'combine':
        return this.#leaveHive(entry.body.colony, entry, (marks) => marks);
      case 'sale':
      case 'gift':
        return this.#goesAway(entry);
      default:
        return;
    }
  }

  /** Puts a part on a hive; where it came from is settled at the day's end. */
  need(colony: ColonyId, item: string, count: number, yard: YardId, cause: Cause, ifThere = false): void {
    if (count <= 0) return;
    this.#number += 1;
    const stack: Stack = { marks: { ...plain, more: `\u0000${this.#number}`, since: cause.day }, count };
    const stacks = this.#book.at(colonyKey(colony));
    const there = stacks.byItem.get(item);
    if (there === undefined) stacks.byItem.set(item, [stack]);
    else there.push(stack);
    this.#pending.push({ colony, item, stack, count, yard, cause, ifThere });
  }

  settle(): void {
    const book = this.#book;
    for (const { colony, item, stack, count, yard, cause, ifThere } of this.#pending) {
      const hive = colonyKey(colony);
      const stacks = book.places.get(hive)?.byItem.get(item);
      const still = stacks?.includes(stack) ? stack.count : 0;
      const here = book.at(yardKey(yard));
      const near = Math.min(count, here.available(item, forHive));
      const lacking = count - near;
      // What lies nowhere near need not have been put on; a part that went on elsewhere the same day must have been.
      const left = ifThere ? Math.max(0, lacking - still) : lacking;
      const pieces = near > 0 ? book.leave(item, near, yardKey(yard), forHive, cause) : [];
      if (near > 0) book.note(item, near, yardKey(yard), hive, cause);
      if (left > 0) {
        const kept = book.keptFrom.get(item);
        const from: PlaceKey = kept !== undefined && kept <= cause.day ? 'shed' : 'supplier';
        pieces.push(...book.leave(item, left, from, (marks) => forHive(marks) ?? anyPiece(marks), cause));
        book.note(item, left, from, hive, cause);
      }
      if (stacks === undefined || still === 0) continue;
      stacks.splice(stacks.indexOf(stack), 1);
      if (stacks.length === 0) book.at(hive).byItem.delete(item);
      let open = still - (lacking - left);
      for (const piece of pieces) {
        const part = Math.min(open, piece.count);
        book.at(hive).add(item, part, { ...piece.marks, state: null, since: cause.day });
        open -= part;
      }
    }
    this.#pending = [];
  }

  #begin(colony: ColonyId, yard: YardId, frames: 8 | 10): void {
    this.#book.hives.set(colony, { yard, frames });
    const there = this.#book.standing.get(yard);
    if (there === undefined) this.#book.standing.set(yard, new Set([colony]));
    else there.add(colony);
  }

  /** The parts of a whole hive with so many deep boxes. */
  #parts(frames: 8 | 10, deeps: number): { item: string; count: number }[] {
    const { base, usual } = this.#hives;
    return [
      ...base.map(({ item, count }) => ({ item: partFor(item, frames, usual), count })),
      { item: partFor('deep box', frames, usual), count: deeps }, { item: 'deep frame', count: deeps * frames },
    ];
  }

  #install(entry: Of<'install'>): void {
    const { colony, yard, origin, note } = entry.body;
    const said = hiveInNote(note);
    const frames = said.frames ?? this.#hives.usual;
    this.#begin(colony, yard, frames);
    const whole = origin === 'bought colony' || origin === 'opening';
    const parts = this.#parts(frames, said.deeps ?? (whole ? this.#hives.fullDeeps : this.#hives.startDeeps));
    const brought = (item: string, count: number) => {
      this.#book.move(item, count, 'supplier', colonyKey(colony), anyPiece, () => ({ ...plain, comb: isFrame(item) ? 'drawn' : null, since: entry.day }), entry);
      this.#carry('supplier', yardKey(yard), item, count);
    };
    for (const { item, count } of parts) {
      if (whole) brought(item, count);
      else if (origin === 'nuc' && item === 'deep frame') {
        const with_ = Math.min(count, this.#hives.nucFrames);
        brought(item, with_);
        this.need(colony, item, count - with_, yard, entry);
      } else this.need(colony, item, count, yard, entry);
    }
  }

  #split(entry: Of<'split'>): void {
    const { colony, child, toYard, framesBrood, framesStores, note } = entry.body;
    const mother = this.#book.hives.get(colony);
    if (mother === undefined) return;
    const said = hiveInNote(note);
    const frames = said.frames ?? this.#hives.usual;
    const yard = toYard ?? mother.yard;
    this.#begin(child, yard, frames);
    const deeps = said.deeps ?? this.#hives.startDeeps;
    const written = Math.round((framesBrood ?? 0) + (framesStores ?? 0));
    const wished = framesBrood === undefined && framesStores === undefined ? this.#hives.splitFrames : written;
    const over = Math.max(0, Math.min(wished, deeps * frames, this.#book.at(colonyKey(colony)).count('deep frame')));
    // Comb goes on being drawn in the new hive; what was put on today is new there too.
    this.#book.move('deep frame', over, colonyKey(colony), colonyKey(child), forHive, (marks) => (marks.more.startsWith('\u0000') ? { ...plain, since: entry.day } : marks), entry);
    for (const { item, count } of this.#parts(frames, deeps)) this.need(child, item, item === 'deep frame' ? count - over : count, yard, entry);
    this.need(colony, 'deep frame', over, yard, entry);
  }

  #supersOn(entry: Of<'supers on'>): void {
    const { colony, box, count } = entry.body;
    const hive = this.#book.hives.get(colony);
    if (hive === undefined) return;
    const { usual, excluder } = this.#hives;
    const names = boxNames[box];
    this.need(colony, partFor(names.box, hive.frames, usual), count, hive.yard, entry);
    this.need(colony, names.frame, count * hive.frames, hive.yard, entry);
    const excluderName = partFor('queen excluder', hive.frames, usual);
    if (excluder && box !== 'deep' && this.#book.at(colonyKey(colony)).count(excluderName) === 0) this.need(colony, excluderName, 1, hive.yard, entry, true);
  }

  #supersOff(entry: Of<'supers off'>): void {
    const { colony, box, count } = entry.body;
    const hive = this.#book.hives.get(colony);
    if (hive === undefined) return;
    const { usual } = this.#hives;
    const names = boxNames[box];
    const on = this.#book.at(colonyKey(colony));
    const harvested = this.#harvested.has(colonyKey(colony)) || this.#harvested.has(yardKey(hive.yard));
    const boxItem = partFor(names.box, hive.frames, usual);
    this.#off(colony, boxItem, Math.min(count, on.count(boxItem)), hive.yard, entry, harvested);
    this.#off(colony, names.frame, Math.min(count * hive.frames, on.count(names.frame)), hive.yard, entry, harvested);
    const excluderName = partFor('queen excluder', hive.frames, usual);
    const supers = ['medium super', 'shallow super'].some((item) => on.count(partFor(item, hive.frames, usual)) > 0);
    if (!supers) this.#off(colony, excluderName, on.count(excluderName), hive.yard, entry, false);
  }

  #off(colony: ColonyId, item: string, count: number, yard: YardId, entry: Entry, harvested: boolean): void {
    this.#book.move(item, count, colonyKey(colony), yardKey(yard), anyPiece, (marks) => this.offHive(marks, item, entry.day, harvested), entry);
  }

  /** Pieces as they come off a hive: comb that was on it long enough, or that honey was taken from, is drawn. */
  offHive(marks: Marks, item: string, day: Day, harvested = false): Marks {
    const more = marks.more.startsWith('\u0000') ? '' : marks.more;
    if (!isFrame(itemOf(item))) return { ...marks, more, since: null };
    const { comb, year } = combOn(marks, day, this.#hives.drawnDays, this.#borders, harvested);
    return { ...marks, more, comb, year, since: null };
  }

  #move(entry: Of<'move'>): void {
    const { colony, toYard } = entry.body;
    const hive = this.#book.hives.get(colony);
    if (hive === undefined || hive.yard === toYard) return;
    for (const [item, stacks] of this.#book.at(colonyKey(colony)).byItem) this.#carry(yardKey(hive.yard), yardKey(toYard), item, stacks.reduce((sum, { count }) => sum + count, 0));
    this.#book.standing.get(hive.yard)?.delete(colony);
    this.#begin(colony, toYard, hive.frames);
  }

  #deadOut(entry: Of<'loss' | 'absconded'>): void {
    const { colony } = entry.body;
    const hive = this.#book.hives.get(colony);
    if (hive === undefined) return;
    this.#book.deadOuts.set(colony, { colony, yard: hive.yard, day: entry.day, how: entry.kind === 'loss' ? 'lost' : 'absconded', causes: entry.kind === 'loss' ? (entry.body.cause ?? []) : [], order: this.#book.deadOuts.size });
    this.#leaveHive(colony, entry, (marks) => ({ ...marks, state: 'to check', deadOut: colony }));
  }

  /** The whole hive stays in its yard without bees. */
  #leaveHive(colony: ColonyId, entry: Entry, marked: (marks: Marks) => Marks): void {
    const hive = this.#book.hives.get(colony);
    if (hive === undefined) return;
    const on = this.#book.at(colonyKey(colony));
    for (const item of [...on.byItem.keys()]) {
      this.#book.move(item, on.count(item), colonyKey(colony), yardKey(hive.yard), anyPiece, (marks) => marked(this.offHive(marks, item, entry.day)), entry);
    }
    this.#end(colony, hive.yard);
  }

  #goesAway(entry: Of<'sale' | 'gift'>): void {
    const { colony, note } = entry.body;
    const hive = colony === undefined ? undefined : this.#book.hives.get(colony);
    if (colony === undefined || hive === undefined) return;
    const on = this.#book.at(colonyKey(colony));
    const framesOnly = framesInNote(note);
    for (const item of [...on.byItem.keys()]) {
      const count = framesOnly === null ? on.count(item) : item === 'deep frame' ? Math.min(framesOnly, on.count(item)) : 0;
      this.#book.move(item, count, colonyKey(colony), 'sold', anyPiece, () => plain, entry);
      this.#carry(yardKey(hive.yard), 'scrap', item, count);
    }
    this.#leaveHive(colony, entry, (marks) => marks);
  }

  #end(colony: ColonyId, yard: YardId): void {
    this.#book.standing.get(yard)?.delete(colony);
    this.#book.hives.delete(colony);
    // What was put on today and is not settled yet stays with the account until the day's end.
    if (this.#book.at(colonyKey(colony)).byItem.size === 0) this.#book.places.delete(colonyKey(colony));
  }

  #carry(from: PlaceKey, to: PlaceKey, item: string, count: number): void {
    const key = `${from}|${to}|${item}`;
    this.#carried.set(key, (this.#carried.get(key) ?? 0) + count);
  }
}
