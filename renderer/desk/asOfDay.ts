import { useSyncExternalStore } from 'react';
import { isRefusedLookingBack } from '#shared/contract/asOf.ts';
import type { OperationName } from '#shared/contract/contract.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { refuse, type Fault } from '#shared/faults.ts';

/*
 * The one day that this window looks at; null for today. It lives as long as the window and is in no book: whoever
 * opens the program looks at today.
 */
class AsOfDay {
  #day: Day | null = null;
  /** The day is being chosen. */
  #choosing = false;
  readonly #listeners = new Set<() => void>();

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  day = (): Day | null => this.#day;
  isChoosing = (): boolean => this.#choosing;

  choose = (): void => {
    this.#choosing = true;
    this.#tell();
  };

  leaveChoosing = (): void => {
    this.#choosing = false;
    this.#tell();
  };

  lookAt = (day: Day): void => {
    this.#day = day;
    this.#choosing = false;
    this.#tell();
  };

  backToToday = (): void => {
    this.#day = null;
    this.#choosing = false;
    this.#tell();
  };

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

export const asOfDay = new AsOfDay();

/** The day that is looked at; null for today. */
export function useAsOf(): Day | null {
  return useSyncExternalStore(asOfDay.subscribe, asOfDay.day);
}

export function useChoosing(): boolean {
  return useSyncExternalStore(asOfDay.subscribe, asOfDay.isChoosing);
}

/** Why it cannot be done now: another day is looked at. Null if it can. Every call of the window passes here. */
export function refusedWhileLooking(name: OperationName, day: Day | null): Fault | null {
  if (day === null || !isRefusedLookingBack(name)) return null;
  return refuse('refused', `You are looking at ${dayInWords(day)}, so nothing was entered or changed.`, { mend: 'Go back to today to enter it; what you typed stays.' });
}
