import type { Answer, Fault } from '#shared/faults.ts';

export type KeepState =
  | { readonly is: 'still' }
  | { readonly is: 'waiting' }
  | { readonly is: 'kept' }
  | { readonly is: 'failed'; readonly fault: Fault };

export interface DraftDesk {
  keep(key: string, body: string): Promise<Answer<unknown>>;
  drop(key: string): Promise<Answer<unknown>>;
  fetch(key: string): Promise<Answer<{ body: string | null }>>;
}

/**
 * Keeps drafts in the book a moment after the typing stops, or at once when asked. Sends go one after another, so that
 * an older text can never arrive after a newer one, and a fetch waits for what is still on its way.
 */
export class DraftKeeper {
  readonly #desk: DraftDesk;
  readonly #wait: number;
  /** Newest text by key not sent yet; null means the draft is to be dropped. */
  readonly #unsent = new Map<string, string | null>();
  readonly #listeners = new Set<() => void>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: Promise<void> = Promise.resolve();
  #state: KeepState = { is: 'still' };

  constructor(desk: DraftDesk, wait = 400) {
    this.#desk = desk;
    this.#wait = wait;
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  state = (): KeepState => this.#state;

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

  async fetch(key: string): Promise<Answer<{ body: string | null }>> {
    await this.flush();
    return this.#desk.fetch(key);
  }

  async #sendAll(): Promise<void> {
    let failed: Fault | null = null;
    let kept = false;
    for (const [key, body] of [...this.#unsent]) {
      this.#unsent.delete(key);
      const answer = body === null ? await this.#desk.drop(key) : await this.#desk.keep(key, body);
      if (!answer.ok) {
        failed = answer;
        // Not lost: it goes with the next change, unless newer text has come meanwhile.
        if (!this.#unsent.has(key)) this.#unsent.set(key, body);
      } else if (body !== null) kept = true;
    }
    if (failed !== null) this.#tell({ is: 'failed', fault: failed });
    else if (this.#unsent.size === 0) this.#tell({ is: kept ? 'kept' : 'still' });
  }

  #tell(state: KeepState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }
}
