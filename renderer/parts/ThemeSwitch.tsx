import { useSyncExternalStore } from 'react';
import { chooseTheme, currentTheme, onTheme, themes } from './theme.ts';
import { words } from './words.ts';

export function ThemeSwitch() {
  const theme = useSyncExternalStore(onTheme, currentTheme);
  return (
    <label className="inline-choice">
      {words.paper}{' '}
      <select
        value={theme}
        onChange={(event) => {
          const next = themes.find((known) => known === event.target.value) ?? 'system';
          chooseTheme(next);
        }}
      >
        {themes.map((known) => (
          <option key={known} value={known}>
            {words.themes[known]}
          </option>
        ))}
      </select>
    </label>
  );
}
