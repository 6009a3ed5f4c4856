import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Comb, PieceState } from './itemName.ts';

/** What is said of pieces beyond their item. A state of null is sound: nothing else was said. */
export interface Marks {
  readonly state: Exclude<PieceState, 'sound'> | 'to check' | null;
  readonly comb: Comb | null;
  readonly year: number | null;
  readonly more: string;
  /** The colony whose dead-out they were; only while they are to be checked. */
  readonly deadOut: ColonyId | null;
  /** The day they came on a hive; null elsewhere. */
  readonly since: Day | null;
}

/** Equal pieces in one place. Below 0: more left than was there. */
export interface Stack {
  marks: Marks;
  count: number;
}

export const plain: Marks = { state: null, comb: null, year: null, more: '', deadOut: null, since: null };

/** The order in which stacks are taken from; null: not at all. */
export type Rank = (marks: Marks) => number | null;

function same(one: Marks, other: Marks): boolean {
  return one.state === other.state && one.comb === other.comb && one.year === other.year && one.more === other.more && one.deadOut === other.deadOut && one.since === other.since;
}

const toCheck: Marks = { ...plain, state: 'to check' };

/**
 * What lies in one place, by item. Counts of an item sum to what the movements say, whatever the stacks. What waits to
 * be checked lies apart: a yard may hold a stack of it for every dead-out, which most questions need not look at.
 */
export class Stacks {
  readonly byItem = new Map<string, Stack[]>();
  readonly waiting = new Map<string, Stack[]>();

  copy(): Stacks {
    const copied = new Stacks();
    for (const [from, to] of [[this.byItem, copied.byItem], [this.waiting, copied.waiting]] as const) {
      for (const [item, stacks] of from) to.set(item, stacks.map(({ marks, count }) => ({ marks, count })));
    }
    return copied;
  }

  items(): string[] {
    return [...new Set([...this.byItem.keys(), ...this.waiting.keys()])];
  }

  of(item: string): readonly Stack[] {
    const waiting = this.waiting.get(item);
    const free = this.byItem.get(item) ?? [];
    return waiting === undefined ? free : [...free, ...waiting];
  }

  count(item: string): number {
    return this.of(item).reduce((sum, { count }) => sum + count, 0);
  }

  /** Pieces that may be taken in that order. */
  available(item: string, rank: Rank): number {
    let sum = 0;
    for (const stack of this.#askedFor(item, rank)) if (stack.count > 0 && rank(stack.marks) !== null) sum += stack.count;
    return sum;
  }

  /** How far an item is below nothing, 0 or less. */
  below(item: string): number {
    let sum = 0;
    for (const stack of this.byItem.get(item) ?? []) if (stack.count < 0) sum += stack.count;
    return sum;
  }

  /** What arrives first makes good what is missing. */
  add(item: string, count: number, marks: Marks): void {
    if (count === 0) return;
    let left = count;
    const free = this.byItem.get(item);
    const missing = free?.find((stack) => stack.count < 0);
    if (free !== undefined && missing !== undefined) {
      const filled = Math.min(left, -missing.count);
      missing.count += filled;
      left -= filled;
      if (missing.count === 0) this.#drop(this.byItem, item, free, missing);
    }
    if (left === 0) return;
    const apart = marks.deadOut !== null;
    const piles = apart ? this.waiting : this.byItem;
    const stacks = piles.get(item);
    // Each dead-out is its own, so looking for an equal one would find none but its own last one.
    const found = apart ? undefined : stacks?.find((stack) => stack.count > 0 && same(stack.marks, marks));
    if (found !== undefined) found.count += left;
    else if (stacks === undefined) piles.set(item, [{ marks, count: left }]);
    else stacks.push({ marks, count: left });
  }

  /** Takes so many, or what there is of them; answers what was taken. */
  take(item: string, count: number, rank: Rank): Stack[] {
    if (count <= 0) return [];
    const ranked: { stack: Stack; place: number }[] = [];
    for (const stack of this.#askedFor(item, rank)) {
      const place = stack.count > 0 ? rank(stack.marks) : null;
      if (place !== null) ranked.push({ stack, place });
    }
    if (ranked.length > 1) ranked.sort((a, b) => a.place - b.place);
    const taken: Stack[] = [];
    let left = count;
    for (const { stack } of ranked) {
      if (left <= 0) break;
      const part = Math.min(left, stack.count);
      taken.push({ marks: stack.marks, count: part });
      stack.count -= part;
      left -= part;
      if (stack.count > 0) continue;
      const piles = stack.marks.deadOut === null ? this.byItem : this.waiting;
      this.#drop(piles, item, piles.get(item) ?? [], stack);
    }
    return taken;
  }

  /** Goes below nothing. */
  owe(item: string, count: number): void {
    if (count === 0) return;
    const stacks = this.byItem.get(item) ?? [];
    this.byItem.set(item, stacks);
    const missing = stacks.find((stack) => stack.count < 0);
    if (missing === undefined) stacks.push({ marks: plain, count: -count });
    else missing.count -= count;
  }

  #askedFor(item: string, rank: Rank): readonly Stack[] {
    return rank(toCheck) === null ? (this.byItem.get(item) ?? []) : this.of(item);
  }

  #drop(piles: Map<string, Stack[]>, item: string, stacks: Stack[], stack: Stack): void {
    const at = stacks.indexOf(stack);
    if (at >= 0) stacks.splice(at, 1);
    if (stacks.length === 0) piles.delete(item);
  }
}
