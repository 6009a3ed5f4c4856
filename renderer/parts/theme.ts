export const themes = ['system', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];

const key = 'outyard.theme';

/** What the person chose on this machine; the computer's own setting until they choose. */
export function keptTheme(): Theme {
  const kept = fromStore(key);
  return themes.find((theme) => theme === kept) ?? 'system';
}

export function applyTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
}

const listeners = new Set<() => void>();
/** Of the choice in this window, kept or not. */
let chosen: Theme | null = null;

export function currentTheme(): Theme {
  return chosen ?? keptTheme();
}

export function onTheme(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function chooseTheme(theme: Theme): void {
  chosen = theme;
  toStore(key, theme);
  applyTheme(theme);
  for (const listener of listeners) listener();
}

/** A window without storage (privacy settings) forgets its looks, and works. */
export function fromStore(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

export function toStore(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch {
    // Nothing to do: the choice holds until the window closes.
  }
}
