/**
 * A repeatable source of chance for the invented operations: sfc32 (Chris Doty-Humphrey's "small fast counting"
 * generator, 32-bit integer steps only), started from one integer by splitmix32. The derived draws use Math.log,
 * Math.cos and Math.exp, which V8 computes in software, so every machine that runs the program draws the same.
 */
export class SeededRandom {
  #a: number;
  #b: number;
  #c: number;
  #counter = 1;

  /** @param seed any integer; only its lowest 32 bits count. */
  constructor(seed: number) {
    let state = seed | 0;
    const start = () => {
      state = (state + 0x9e3779b9) | 0;
      let mixed = state ^ (state >>> 16);
      mixed = Math.imul(mixed, 0x21f0aaad);
      mixed ^= mixed >>> 15;
      mixed = Math.imul(mixed, 0x735a2d97);
      return mixed ^ (mixed >>> 15);
    };
    this.#a = start();
    this.#b = start();
    this.#c = start();
    for (let turn = 0; turn < 12; turn += 1) this.next();
  }

  /** Uniform in [0, 1). */
  next(): number {
    const sum = (((this.#a + this.#b) | 0) + this.#counter) | 0;
    this.#counter = (this.#counter + 1) | 0;
    this.#a = this.#b ^ (this.#b >>> 9);
    this.#b = (this.#c + (this.#c << 3)) | 0;
    this.#c = (((this.#c << 21) | (this.#c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4_294_967_296;
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  between(low: number, high: number): number {
    return low + this.next() * (high - low);
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** Normal by Box and Muller. */
  normal(mean: number, deviation: number): number {
    const radius = Math.sqrt(-2 * Math.log(1 - this.next()));
    return mean + deviation * radius * Math.cos(2 * Math.PI * this.next());
  }

  /** Number of successes in `trials` tries. */
  binomial(trials: number, probability: number): number {
    let successes = 0;
    for (let trial = 0; trial < trials; trial += 1) if (this.next() < probability) successes += 1;
    return successes;
  }

  /** Throws a RangeError when the list is empty. */
  pick<Item>(list: readonly Item[]): Item {
    const item = list[Math.floor(this.next() * list.length)];
    if (item === undefined) throw new RangeError('nothing to pick from');
    return item;
  }

  /** A new list in another order (Fisher and Yates). */
  shuffled<Item>(list: readonly Item[]): Item[] {
    const mixed = [...list];
    for (let last = mixed.length - 1; last > 0; last -= 1) {
      const other = Math.floor(this.next() * (last + 1));
      const kept = mixed[last] as Item;
      mixed[last] = mixed[other] as Item;
      mixed[other] = kept;
    }
    return mixed;
  }

  /** A source of its own, so that more draws in one place do not shift those in another. */
  branch(): SeededRandom {
    return new SeededRandom(Math.floor(this.next() * 4_294_967_296));
  }
}
