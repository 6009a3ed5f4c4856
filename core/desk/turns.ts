import { AsyncLocalStorage } from 'node:async_hooks';
import type { Slices } from '#shared/slices.ts';

/**
 * How a call takes its turn. `patient`: a read that is long to work out and may be overtaken by reads that are not.
 * `firm`: a read that begins something, and so is carried to its end before the next write. `draft`: a write that no long
 * read looks at. `idle`: something to do when nobody asks for anything.
 */
export type Haste = 'write' | 'draft' | 'read' | 'patient' | 'firm' | 'idle';

/** Milliseconds that a long read works before it looks whether anybody waits. */
const slice = 12;
/** A read that had to begin anew so many times is carried to its end before the next write. */
const mostAside = 3;

/** Thrown where a long read rests and a write waits: what it has read so far would soon be old. It begins anew after the write. */
export class SetAside extends Error {}

class Call {
  readonly haste: Haste;
  /** In the order they came. */
  readonly number: number;
  readonly act: () => Promise<unknown>;
  readonly settle: (act: Promise<unknown>) => void;
  /** Where it rests, until it is called back or sent away. */
  resting: { readonly goOn: () => void; readonly giveUp: (why: SetAside) => void }[] = [];
  /** How often it had to begin anew before. */
  readonly aside: number;
  /** Milliseconds that it has worked since it began, and when it was given its time last. */
  worked = 0;
  since = 0;
  rested = 0;
  ended = false;
  /** It began anew as another. */
  gone = false;
  readonly wake: () => void;

  constructor(of: Pick<Call, 'haste' | 'number' | 'act' | 'settle' | 'wake' | 'aside'>) {
    this.haste = of.haste;
    this.number = of.number;
    this.act = of.act;
    this.settle = of.settle;
    this.wake = of.wake;
    this.aside = of.aside;
  }

  /** Whole at a stretch: nothing else happens before it has ended. */
  get alone(): boolean {
    return this.haste === 'write';
  }

  get yields(): boolean {
    return this.haste === 'idle' || (this.haste !== 'firm' && this.aside < mostAside);
  }

  /** The longer it has worked, the later its turn comes: each step four times the one before. */
  get step(): number {
    return this.haste === 'idle' ? Infinity : Math.max(0, Math.ceil(Math.log(this.worked / 50) / Math.log(4)));
  }

  rest(): Promise<void> | undefined {
    // A part of it that was busy elsewhere as it was set aside.
    if (this.gone) return Promise.reject(new SetAside());
    const now = performance.now();
    if (this.ended || this.haste === 'write' || this.haste === 'draft' || (this.resting.length === 0 && now - this.since < slice)) return undefined;
    if (this.resting.length === 0) this.pause(now);
    return new Promise((goOn, giveUp) => {
      this.resting.push({ goOn, giveUp });
      this.wake();
    });
  }

  /** Its time is over for now. */
  pause(now: number): void {
    this.worked += now - this.since;
    this.since = now;
  }

  takeUp(): void {
    const now = performance.now();
    this.rested += now - this.since;
    this.since = now;
    for (const { goOn } of this.resting.splice(0)) goOn();
  }

  sendAway(): void {
    for (const { giveUp } of this.resting.splice(0)) giveUp(new SetAside());
  }
}

const turn = new AsyncLocalStorage<Call>();

/**
 * Lets others have their turn where a long read has worked for a while: to be awaited in its loops, where nothing is
 * half done. Throws `SetAside` where a write waits. In a write, or outside of any turn, it goes on at once.
 */
export async function breathe(): Promise<void> {
  await turn.getStore()?.rest();
}

/** Milliseconds for which the call that goes on has let others have their turn. */
export function restedSoFar(): number {
  return turn.getStore()?.rested ?? 0;
}

/** Goes through the slices of a long piece of work, with others' turns in between. */
export async function inSlices<Value>(work: Slices<Value>): Promise<Value> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    await breathe();
  }
}

