import { useId, useRef, useState, type FormEvent } from 'react';
import type { WaitingRow } from '#shared/contract/sortOut.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { words } from './words.ts';

export interface SetAsideProps {
  readonly row: WaitingRow;
  readonly onSet: () => void;
  readonly onRefused: (fault: Fault) => void;
}

/** Puts a row aside for good reason; it is kept, and can be brought back. */
export function SetAside({ row, onSet, onRefused }: SetAsideProps) {
  const setAside = useWrite('sortOut.setAside');
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [lacking, setLacking] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const id = useId();

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setLacking(reason.trim() === '');
    if (reason.trim() === '' || setAside.busy) return field.current?.focus();
    const answer = await setAside.send({ key: row.key, reason });
    if (answer.ok) onSet();
    else onRefused(answer);
  };
  if (!open) {
    return (
      <button
        type="button"
        className="link"
        onClick={() => {
          setOpen(true);
          requestAnimationFrame(() => field.current?.focus());
        }}
      >
        {words.setAside}
      </button>
    );
  }
  return (
    <form className="one-field" aria-label={words.setAside} onSubmit={(event) => void submit(event)} noValidate>
      <div className="field">
        <label htmlFor={id}>{words.why}</label>
        <input
          ref={field}
          id={id}
          type="text"
          autoComplete="off"
          maxLength={500}
          value={reason}
          aria-required
          aria-invalid={lacking}
          aria-describedby={lacking ? `${id}-fault` : undefined}
          onChange={(event) => setReason(event.target.value)}
        />
        {lacking ? (
          <p className="field-fault" id={`${id}-fault`} role="alert">
            {words.whyLacking}
          </p>
        ) : null}
      </div>
      <button type="submit" disabled={setAside.busy}>
        {words.setAsideDo}
      </button>
    </form>
  );
}
