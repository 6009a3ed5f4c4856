import { useEffect, useId, useRef, useState } from 'react';
import type { StoryEntry } from '#shared/contract/journal.ts';
import { dayText } from '../../parts/format.ts';
import { ReplaceEntry } from './ReplaceEntry.tsx';
import { storyWords as words } from './storyWords.ts';
import { StrikeEntry } from './StrikeEntry.tsx';

/** All entries in words, the newest first; struck ones stay readable, with their reason. */
export function StoryEntries({ entries }: { readonly entries: readonly StoryEntry[] }) {
  const [mending, setMending] = useState<{ entry: number; how: 'strike' | 'replace' } | null>(null);
  const list = useRef<HTMLOListElement>(null);
  /** Where the keyboard goes once the form is gone: to its button, or to the entry that was mended and has none any more. */
  const onward = useRef<string | null>(null);
  const left = () => {
    if (mending === null) return;
    onward.current = `[data-entry="${mending.entry}"] [data-how="${mending.how}"]`;
    setMending(null);
  };
  const mended = () => {
    if (mending === null) return;
    onward.current = `[data-entry="${mending.entry}"]`;
    setMending(null);
  };
  useEffect(() => {
    if (mending !== null || onward.current === null) return;
    list.current?.querySelector<HTMLElement>(onward.current)?.focus();
    onward.current = null;
  }, [mending]);
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.entries}</h2>
      {entries.length === 0 ? <p className="soft">{words.entriesNone}</p> : null}
      <ol className="lines story" ref={list}>
        {entries.toReversed().map((entry) => (
          <li key={entry.id} data-entry={entry.id} tabIndex={-1}>
            <span>{dayText(entry.day)}</span>
            <div>
              {entry.struck ? <s>{entry.sentence}</s> : entry.sentence}
              {entry.struck ? (
                <span className="needs"> {entry.struckReason ? words.struck(entry.struckReason) : words.struckBare}</span>
              ) : null}
              {entry.note ? <p className="soft">{entry.note}</p> : null}
              {entry.replacedBy ? <p className="soft">{words.replacedBy(dayText(entry.replacedBy.day), entry.replacedBy.sentence)}</p> : null}
              {mending?.entry === entry.id && mending.how === 'strike' ? <StrikeEntry entry={entry} onMended={mended} onLeft={left} /> : null}
              {mending?.entry === entry.id && mending.how === 'replace' ? <ReplaceEntry entry={entry} onMended={mended} onLeft={left} /> : null}
            </div>
            {entry.struck || mending?.entry === entry.id ? null : (
              <span className="story-acts">
                {(['replace', 'strike'] as const).map((how) => (
                  <button
                    key={how}
                    type="button"
                    className="link quiet-link"
                    data-how={how}
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
