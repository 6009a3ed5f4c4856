import type { Shortcut } from './shortcut.ts';

/** A key that means something in one place only, for the help page. */
export interface PlaceKey {
  readonly keys: readonly Shortcut[];
  readonly does: string;
}

/** Keys in the cells of a round sheet. */
export const sheetKeys: readonly PlaceKey[] = [
  { keys: [{ key: 'Enter' }], does: 'Down, and from the last colony to the top of the next column' },
  { keys: [{ key: 'Enter', shift: true }], does: 'The same way back' },
  { keys: [{ key: 'Tab' }], does: 'Across, and from the last column to the next colony' },
  { keys: [{ key: 'Tab', shift: true }], does: 'Across, back' },
  { keys: [{ key: 'ArrowUp' }, { key: 'ArrowDown' }, { key: 'ArrowLeft' }, { key: 'ArrowRight' }], does: 'To the next cell; left and right move within typed text first' },
  { keys: [{ key: 'PageUp' }, { key: 'PageDown' }], does: 'Ten colonies up or down' },
  { keys: [{ key: 'Home', ctrl: true }, { key: 'End', ctrl: true }], does: 'To the first or the last cell' },
  { keys: [{ key: 'd', ctrl: true }], does: 'Repeats the cell above' },
  { keys: [{ key: 'd', ctrl: true, shift: true }], does: 'Repeats the cell down into the empty ones, in rows with anything typed' },
  { keys: [{ key: 'Enter' }], does: 'On a split, a new queen or a combination: to its few fields, one after the other' },
  { keys: [{ key: 'Escape' }], does: 'Takes back what was typed in the cell' },
  { keys: [{ key: ' ' }], does: 'Going down a column of marks: leaves the next cell empty' },
];

/** Keys in the day field of a round. */
export const dayKeys: readonly PlaceKey[] = [
  { keys: [{ key: 'ArrowRight' }, { key: 'ArrowUp' }], does: 'A day later' },
  { keys: [{ key: 'ArrowLeft' }, { key: 'ArrowDown' }], does: 'A day earlier' },
  { keys: [{ key: 't' }], does: 'Today' },
  { keys: [{ key: 'y' }], does: 'Yesterday' },
];

/** Keys on a colony in a yard's stand order. */
export const standKeys: readonly PlaceKey[] = [{ keys: [{ key: 'ArrowUp', alt: true }, { key: 'ArrowDown', alt: true }], does: 'Moves the colony a stand up or down' }];

/** Keys in the Find box. */
export const boxKeys: readonly PlaceKey[] = [
  { keys: [{ key: 'ArrowUp' }, { key: 'ArrowDown' }], does: 'To the line above or below' },
  { keys: [{ key: 'Enter' }], does: 'Opens it, or does it' },
  { keys: [{ key: 'Escape' }], does: 'Closes the box and goes back to where you were' },
];
