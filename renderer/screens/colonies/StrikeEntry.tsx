import { useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import type { StoryEntry } from '#shared/contract/journal.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { storyWords as words } from './storyWords.ts';

/** A mistaken entry is struck with its reason; what would then contradict the book is refused in words. */
export function StrikeEntry({ entry, onDone }: { readonly entry: StoryEntry; readonly onDone: () => void }) {
  const strike = useWrite('journal.strike');
  const { say } = useNotice();
  const [reason, setReason] = useState('');
  const [lacking, setLacking] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const field = useRef<HTMLInputElement>(null);
  const id = useId();

  useEffect(() => field.current?.focus(), []);

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setFault(undefined);
    setLacking(reason.trim() === '');
    if (reason.trim() === '') return;
    const answer = await strike.send({ entry: entry.id, reason });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onDone();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onDone();
  };

  return (
    <form className="strike" onSubmit={(event) => void submit(event)} onKeyDown={onKey} noValidate>
      <div className="one-field">
        <div className="field">
          <label htmlFor={id}>{words.strikeWhy}</label>
          <input
            ref={field}
            id={id}
            type="text"
            maxLength={500}
            value={reason}
            aria-invalid={lacking}
            aria-describedby={lacking ? `${id}-fault` : undefined}
            onChange={(event) => setReason(event.target.value)}
          />
        </div>
        <button type="submit" className="main" disabled={strike.busy}>
          {words.strikeEntry}
        </button>
        <button type="button" onClick={onDone}>
          {words.strikeLeave}
        </button>
      </div>
      {lacking ? (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {words.strikeLacking}
        </p>
      ) : null}
      <FaultNote fault={fault} />
    </form>
  );
}
