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

/** What lies in one place, by item. Counts of an item sum to what the movements say, whatever the stacks. */
export class Stacks {
  readonly byItem = new Map<string, Stack[]>();

  count(item: string): number {
    let sum = 0;
    for (const stack of this.byItem.get(item) ?? []) sum += stack.count;
    return sum;
  }

  /** Pieces that may be taken in that order. */
  available(item: string, rank: Rank): number {
    let sum = 0;
    for (const stack of this.byItem.get(item) ?? []) if (stack.count > 0 && rank(stack.marks) !== null) sum += stack.count;
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
    const stacks = this.byItem.get(item);
    if (stacks === undefined) {
      this.byItem.set(item, [{ marks, count }]);
      return;
    }
    let left = count;
    const missing = stacks.find((stack) => stack.count < 0);
    if (missing !== undefined) {
      const filled = Math.min(left, -missing.count);
      missing.count += filled;
      left -= filled;
      if (missing.count === 0) stacks.splice(stacks.indexOf(missing), 1);
    }
    if (left === 0) return this.#tidy(item, stacks);
    const found = stacks.find((stack) => stack.count > 0 && same(stack.marks, marks));
    if (found === undefined) stacks.push({ marks, count: left });
    else found.count += left;
  }

  /** Takes so many, or what there is of them; answers what was taken. */
  take(item: string, count: number, rank: Rank): Stack[] {
    const stacks = this.byItem.get(item);
    if (stacks === undefined || count <= 0) return [];
    const ranked: { stack: Stack; place: number }[] = [];
    for (const stack of stacks) {
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
      if (stack.count === 0) stacks.splice(stacks.indexOf(stack), 1);
    }
    this.#tidy(item, stacks);
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

  #tidy(item: string, stacks: readonly Stack[]): void {
    if (stacks.length === 0) this.byItem.delete(item);
  }
}
