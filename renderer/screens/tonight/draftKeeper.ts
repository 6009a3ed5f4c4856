import type { Answer, Fault } from '#shared/faults.ts';

export type KeepState =
  | { readonly is: 'still' }
  | { readonly is: 'waiting' }
  | { readonly is: 'kept' }
  | { readonly is: 'failed'; readonly fault: Fault };

/** The stamp stands for a kept text; null where none is kept. */
export interface KeptDraft {
  readonly body: string | null;
  readonly stamp: string | null;
}

export interface DraftDesk {
  /** With `over` refused as `moved-on` when something else is kept by now than what that stamp stands for. */
  keep(key: string, body: string, over?: string | null): Promise<Answer<{ stamp: string }>>;
  drop(key: string, over?: string | null): Promise<Answer<unknown>>;
  fetch(key: string): Promise<Answer<KeptDraft>>;
}

const noKeys: ReadonlySet<string> = new Set();

/**
 * Keeps drafts in the book a moment after the typing stops, or at once when asked. Sends go one after another, so that
 * an older text can never arrive after a newer one, and a fetch waits for what is still on its way.
 *
 * A draft that was fetched is only written over what this window last saw of it. When another window has kept other
 * typing meanwhile, the two are apart: nothing more is sent under that key until the person chooses.
 */
export class DraftKeeper {
  readonly #desk: DraftDesk;
  readonly #wait: number;
  /** Newest text by key not sent yet; null means the draft is to be dropped. */
  readonly #unsent = new Map<string, string | null>();
  /** The stamp of what this window last saw kept under a fetched key. */
  readonly #seen = new Map<string, string | null>();
  /** Texts sent that were never answered: they may be what is kept. */
  readonly #unanswered = new Map<string, string | null>();
  #apart: ReadonlySet<string> = noKeys;
  readonly #listeners = new Set<() => void>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: Promise<void> = Promise.resolve();
  #state: KeepState = { is: 'still' };

  readonly #guarded: (key: string) => boolean;

  /** `guarded`: the keys where another window's text is not to be written over; the rest are small lists that each window makes anew. */
  constructor(desk: DraftDesk, wait = 400, guarded: (key: string) => boolean = () => true) {
    this.#desk = desk;
    this.#wait = wait;
    this.#guarded = guarded;
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  state = (): KeepState => this.#state;

  /** Keys under which another window has kept other typing. */
  apart = (): ReadonlySet<string> => this.#apart;

  change(key: string, body: string | null): void {
    this.#unsent.set(key, body);
    this.#tell({ is: 'waiting' });
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), this.#wait);
  }

  /** Sends all that waits; resolves when the desk has answered everything sent so far. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    if (this.#unsent.size > 0) this.#running = this.#running.then(() => this.#sendAll());
    return this.#running;
  }

  async fetch(key: string): Promise<Answer<KeptDraft>> {
    await this.flush();
    const answer = await this.#desk.fetch(key);
    if (answer.ok && this.#guarded(key) && !this.#apart.has(key)) this.#seen.set(key, answer.value.stamp);
    return answer;
  }

  /** What is kept by now, if it is not what this window last saw and this window has nothing of its own to keep; else null. */
  async newer(key: string): Promise<KeptDraft | null> {
    await this.flush();
    const before = this.#seen.get(key);
    const answer = await this.#desk.fetch(key);
    if (!answer.ok || this.#unsent.has(key) || this.#apart.has(key) || before === undefined || this.#seen.get(key) !== before || answer.value.stamp === before) return null;
    this.#seen.set(key, answer.value.stamp);
    return answer.value;
  }

  /** Whether what is kept is what this window has; if not, the two are apart from now on. A desk that does not answer says so when it is written to. */
  async agrees(key: string): Promise<boolean> {
    await this.flush();
    if (this.#apart.has(key)) return false;
    const answer = await this.#desk.fetch(key);
    if (!answer.ok || answer.value.stamp === this.#seen.get(key) || this.#unsent.has(key)) return true;
    this.#part(key, true);
    return false;
  }

  /** The person chose the other window's typing: what was not sent of this one's is given up, and the other is answered. */
  async takeTheirs(key: string): Promise<Answer<KeptDraft>> {
    this.#unsent.delete(key);
    this.#part(key, false);
    return this.fetch(key);
  }

  /** The person chose this window's typing: it goes over the other. */
  async keepMine(key: string, body: string | null): Promise<void> {
    const answer = await this.#desk.fetch(key);
    if (!answer.ok) return;
    this.#seen.set(key, answer.value.stamp);
    this.#part(key, false);
    this.change(key, body);
    await this.flush();
  }

  async #sendAll(): Promise<void> {
    let failed: Fault | null = null;
    let kept = false;
    for (const [key, body] of [...this.#unsent]) {
      if (this.#apart.has(key)) continue;
      this.#unsent.delete(key);
      const answer = await this.#send(key, body);
      if (!answer.ok) {
        if (this.#apart.has(key)) kept = false;
        else failed = answer;
        // Not lost: it goes with the next change, unless newer text has come meanwhile.
        if (!this.#unsent.has(key)) this.#unsent.set(key, body);
      } else if (body !== null) kept = true;
    }
    if (failed !== null) this.#tell({ is: 'failed', fault: failed });
    else if ([...this.#unsent.keys()].every((key) => this.#apart.has(key))) this.#tell({ is: kept ? 'kept' : 'still' });
  }

  async #send(key: string, body: string | null): Promise<Answer<unknown>> {
    const over = this.#seen.get(key);
    const answer = body === null ? await this.#desk.drop(key, over) : await this.#desk.keep(key, body, over);
    if (answer.ok) {
      this.#unanswered.delete(key);
      if (over !== undefined) this.#seen.set(key, body === null ? null : (answer.value as { stamp: string }).stamp);
      return answer;
    }
    if (answer.code !== 'moved-on') {
      this.#unanswered.set(key, body);
      return answer;
    }
    const kept = await this.#desk.fetch(key);
    if (!kept.ok) return kept;
    const own = kept.value.body === body || (this.#unanswered.has(key) && this.#unanswered.get(key) === kept.value.body);
    if (!own) {
      this.#part(key, true);
      return answer;
    }
    // A text of this window whose answer was lost on the way, as when the keeper died between the two.
    this.#unanswered.delete(key);
    this.#seen.set(key, kept.value.stamp);
    return kept.value.body === body ? { ok: true, value: {} } : this.#send(key, body);
  }

  #part(key: string, apart: boolean): void {
    const next = new Set(this.#apart);
    if (apart) next.add(key);
    else next.delete(key);
    this.#apart = next;
    this.#tell(this.#state);
  }

  #tell(state: KeepState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }
}
