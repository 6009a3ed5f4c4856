import { useEffect, useRef } from 'react';
import type { Which } from './colonyColumns.tsx';
import type { ColonyView } from './colonyView.ts';
import { words } from './words.ts';

export interface ColonyChoicesProps {
  readonly view: ColonyView;
  readonly yards: readonly { readonly code: string; readonly name: string }[];
  readonly onChange: (change: Partial<ColonyView>) => void;
}

const whiches: readonly Which[] = ['living', 'ended', 'all'];

/** The filter row; `/` goes to the search from anywhere on the page but a field. */
export function ColonyChoices({ view, yards, onChange }: ColonyChoicesProps) {
  const search = useRef<HTMLInputElement>(null);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      const typing = target instanceof HTMLElement && target.matches('input, textarea, select');
      if (event.key !== '/' || typing || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      search.current?.focus();
      search.current?.select();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);

  return (
    <search className="choices">
      <label className="inline-choice">
        {words.show}{' '}
        <select value={view.which} onChange={(event) => onChange({ which: whiches.find((which) => which === event.target.value) ?? 'living' })}>
          {whiches.map((which) => (
            <option key={which} value={which}>
              {words[which]}
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice">
        {words.yard}{' '}
        <select value={view.yard} onChange={(event) => onChange({ yard: event.target.value })}>
          <option value="">{words.anyYard}</option>
          {yards.map((yard) => (
            <option key={yard.code} value={yard.code}>
              {yard.name}
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice push">
        {words.search}{' '}
        <input
          ref={search}
          type="search"
          className="search"
          autoComplete="off"
          placeholder={words.searchHint}
          value={view.typed}
          onKeyDown={(event) => {
            if (event.key === 'Escape') onChange({ typed: '' });
          }}
          onChange={(event) => onChange({ typed: event.target.value })}
        />
      </label>
    </search>
  );
}