/**
 * The desk's calls in the order they came. A write has the book to itself: nothing goes on beside it, so that it never
 * meets a half-done other and every read sees whole acts; writes never change places, and no quick read or draft steps
 * past a write. Reads give each other time: one that is long rests where it breathes, and whoever came meanwhile has its
 * turn, those first that have worked the least. A write does not wait for long reads: one that rests is set aside and
 * begins anew after it, so that no answer joins what was before a write to what was after it.
 */
export class Turns {
  readonly #waiting: Call[] = [];
  readonly #begun = new Set<Call>();
  #number = 0;
  #woken = false;

  take<Value>(haste: Haste, act: () => Promise<Value>): Promise<Value> {
    const { promise, resolve } = Promise.withResolvers<Value>();
    // What comes out of the act is what was asked for.
    const settle = (done: Promise<unknown>) => resolve(done as Promise<Value>);
    this.#waiting.push(new Call({ haste, number: this.#number++, act, settle, wake: () => this.#wake(), aside: 0 }));
    this.#wake();
    return promise;
  }

  /** One step each time round: what came in meanwhile is heard before the next is chosen, and whoever goes on works alone until it rests. */
  #wake(): void {
    if (this.#woken) return;
    this.#woken = true;
    setImmediate(() => {
      this.#woken = false;
      if (this.#step()) this.#wake();
    });
  }

  /** Whether anything was done. */
  #step(): boolean {
    const begun = [...this.#begun];
    if (begun.some(({ alone }) => alone)) return false;
    const write = this.#waiting.find(({ alone }) => alone);
    const before = write === undefined ? this.#waiting : this.#waiting.filter(({ number }) => number < write.number);
    const quick = before.find(({ haste, aside }) => haste === 'draft' || haste === 'firm' || (haste === 'read' && aside === 0));
    if (quick !== undefined) return this.#begin(quick);
    const stubborn = before.find(({ yields }) => !yields);
    const resting = begun.filter(({ resting: at }) => at.length > 0);
    if (write !== undefined) {
      const giving = resting.filter(({ yields }) => yields);
      for (const call of giving) call.sendAway();
      if (giving.length > 0) return true;
      if (begun.length === 0) return this.#begin(stubborn ?? write);
    }
    const next = leastWorked([...resting, ...(write === undefined ? this.#mayBegin(begun) : [])]);
    if (next === undefined) return false;
    if (!this.#begun.has(next)) return this.#begin(next);
    next.takeUp();
    return true;
  }

  /** Long reads one after the other; what is done when nobody asks begins only then. */
  #mayBegin(begun: readonly Call[]): Call[] {
    const reads = this.#waiting.filter(({ haste }) => haste === 'read');
    const patient = begun.some(({ haste }) => haste !== 'idle') ? undefined : this.#waiting.find(({ haste }) => haste === 'patient');
    const idle = begun.length === 0 && this.#waiting.every(({ haste }) => haste === 'idle') ? this.#waiting[0] : undefined;
    return [...reads, patient ?? idle].filter((call) => call !== undefined);
  }

  #begin(call: Call): true {
    this.#waiting.splice(this.#waiting.indexOf(call), 1);
    this.#begun.add(call);
    call.since = performance.now();
    const act = turn.run(call, call.act);
    act.then(
      () => this.#end(call, act),
      (error: unknown) => (error instanceof SetAside ? this.#again(call) : this.#end(call, act)),
    );
    return true;
  }

  #end(call: Call, act: Promise<unknown>): void {
    call.ended = true;
    this.#begun.delete(call);
    call.settle(act);
    // What another part of it left resting nobody would call back, and others may wait for the same.
    call.sendAway();
    this.#wake();
  }

  #again(call: Call): void {
    this.#begun.delete(call);
    call.gone = true;
    call.sendAway();
    const at = this.#waiting.findIndex(({ number }) => number > call.number);
    this.#waiting.splice(at < 0 ? this.#waiting.length : at, 0, new Call({ ...call, aside: call.aside + 1 }));
    this.#wake();
  }
}

function leastWorked(calls: readonly Call[]): Call | undefined {
  return calls.toSorted((a, b) => a.step - b.step || a.number - b.number)[0];
}
