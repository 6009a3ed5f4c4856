import { useId, useRef, useState, type FormEvent } from 'react';
import { dayFromTyped } from '#shared/days.ts';
import { typedFigure } from '#shared/typedMeasure.ts';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { shedWords as words } from './shedWords.ts';

/** What was counted against what the book has; the difference is shown before it is entered. */
export function CountForm({ items }: { readonly items: readonly string[] }) {
  const { book, today } = useBook();
  const { send, busy } = useWrite('stock.count');
  const { say } = useNotice();
  const question = useItemQuestion();
  const [item, setItem] = useState('');
  const [counted, setCounted] = useState('');
  const [place, setPlace] = useState('shed');
  const [typedDay, setTypedDay] = useState<string | null>(null);
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const itemField = useRef<HTMLInputElement>(null);
  const countField = useRef<HTMLInputElement>(null);
  const id = useId();
  useOffer('enter a count', () => itemField.current?.focus());

  const order = book?.dateOrder ?? 'month-first';
  const day = typedDay === null ? (today ?? null) : dayFromTyped(typedDay, order);
  const number = readCount(counted);
  const ready = item.trim() !== '' && number !== null && day !== null;
  const { data: found, fault: unknown } = useRead(
    'stock.counted',
    { place, item: item.trim() === '' ? '-' : item.trim(), counted: number ?? 0, day: day ?? '2000-01-01' },
    { enabled: ready },
  );

  const submit = (event: FormEvent) => {
    event.preventDefault();
    void enter(item);
  };
  const enter = async (item: string) => {
    setAsked(true);
    setFault(undefined);
    if (!ready || busy) return (item.trim() === '' ? itemField : countField).current?.focus();
    if (await question.asks(item)) return;
    const answer = await send({ place, item: item.trim(), counted: number, day, note: note.trim() });
    if (!answer.ok) {
      setFault(answer);
      if (answer.field === 'counted') countField.current?.focus();
      return;
    }
    setItem('');
    setCounted('');
    setNote('');
    setAsked(false);
    itemField.current?.focus();
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
  };

  const itemBad = asked && item.trim() === '' ? words.must.item : undefined;
  // What is wrong with the number is said as soon as it is known, beside it.
  const odd = [fault, unknown].find((one) => one?.field === 'counted');
  const countBad = asked && number === null ? words.must.counted : ready ? odd?.sentence : undefined;
  return (
    <form className="movement shed-count" aria-label={words.count} onSubmit={submit} noValidate>
      <h3>{words.count}</h3>
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}item`}>{words.item}</label>
          <input ref={itemField} id={`${id}item`} type="text" autoComplete="off" list={`${id}items`} value={item} aria-invalid={itemBad !== undefined} aria-describedby={`${id}item-says`} onChange={(event) => { setItem(event.target.value); setFault(undefined); question.drop(); }} />
          <datalist id={`${id}items`}>
            {items.map((known) => (
              <option key={known} value={known} />
            ))}
          </datalist>
          <span id={`${id}item-says`} className="field-fault">
            {itemBad}
          </span>
        </div>
        <div className="field">
          <label htmlFor={`${id}counted`}>{words.counted}</label>
          <input ref={countField} id={`${id}counted`} type="text" inputMode="decimal" autoComplete="off" value={counted} aria-invalid={countBad !== undefined} aria-describedby={`${id}counted-says`} onChange={(event) => { setCounted(event.target.value); setFault(undefined); }} />
          <span id={`${id}counted-says`} className="field-fault">
            {countBad}
          </span>
        </div>
        <div className="field">
          <label htmlFor={`${id}place`}>{words.where}</label>
          <select id={`${id}place`} value={place} onChange={(event) => setPlace(event.target.value)}>
            <option value="shed">shed</option>
            {(book?.yards ?? []).map(({ code, name }) => (
              <option key={code} value={code}>{`${code} ${name}`}</option>
            ))}
          </select>
        </div>
        {today && <DayField label={words.day} name="day" value={typedDay ?? today} today={today} order={order} fault={day === null ? words.must.day : null} onChange={setTypedDay} />}
        <div className="field wide">
          <label htmlFor={`${id}note`}>{words.note}</label>
          <input id={`${id}note`} type="text" autoComplete="off" value={note} onChange={(event) => setNote(event.target.value)} />
        </div>
      </div>
      <p className={ready && found ? 'said' : 'soft'} role="status">
        {question.found !== null ? null : ready && found && odd === undefined ? found.sentence : words.countHint}
      </p>
      <ItemQuestion
        question={question}
        onUse={(instead) => {
          question.drop();
          setItem(instead);
          void enter(instead);
        }}
        onNew={() => void enter(item)}
      />
      <FaultNote fault={odd === undefined ? (fault ?? (ready ? unknown : undefined)) : undefined} />
      <div className="acts">
        <button type="submit" disabled={busy}>
          {words.enterCount}
        </button>
      </div>
    </form>
  );
}

/** A count as typed, a comma or a point; null if it is none. */
export function readCount(text: string): number | null {
  const found = typedFigure(text);
  return found !== null && found.unit === '' && found.amount >= 0 && found.amount < 1e6 ? found.amount : null;
}
