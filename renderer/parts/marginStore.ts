import type { ReactNode } from 'react';

export type MarginNote = ReactNode | (() => ReactNode);

/** Long enough that the pointer's way across other rows to the margin does not change what stands there. */
const settle = 90;
const linger = 350;

/** Which note the margin shows: the hovered one before the focused one; it lingers so that its links can be reached. */
export class MarginStore {
  #focused: MarginNote | null = null;
  #hovered: MarginNote | null = null;
  #held = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #listeners = new Set<() => void>();

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  current = (): MarginNote | null => this.#hovered ?? this.#focused;

  focus(note: MarginNote): void {
    this.#focused = note;
    this.#hovered = null;
    this.#tell();
  }

  blur(): void {
    this.#focused = null;
    this.#tell();
  }

  enter(note: MarginNote): void {
    this.#later(settle, () => {
      this.#hovered = note;
    });
  }

  leave(): void {
    this.#later(linger, () => {
      this.#hovered = null;
    });
  }

  /** The pointer is in the margin: keep what stands there. */
  hold(): void {
    this.#held = true;
    clearTimeout(this.#timer);
  }

  release(): void {
    this.#held = false;
    this.#later(linger, () => {
      this.#hovered = null;
    });
  }

  /** Another page: nothing of the old one stays. */
  clear(): void {
    clearTimeout(this.#timer);
    this.#focused = null;
    this.#hovered = null;
    this.#held = false;
    this.#tell();
  }

  #later(wait: number, change: () => void): void {
    clearTimeout(this.#timer);
    if (this.#held) return;
    this.#timer = setTimeout(() => {
      change();
      this.#tell();
    }, wait);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
