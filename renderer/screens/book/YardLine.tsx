import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import type { YardRow } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { readMeasure, type Measured } from '#shared/typedMeasure.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** A yard being written: Enter keeps it, Escape leaves it as it was. */
export function YardLine({ yard, onDone }: { readonly yard?: YardRow; readonly onDone: () => void }) {
  const keep = useWrite('yard.keep');
  const { say } = useNotice();
  const first = useRef<HTMLInputElement>(null);
  const id = useId();
  const [code, setCode] = useState(yard?.code ?? '');
  const [name, setName] = useState(yard?.name ?? '');
  const [room, setRoom] = useState(String(yard?.room ?? ''));
  const [minutes, setMinutes] = useState(String(yard?.minutes ?? ''));
  const [fault, setFault] = useState<Fault | undefined>();

  useEffect(() => first.current?.focus(), []);

  const roomIs = wholeOrNothing(room, null, mostRoom);
  const minutesIs = wholeOrNothing(minutes, 'min', mostMinutes);

  const send = async () => {
    if (!roomIs.ok || !minutesIs.ok) return;
    setFault(undefined);
    const answer = await keep.send({ ...(yard ? { id: yard.id } : {}), code, name, room: roomIs.value, minutes: minutesIs.value });
    if (!answer.ok) return setFault(answer);
    say(words.yardKept(answer.value.name));
    onDone();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onDone();
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement) {
      event.preventDefault();
      void send();
    }
  };
  const bad = !roomIs.ok ? roomIs : !minutesIs.ok ? minutesIs : null;

  return (
    <>
      <tr onKeyDown={onKey}>
        <td>
          <input ref={first} type="text" maxLength={20} aria-label={words.code} value={code} aria-invalid={fault?.field === 'code'} onChange={(event) => setCode(event.target.value)} />
        </td>
        <td>
          <input type="text" maxLength={80} aria-label={words.yard} value={name} aria-invalid={fault?.field === 'name'} onChange={(event) => setName(event.target.value)} />
        </td>
        <td>
          <input type="text" inputMode="numeric" className="number" aria-label={words.room} value={room} aria-invalid={!roomIs.ok} aria-describedby={`${id}-whole`} onChange={(event) => setRoom(event.target.value)} />
        </td>
        <td>
          <input type="text" inputMode="numeric" className="number" aria-label={words.minutes} value={minutes} aria-invalid={!minutesIs.ok} aria-describedby={`${id}-whole`} onChange={(event) => setMinutes(event.target.value)} />
        </td>
        <td className="number">{number(yard?.living)}</td>
        <td>
          <div className="acts">
            <button type="button" className="main" disabled={keep.busy || bad !== null} onClick={() => void send()}>
              {words.keepYard}
            </button>
            <button type="button" onClick={onDone}>
              {words.leave}
            </button>
          </div>
        </td>
      </tr>
      {bad !== null || fault ? (
        <tr>
          <td colSpan={6}>
            {bad !== null ? (
              <p className="field-fault" id={`${id}-whole`} role="alert">
                {bad.sentence} {words.orNothing}
              </p>
            ) : null}
            <FaultNote fault={fault} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

/** What a yard can be said to have, as the desk takes it: colonies, and minutes of a day. */
const [mostRoom, mostMinutes] = [10_000, 1440];

/** Null for nothing typed. */
function wholeOrNothing(typed: string, unit: 'min' | null, most: number): Measured | { readonly ok: true; readonly value: null } {
  if (typed.trim() === '') return { ok: true, value: null };
  return readMeasure(typed, { unit, own: ['colony', 'colonies', 'hive', 'hives'], most, whole: true, suchAs: '20' });
}
