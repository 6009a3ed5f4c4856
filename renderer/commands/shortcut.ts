/** A press that means a command, wherever the keyboard is. `key` is a letter or digit as on the key, or a name as `Enter`, `F1`. */
export interface Shortcut {
  readonly key: string;
  /** Ctrl, on a Mac also the command key. */
  readonly ctrl?: true;
  readonly alt?: true;
  readonly shift?: true;
}

export interface Press {
  readonly key: string;
  readonly code: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

const arrows: Readonly<Record<string, string>> = { ArrowUp: '↑', ArrowDown: '↓', ArrowLeft: '←', ArrowRight: '→', Escape: 'Esc', PageUp: 'Page Up', PageDown: 'Page Down', ' ': 'Space' };

/** "Ctrl K", as it stands on buttons and on the help page; also the one spelling by which two shortcuts are compared. */
export function shortcutText({ key, ctrl, alt, shift }: Shortcut): string {
  const name = arrows[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  return [ctrl ? 'Ctrl' : '', alt ? 'Alt' : '', shift ? 'Shift' : '', name].filter(Boolean).join(' ');
}

export function isPressed(shortcut: Shortcut, press: Press): boolean {
  if ((shortcut.ctrl ?? false) !== (press.ctrlKey || press.metaKey)) return false;
  if ((shortcut.alt ?? false) !== press.altKey || (shortcut.shift ?? false) !== press.shiftKey) return false;
  // With Alt some keyboards write another sign; the key itself is meant.
  if (shortcut.alt && shortcut.key.length === 1) return press.code === `Key${shortcut.key.toUpperCase()}` || press.code === `Digit${shortcut.key}`;
  return shortcut.key.length === 1 ? press.key.toLowerCase() === shortcut.key.toLowerCase() : press.key === shortcut.key;
}
