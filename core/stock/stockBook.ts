import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Counted } from './stockCount.ts';
import { isOutside, type Outside, type PlaceKey } from './places.ts';
import { Stacks, type Marks, type Rank, type Stack } from './stacks.ts';

/** One item leaves one place and reaches another; `entry` is the record it follows from. */
export interface Movement {
  readonly entry: EntryId;
  readonly day: Day;
  readonly kind: Kind;
  readonly item: string;
  readonly count: number;
  readonly from: PlaceKey;
  readonly to: PlaceKey;
}

/** More left a place than was there. */
export interface Shortage {
  readonly place: PlaceKey;
  readonly item: string;
  readonly entry: EntryId;
  readonly kind: Kind;
  readonly day: Day;
  count: number;
}

/** The hive of a colony that died or left, still to be looked over. */
export interface DeadOut {
  readonly colony: ColonyId;
  readonly yard: YardId;
  readonly day: Day;
  readonly how: 'lost' | 'absconded';
  readonly causes: readonly string[];
  /** How many there were before it. */
  readonly order: number;
}

/** A colony as the account sees it: where its hive stands and of what size it is. */
export interface HiveOf {
  yard: YardId;
  readonly frames: 8 | 10;
}

/** The entry that moves something. */
export interface Cause {
  readonly id: EntryId;
  readonly day: Day;
  readonly kind: Kind;
}

const latestKept = 400;

/** All equipment by place; every change goes through `move`, which takes from one place what it gives to another. */
export class StockBook {
  readonly places = new Map<PlaceKey, Stacks>();
  readonly #outside: Record<Outside, Map<string, number>> = { supplier: new Map(), scrap: new Map(), sold: new Map() };
  readonly hives = new Map<ColonyId, HiveOf>();
  readonly standing = new Map<YardId, Set<ColonyId>>();
  readonly deadOuts = new Map<ColonyId, DeadOut>();
  /** The day of the first row that names an item: from then on the shed's account of it is kept. */
  readonly keptFrom = new Map<string, Day>();
  readonly shortages = new Map<string, Shortage>();
  readonly counts: Counted[] = [];
  /** The colonies that ever bore a label; check notes name dead-outs by theirs. */
  readonly labels = new Map<string, Set<ColonyId>>();
  /** The newest movements, newest last. */
  latest: Movement[] = [];
  /** The last taking of each place and item since the day began. */
  readonly #left = new Map<string, { place: PlaceKey; item: string; cause: Cause }>();
  readonly #onMove: ((made: Movement) => void) | undefined;

  constructor(onMove?: (made: Movement) => void) {
    this.#onMove = onMove;
  }

  /** A book of its own that says the same; both can be carried on from here. Only between days. */
  copy(onMove?: (made: Movement) => void): StockBook {
    const copied = new StockBook(onMove);
    for (const [place, stacks] of this.places) copied.places.set(place, stacks.copy());
    for (const place of ['supplier', 'scrap', 'sold'] as const) for (const [item, count] of this.#outside[place]) copied.#outside[place].set(item, count);
    for (const [colony, hive] of this.hives) copied.hives.set(colony, { ...hive });
    for (const [yard, colonies] of this.standing) copied.standing.set(yard, new Set(colonies));
    for (const [colony, deadOut] of this.deadOuts) copied.deadOuts.set(colony, deadOut);
    for (const [item, day] of this.keptFrom) copied.keptFrom.set(item, day);
    for (const [key, shortage] of this.shortages) copied.shortages.set(key, { ...shortage });
    for (const [label, colonies] of this.labels) copied.labels.set(label, new Set(colonies));
    copied.counts.push(...this.counts);
    copied.latest = [...this.latest];
    return copied;
  }

  at(place: PlaceKey): Stacks {
    const found = this.places.get(place);
    if (found !== undefined) return found;
    const made = new Stacks();
    this.places.set(place, made);
    return made;
  }

  /** Net sum that reached an outside place; below 0 where more came from it. */
  outsideCount(place: Outside, item: string): number {
    return this.#outside[place].get(item) ?? 0;
  }

  /** Moves so many; what is not there is owed by the place it leaves. `marked` says what the pieces are from now on. */
  move(item: string, count: number, from: PlaceKey, to: PlaceKey, rank: Rank, marked: (marks: Marks) => Marks, cause: Cause): void {
    if (count <= 0) return;
    for (const { marks, count: part } of this.leave(item, count, from, rank, cause)) this.arrive(item, part, to, marked(marks));
    this.note(item, count, from, to, cause);
  }

  leave(item: string, count: number, from: PlaceKey, rank: Rank, cause: Cause): Stack[] {
    if (isOutside(from)) {
      this.#tally(from, item, -count);
      return [{ marks: noMarks, count }];
    }
    const stacks = this.at(from);
    const taken = stacks.take(item, count, rank);
    const rest = count - taken.reduce((sum, stack) => sum + stack.count, 0);
    if (rest > 0) {
      stacks.owe(item, rest);
      taken.push({ marks: noMarks, count: rest });
    }
    this.#left.set(`${from} ${item}`, { place: from, item, cause });
    return taken;
  }

  arrive(item: string, count: number, to: PlaceKey, marks: Marks): void {
    if (isOutside(to)) this.#tally(to, item, count);
    else this.at(to).add(item, count, marks);
  }

  note(item: string, count: number, from: PlaceKey, to: PlaceKey, { id, day, kind }: Cause): void {
    const made: Movement = { entry: id, day, kind, item, count, from, to };
    this.#onMove?.(made);
    this.latest.push(made);
    if (this.latest.length > 2 * latestKept) this.latest = this.latest.slice(-latestKept);
  }

  /** At the end of a day: what is below nothing, and by which entry. What was filled up again is no shortage any more. */
  closeDay(): void {
    for (const [key, { place, item, cause }] of this.#left) {
      const below = this.at(place).below(item);
      const known = this.shortages.get(key);
      if (below < 0 && known === undefined) this.shortages.set(key, { place, item, entry: cause.id, day: cause.day, kind: cause.kind, count: below });
    }
    this.#left.clear();
    for (const [key, shortage] of this.shortages) {
      const below = this.at(shortage.place).below(shortage.item);
      if (below < 0) shortage.count = below;
      else this.shortages.delete(key);
    }
  }

  /** Every item that any place or account names. */
  items(): string[] {
    const names = new Set<string>();
    for (const stacks of this.places.values()) for (const item of stacks.items()) names.add(item);
    for (const account of Object.values(this.#outside)) for (const item of account.keys()) names.add(item);
    return [...names].sort();
  }

  #tally(place: Outside, item: string, change: number): void {
    this.#outside[place].set(item, (this.#outside[place].get(item) ?? 0) + change);
  }
}

const noMarks: Marks = { state: null, comb: null, year: null, more: '', deadOut: null, since: null };
