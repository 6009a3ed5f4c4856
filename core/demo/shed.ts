import type { Cells } from '#shared/entryForms.ts';
import { entryRow } from './demoOperation.ts';

export const hiveBase = ['bottom board', 'inner cover', 'outer cover', 'entrance reducer', 'stand', 'feeder'] as const;
export const equipment = [...hiveBase, 'deep box', 'deep frame', 'medium super', 'medium frame', 'queen excluder'] as const;
export type Equipment = (typeof equipment)[number];
export type Parts = Partial<Record<Equipment, number>>;

/** Where the equipment is. A day's movements are gathered and written as one row per item and way. */
export class Shed {
  readonly #counts = new Map<string, number>();
  #moved = new Map<string, { item: Equipment; quantity: number; from: string; to: string; note: string | undefined }>();

  count(place: string, item: Equipment): number {
    return this.#counts.get(`${place}|${item}`) ?? 0;
  }

  /** In the shed and in all yards. */
  owned(item: Equipment): number {
    let sum = 0;
    for (const [key, quantity] of this.#counts) if (key.endsWith(`|${item}`)) sum += quantity;
    return sum;
  }

  /** Throws a RangeError when more would leave a place than it holds. */
  move(item: Equipment, quantity: number, from: string, to: string, note?: string): void {
    if (quantity === 0) return;
    if (from !== 'supplier') {
      const held = this.count(from, item);
      if (held < quantity) throw new RangeError(`${from} holds ${held} of ${item}, not ${quantity}`);
      this.#counts.set(`${from}|${item}`, held - quantity);
    }
    if (to !== 'scrap') this.#counts.set(`${to}|${item}`, this.count(to, item) + quantity);
    const key = `${item}|${from}|${to}`;
    const before = this.#moved.get(key);
    this.#moved.set(key, { item, from, to, quantity: quantity + (before?.quantity ?? 0), note: note ?? before?.note });
  }

  carry(parts: Parts, from: string, to: string): void {
    for (const item of equipment) this.move(item, parts[item] ?? 0, from, to);
  }

  /** What was found to be missing, or found; without a row of its own. */
  adjust(item: Equipment, change: number): void {
    this.#counts.set(`shed|${item}`, this.count('shed', item) + change);
  }

  /** The day's movements as rows, what comes in before what goes out; forgets them. */
  takeRows(day: number): Cells[] {
    const rank = (way: { from: string; to: string }) => (way.from === 'supplier' ? 0 : way.to === 'shed' ? 1 : 2);
    const rows = [...this.#moved.values()]
      .sort((one, other) => rank(one) - rank(other))
      .map(({ item, quantity, from, to, note }) => entryRow(day, 'stock', { item, quantity, from, to, note }));
    this.#moved = new Map();
    return rows;
  }
}
