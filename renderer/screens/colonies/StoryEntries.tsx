import { useId, useState } from 'react';
import type { StoryEntry } from '#shared/contract/journal.ts';
import { dayText } from '../../parts/format.ts';
import { ReplaceEntry } from './ReplaceEntry.tsx';
import { storyWords as words } from './storyWords.ts';
import { StrikeEntry } from './StrikeEntry.tsx';

/** All entries in words, the newest first; struck ones stay readable, with their reason. */
export function StoryEntries({ entries }: { readonly entries: readonly StoryEntry[] }) {
  const [mending, setMending] = useState<{ entry: number; how: 'strike' | 'replace' } | null>(null);
  const done = () => setMending(null);
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
              {entry.replacedBy ? <p className="soft">{words.replacedBy(dayText(entry.replacedBy.day), entry.replacedBy.sentence)}</p> : null}
              {mending?.entry === entry.id && mending.how === 'strike' ? <StrikeEntry entry={entry} onDone={done} /> : null}
              {mending?.entry === entry.id && mending.how === 'replace' ? <ReplaceEntry entry={entry} onDone={done} /> : null}
            </div>
            {entry.struck || mending?.entry === entry.id ? null : (
              <span className="story-acts">
                {(['replace', 'strike'] as const).map((how) => (
                  <button
                    key={how}
                    type="button"
                    className="link quiet-link"
                    aria-label={words.mendLabel(words[how], dayText(entry.day), entry.sentence)}
                    onClick={() => setMending({ entry: entry.id, how })}
                  >
                    {words[how]}
                  </button>
                ))}
              </span>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
