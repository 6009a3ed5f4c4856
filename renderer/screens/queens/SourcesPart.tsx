import type { NeedSource } from '#shared/contract/needs.ts';
import { MarginPart } from '../../parts/Margin.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words } from './queensWords.ts';

/** The house rules something rests on, with where their numbers come from. */
export function SourcesPart({ sources, room }: { readonly sources: readonly NeedSource[]; readonly room: string }) {
  return (
    <MarginPart heading={words.numbers}>
      <ul className="rules">
        {sources.map(({ key, label, value, source, confidence }) => (
          <li key={key}>{words.source(label, value, source, confidence)}</li>
        ))}
      </ul>
      <RulesLink room={room} />
    </MarginPart>
  );
}
