import { useId, useState, type FormEvent } from 'react';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { money } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import type { SellerLine } from './bySeller.ts';
import { readPlaced, typedLines, withPrice, type TypedLine } from './readPlaced.ts';
import { words } from './words.ts';

/** What was really ordered of a seller: the plan's numbers to begin with, each open to change before anything is entered. */
export function PlaceForm({ seller, lines, onDone }: { readonly seller: string; readonly lines: readonly SellerLine[]; readonly onDone: () => void }) {
  const id = useId();
  const { send, busy } = useWrite('orders.place');
  const { data: plans } = useRead('plans.list', {});
  const { data: offers } = useRead('offers.list', {});
  const notice = useNotice();
  // The lines as they stood when the form was opened: an answer that changes behind it must not change what is typed.
  const [typed, setTyped] = useState<readonly TypedLine[]>(() => typedLines(lines));
  const [tried, setTried] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const read = readPlaced(typed);
  const type = (offer: string, part: Partial<TypedLine>) => {
    setTyped(typed.map((line) => (line.offer === offer ? withPrice({ ...line, ...part }, offers?.offers.find(({ key }) => key === offer)) : line)));
    setFault(undefined);
  };
  const enter = async (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (read.lines === null || busy) return;
    const plan = plans?.plans.find(({ survivors }) => survivors === null)?.key ?? null;
    const answer = await send({ lines: read.lines, plan });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    notice.say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onDone();
  };
  const says = (at: number, part: 'quantity' | 'each') => (tried ? (read.faults[at]?.[part] ?? '') : '');
  return (
    <form className="entry-form" aria-label={words.placeForm(seller)} onSubmit={(event) => void enter(event)} onKeyDown={(event) => { if (event.key === 'Escape') onDone(); }} noValidate>
      <h4>{words.placeForm(seller)}</h4>
      <p className="soft">{words.placeFormText}</p>
      {typed.map((line, at) => (
        <div key={line.offer} className="fields place-line" role="group" aria-label={line.words}>
          <span className="place-what">
            {line.words}
            {line.packSize === 1 ? '' : words.placePack(line.packSize)}
          </span>
          {(['quantity', 'each'] as const).map((part) => (
            <div key={part} className="field">
              <label htmlFor={`${id}${at}${part}`}>{part === 'quantity' ? (line.packSize === 1 ? words.quantity : words.placePacks) : line.packSize === 1 ? words.placeEach : words.packPrice}</label>
              <input
                id={`${id}${at}${part}`} type="text" inputMode="decimal" autoFocus={at === 0 && part === 'quantity'} value={line[part]}
                aria-invalid={says(at, part) !== '' || fault?.field === line.offer} aria-describedby={`${id}${at}${part}-says`}
                onChange={(event) => type(line.offer, part === 'quantity' ? { quantity: event.target.value } : { each: event.target.value, own: true })}
              />
              <span id={`${id}${at}${part}-says`} className="field-fault">
                {says(at, part)}
              </span>
            </div>
          ))}
        </div>
      ))}
      <p role="status">{read.lines === null ? words.placeNone(read.nothing) : words.placeSum(money(read.total))}</p>
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy}>
          {words.placeEnter}
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
