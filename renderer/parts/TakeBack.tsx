import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import type { GestureId } from '#shared/brands.ts';
import { useRead, useWrite } from '../desk/useDesk.ts';
import { FaultNote } from './FaultNote.tsx';
import { faultText, useNotice } from './Notice.tsx';
import { takeBackWords as words } from './takeBackWords.ts';

export interface TakeBackProps {
  readonly act: GestureId;
  /** What the button says. */
  readonly label: string;
  readonly onDone?: () => void;
}

/** Takes a whole act back as one step, after saying what that does to the book. */
export function TakeBack({ act, label, onDone }: TakeBackProps) {
  const undo = useWrite('journal.undo');
  const { say } = useNotice();
  const [open, setOpen] = useState(false);
  const { data: found, fault } = useRead('act.consequence', { id: act }, { enabled: open });
  const opener = useRef<HTMLButtonElement>(null);
  const doer = useRef<HTMLButtonElement>(null);
  const id = useId();
  const ready = open && found?.allowed === true;

  useEffect(() => {
    if (ready) doer.current?.focus();
  }, [ready]);

  const leave = () => {
    setOpen(false);
    requestAnimationFrame(() => opener.current?.focus());
  };
  const takeBack = async () => {
    const answer = await undo.send({ gesture: act });
    if (!answer.ok) return say(faultText(answer));
    say(answer.value.sentence, { redo: true });
    setOpen(false);
    onDone?.();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    leave();
  };

  if (!open) {
    return (
      <button ref={opener} type="button" onClick={() => setOpen(true)}>
        {label}
      </button>
    );
  }
  return (
    <div className="consequence take-back" role="group" aria-labelledby={id} onKeyDown={onKey}>
      <p id={id}>{words.heading}</p>
      <div role="status">
        {found === undefined && fault === undefined ? <p className="soft">{words.working}</p> : null}
        {found?.allowed ? (
          <p>
            {words.sentences(found).join(' ')} <span className="soft">{words.again}</span>
          </p>
        ) : null}
        {found?.refusal ? (
          <p className="needs">
            {found.refusal.sentence} {found.refusal.mend}
          </p>
        ) : null}
      </div>
      <FaultNote fault={fault} />
      <div className="acts">
        {found?.allowed ? (
          <button ref={doer} type="button" disabled={undo.busy} onClick={() => void takeBack()}>
            {words.do(found.struck)}
          </button>
        ) : null}
        <button type="button" onClick={leave}>
          {words.leave}
        </button>
      </div>
    </div>
  );
}
