import { useState } from 'react';
import { markMeanings, markTrouble, standardMarks, type Marks } from '#shared/roundMarks.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { faultText } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** The short marks, to be changed; two that would mean the same are refused with a sentence. */
export function MarkEditor({ marks, onClose }: { readonly marks: Marks; onClose(): void }) {
  const keep = useWrite('rounds.marks');
  const [typed, setTyped] = useState(marks);
  const [refused, setRefused] = useState<string | null>(null);
  const trouble = markTrouble(typed);

  const send = async (next: Marks) => {
    setTyped(next);
    const found = markTrouble(next);
    if (found !== null) {
      setRefused(found.sentence);
      return;
    }
    const answer = await keep.send({ marks: next });
    setRefused(answer.ok ? null : faultText(answer));
    if (answer.ok) onClose();
  };

  return (
    <form
      className="round-panel"
      aria-label={words.markEditor.title}
      onSubmit={(event) => {
        event.preventDefault();
        void send(typed);
      }}
    >
      <p>
        <strong>{words.markEditor.title}.</strong> <span className="soft">{words.markEditor.help}</span>
      </p>
      <div className="round-ticks">
        {markMeanings.map((meaning) => (
          <label key={meaning} className="inline-choice">
            <input
              className="round-mark"
              value={typed[meaning]}
              autoComplete="off"
              spellCheck={false}
              aria-invalid={trouble?.meaning === meaning || undefined}
              onFocus={(event) => event.target.select()}
              onChange={(event) => {
                setRefused(null);
                setTyped({ ...typed, [meaning]: event.target.value });
              }}
            />{' '}
            {words.markEditor.names[meaning]}
          </label>
        ))}
      </div>
      <p className="needs" role="alert">
        {refused}
      </p>
      <p className="round-panel-acts">
        <button type="submit" disabled={keep.busy}>
          {words.markEditor.keep}
        </button>{' '}
        <button type="button" className="link" onClick={() => void send(standardMarks)}>
          {words.markEditor.standard}
        </button>{' '}
        <button type="button" className="link" onClick={onClose}>
          {words.markEditor.close}
        </button>
      </p>
    </form>
  );
}
