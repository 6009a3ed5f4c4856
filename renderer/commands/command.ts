import type { OpenBook } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { Theme } from '../parts/theme.ts';
import type { Shortcut } from './shortcut.ts';

export type CommandGroup = 'go' | 'enter' | 'book' | 'paper' | 'window';

/** What a command may look at to say whether it can be given now. */
export interface CommandSetting {
  readonly book: OpenBook | null;
  /** What the screen that is open offers to do. */
  readonly offered: ReadonlySet<Offer>;
  /** The day that is looked at; null for today. */
  readonly asOf: Day | null;
}

/** What a command may do. */
export interface CommandHands {
  go(address: string): void;
  /** Lets the screen at the address do what it offers, after going there; without an address, the screen that is open. */
  onScreen(offer: Offer, address?: string): void;
  chooseDay(): void;
  backToToday(): void;
  undo(): void;
  redo(): void;
  closeBook(): void;
  openDemo(which: 'ossar' | 'tiny'): void;
  paper(theme: Theme): void;
  find(): void;
}

/** What screens let commands do while they are there. */
export type Offer = 'enter the round' | 'open the entry form' | 'choose a file' | 'enter a movement' | 'enter a count' | 'export' | 'check' | 'print the review' | 'print the order' | 'print the field sheet' | 'print the trip sheet' | 'save the calendar' | 'fold the margin';

/**
 * One thing the program can be told to do. The box, the shortcuts, the hints on buttons and the help page are all made
 * from these objects.
 */
export interface Command {
  readonly id: string;
  readonly group: CommandGroup;
  readonly name: string;
  /** Other words by which it is found. */
  readonly search: string;
  readonly shortcut?: Shortcut;
  enabled(setting: CommandSetting): boolean;
  run(hands: CommandHands): void;
}
