import { useId, useState } from 'react';
import type { StoryEntry } from '#shared/contract/journal.ts';
import { dayText } from '../../parts/format.ts';
import { storyWords as words } from './storyWords.ts';
import { StrikeEntry } from './StrikeEntry.tsx';

/** All entries in words, the newest first; struck ones stay readable, with their reason. */
export function StoryEntries({ entries }: { readonly entries: readonly StoryEntry[] }) {
  const [striking, setStriking] = useState<number | null>(null);
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.entries}</h2>
      {entries.length === 0 ? <p className="soft">{words.entriesNone}</p> : null}
      <ol className="lines story">
        {entries.toReversed().map((entry) => (
          <li key={entry.id}>
            <span>{dayText(entry.day)}</span>
            <div>
              {entry.struck ? <s>{entry.sentence}</s> : entry.sentence}
              {entry.struck ? (
                <span className="needs"> {entry.struckReason ? words.struck(entry.struckReason) : words.struckBare}</span>
              ) : null}
              {entry.note ? <p className="soft">{entry.note}</p> : null}
              {striking === entry.id ? <StrikeEntry entry={entry} onDone={() => setStriking(null)} /> : null}
            </div>
            {entry.struck || striking === entry.id ? null : (
              <button type="button" className="link quiet-link" aria-label={words.strikeLabel(dayText(entry.day), entry.sentence)} onClick={() => setStriking(entry.id)}>
                {words.strike}
              </button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
