import { useEffect, useRef } from 'react';
import type { Offer } from './command.ts';

/*
 * What the screen that is open lets commands do. A command for a screen that is not open goes there first and waits
 * here until the screen, once it has what it needs, makes its offer.
 */
class Offers {
  #made = new Map<Offer, () => void>();
  #names: ReadonlySet<Offer> = new Set();
  #waiting: { readonly offer: Offer; readonly address: string } | null = null;
  readonly #listeners = new Set<() => void>();

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  names = (): ReadonlySet<Offer> => this.#names;

  make(offer: Offer, effect: () => void): () => void {
    this.#made.set(offer, effect);
    this.#tell();
    if (this.#waiting?.offer === offer) {
      this.#waiting = null;
      effect();
    }
    return () => {
      if (this.#made.get(offer) !== effect) return;
      this.#made.delete(offer);
      this.#tell();
    };
  }

  /** Does it now, or as soon as the screen at the address offers it. */
  ask(offer: Offer, address: string): void {
    const effect = this.#made.get(offer);
    this.#waiting = effect ? null : { offer, address };
    effect?.();
  }

  /** The person went somewhere else: what waited for another screen is not done there later. */
  arrived(address: string): void {
    if (this.#waiting !== null && this.#waiting.address !== address) this.#waiting = null;
  }

  #tell(): void {
    this.#names = new Set(this.#made.keys());
    for (const listener of this.#listeners) listener();
  }
}

export const offers = new Offers();

/** Lets commands do this while the screen is there; null while it cannot be done yet. */
export function useOffer(offer: Offer, effect: (() => void) | null): void {
  const now = useRef(effect);
  useEffect(() => {
    now.current = effect;
  });
  const ready = effect !== null;
  useEffect(() => (ready ? offers.make(offer, () => now.current?.()) : undefined), [offer, ready]);
}
