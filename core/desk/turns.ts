/** How a call takes its turn. `patient`: a read that is long to work out and may be overtaken by reads that are not. */
export type Haste = 'write' | 'read' | 'patient';

interface Waiting {
  readonly haste: Haste;
  readonly start: () => Promise<unknown>;
}

/**
 * One call at a time, in the order they came: a write never meets a half-done other, and every read sees whole acts. Only
 * a quick read steps past long reads that have not begun, so that a page of many sections keeps nobody waiting for
 * longer than one of them takes. Nothing ever steps past a write.
 */
export class Turns {
  readonly #waiting: Waiting[] = [];
  #busy = false;

  take<Value>(haste: Haste, act: () => Promise<Value>): Promise<Value> {
    const { promise, resolve, reject } = Promise.withResolvers<Value>();
    this.#waiting.push({ haste, start: () => act().then(resolve, reject) });
    void this.#run();
    return promise;
  }

  async #run(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    for (let next = this.#next(); next !== undefined; next = this.#next()) {
      await next.start();
      // What was asked meanwhile comes in before the next is chosen.
      await new Promise(setImmediate);
    }
    this.#busy = false;
  }

  #next(): Waiting | undefined {
    const stop = this.#waiting.findIndex(({ haste }) => haste !== 'patient');
    const at = stop > 0 && this.#waiting[stop]?.haste === 'read' ? stop : 0;
    return this.#waiting.splice(at, 1)[0];
  }
}
