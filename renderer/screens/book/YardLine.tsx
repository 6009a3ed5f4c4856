import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import type { YardRow } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
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

  const roomIs = wholeOrNothing(room, null);
  const minutesIs = wholeOrNothing(minutes, 'min');

  const send = async () => {
    if (roomIs === undefined || minutesIs === undefined) return;
    setFault(undefined);
    const answer = await keep.send({ ...(yard ? { id: yard.id } : {}), code, name, room: roomIs, minutes: minutesIs });
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
  const bad = roomIs === undefined || minutesIs === undefined;

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
          <input type="text" inputMode="numeric" className="number" aria-label={words.room} value={room} aria-invalid={roomIs === undefined} aria-describedby={`${id}-whole`} onChange={(event) => setRoom(event.target.value)} />
        </td>
        <td>
          <input type="text" inputMode="numeric" className="number" aria-label={words.minutes} value={minutes} aria-invalid={minutesIs === undefined} aria-describedby={`${id}-whole`} onChange={(event) => setMinutes(event.target.value)} />
        </td>
        <td className="number">{number(yard?.living)}</td>
        <td>
          <div className="acts">
            <button type="button" className="main" disabled={keep.busy || bad} onClick={() => void send()}>
              {words.keepYard}
            </button>
            <button type="button" onClick={onDone}>
              {words.leave}
            </button>
          </div>
        </td>
      </tr>
      {bad || fault ? (
        <tr>
          <td colSpan={6}>
            {bad ? (
              <p className="field-fault" id={`${id}-whole`} role="alert">
                {words.notWhole}
              </p>
            ) : null}
            <FaultNote fault={fault} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

/** Null for nothing typed, undefined for what is no whole number. */
function wholeOrNothing(typed: string, unit: 'min' | null): number | null | undefined {
  if (typed.trim() === '') return null;
  const read = readMeasure(typed, { unit, own: ['colony', 'colonies', 'hive', 'hives'], most: 99_999, whole: true, suchAs: '20' });
  return read.ok ? read.value : undefined;
}
