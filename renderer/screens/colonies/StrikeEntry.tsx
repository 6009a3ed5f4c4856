import { useEffect, useEffectEvent, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import type { StoryEntry } from '#shared/contract/journal.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { ConsequenceNote } from './ConsequenceNote.tsx';
import { ReasonField } from './ReasonField.tsx';
import { storyWords as words } from './storyWords.ts';

export interface MendingProps {
  readonly entry: StoryEntry;
  onMended(): void;
  onLeft(): void;
}

/** A mistaken entry is struck with its reason; what that does is shown first, and what stands in its way instead. */
export function StrikeEntry({ entry, onMended, onLeft }: MendingProps) {
  const strike = useWrite('journal.strike');
  const { data: consequence, fault: unknown } = useRead('journal.consequence', { entry: entry.id });
  const { say } = useNotice();
  const [reason, setReason] = useState('');
  const [lacking, setLacking] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const [early, setEarly] = useState(false);
  const box = useRef<HTMLFormElement>(null);
  const id = useId();
  const refused = consequence?.allowed === false || unknown !== undefined;

  // To the reason at once, so that no key is lost while the book is asked; to the way out where it cannot be struck.
  useEffect(() => box.current?.querySelector<HTMLElement>(refused ? 'button' : 'input')?.focus(), [refused]);

  const send = async () => {
    const answer = await strike.send({ entry: entry.id, reason });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onMended();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (refused || strike.busy) return;
    setFault(undefined);
    setLacking(reason.trim() === '');
    if (reason.trim() === '') return;
    if (consequence === undefined) setEarly(true);
    else void send();
  };
  const sendEarly = useEffectEvent(() => {
    setEarly(false);
    if (!refused) void send();
  });
  // Whoever was quicker than the book is not asked to press again.
  useEffect(() => {
    if (early && consequence !== undefined) sendEarly();
  }, [early, consequence]);
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onLeft();
  };

  return (
    <form ref={box} className="strike" onSubmit={submit} onKeyDown={onKey} noValidate>
      {consequence ? <ConsequenceNote consequence={consequence} heading={words.ifStruck} /> : null}
      <FaultNote fault={unknown} />
      <div className="one-field">
        {refused ? null : (
          <>
            <ReasonField id={id} label={words.strikeWhy} value={reason} lacking={lacking} onChange={setReason} />
            <button type="submit" className="main" disabled={strike.busy}>
              {words.strikeEntry}
            </button>
          </>
        )}
        <button type="button" onClick={onLeft}>
          {words.strikeLeave}
        </button>
      </div>
      <FaultNote fault={fault} />
    </form>
  );
}
