import { useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import { Link } from 'wouter';
import type { DeadOutView } from '#shared/contract/stock.ts';
import type { Fault } from '#shared/faults.ts';
import { countedItems } from '#shared/itemWords.ts';
import { useBook } from '../../desk/useBook.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayTight, number } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { readCount } from './CountForm.tsx';
import { shedWords as words } from './shedWords.ts';

/** Hives that stand without bees: each is looked over once, or carried home by a stock row. */
export function ShedDeadOuts({ deadOuts, count, caution }: { readonly deadOuts: readonly DeadOutView[]; readonly count: number; readonly caution: string }) {
  const [open, setOpen] = useState<DeadOutView['colony'] | null>(null);
  const { shown, more } = useFirstRows(deadOuts, words.deadOuts);
  return (
    <section className="section" aria-label={words.deadOuts}>
      <h3>{words.deadOuts}</h3>
      <p className="caution">{caution}</p>
      <ul className="lines">
        {shown.map((hive) => (
          <li key={hive.colony}>
            <span>{dayTight(hive.day)}</span>
            <div>
              <p>
                <Link href={`/colonies/${hive.colony}`}>{hive.label}</Link> {hive.yard}, {words.how[hive.how]}: {hive.causes.length === 0 ? words.noCause : hive.causes.join(', ')}.{' '}
                <span className="soft">{hive.parts.map(({ item, count }) => countedItems(count, item)).join(', ')}.</span>
              </p>
              {open === hive.colony ? (
                <CheckForm hive={hive} onDone={() => setOpen(null)} />
              ) : (
                <button type="button" className="link" onClick={() => setOpen(hive.colony)}>
                  {words.lookOver(hive.label)}
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {more}
      {count > deadOuts.length && <p className="soft">{words.moreDeadOuts(number(count - deadOuts.length))}</p>}
    </section>
  );
}

interface Typed {
  readonly toMend: string;
  readonly scrap: string;
}

function CheckForm({ hive, onDone }: { readonly hive: DeadOutView; readonly onDone: () => void }) {
  const { today } = useBook();
  const { send, busy } = useWrite('stock.check');
  const { say } = useNotice();
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>({});
  const [to, setTo] = useState<'shed' | 'yard'>('shed');
  const [seen, setSeen] = useState(false);
  const [note, setNote] = useState('');
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const [asked, setAsked] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  useEffect(() => form.current?.querySelector<HTMLInputElement>('input')?.focus(), []);

  const of = (item: string): Typed => typed[item] ?? { toMend: '', scrap: '' };
  const bad = (text: string) => text.trim() !== '' && readCount(text) === null;
  const wrong = hive.parts.some(({ item }) => bad(of(item).toMend) || bad(of(item).scrap));
  const enter = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    setFault(undefined);
    if (busy || today === undefined || wrong) return;
    const parts = hive.parts.map(({ item }) => ({ item, toMend: readCount(of(item).toMend) ?? 0, scrap: readCount(of(item).scrap) ?? 0 }));
    const answer = await send({ colony: hive.colony, day: today, to, parts, inspectorSeen: seen, note: note.trim() });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onDone();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onDone();
  };
  const cell = (item: string, part: keyof Typed) => (
    <td className="number">
      <input
        type="text"
        inputMode="decimal"
        className="number"
        aria-label={`${item}, ${part === 'toMend' ? words.toMend : words.scrap}`}
        aria-invalid={asked && bad(of(item)[part])}
        value={of(item)[part]}
        onChange={(event) => setTyped({ ...typed, [item]: { ...of(item), [part]: event.target.value } })}
      />
    </td>
  );

  return (
    <form ref={form} className="shed-check" aria-label={words.lookOver(hive.label)} onSubmit={(event) => void enter(event)} onKeyDown={onKey} noValidate>
      <p className="soft small">{words.wax}</p>
      <table className="tight narrow">
        <caption className="visually-hidden">{words.lookOver(hive.label)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.item}</th>
            <th scope="col" className="number">
              {words.there}
            </th>
            <th scope="col" className="number">
              {words.toMend}
            </th>
            <th scope="col" className="number">
              {words.scrap}
            </th>
          </tr>
        </thead>
        <tbody>
          {hive.parts.map(({ item, count }) => (
            <tr key={item}>
              <th scope="row">{item}</th>
              <td className="number">{number(count, 1)}</td>
              {cell(item, 'toMend')}
              {cell(item, 'scrap')}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft small">{words.rest}</p>
      {asked && wrong && <p className="field-fault">{words.numberBad}</p>}
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}to`}>{words.takeTo}</label>
          <select id={`${id}to`} value={to} onChange={(event) => setTo(event.target.value === 'yard' ? 'yard' : 'shed')}>
            <option value="shed">{words.toShed}</option>
            <option value="yard">{words.toYard}</option>
          </select>
        </div>
        <div className="field wide">
          <label htmlFor={`${id}note`}>{words.note}</label>
          <input id={`${id}note`} type="text" autoComplete="off" value={note} onChange={(event) => setNote(event.target.value)} />
        </div>
      </div>
      {hive.inspector && (
        <p className="ticks">
          <label>
            <input type="checkbox" checked={seen} onChange={(event) => setSeen(event.target.checked)} />
            {words.inspector}
          </label>
        </p>
      )}
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" className="main" disabled={busy}>
          {words.enterCheck}
        </button>
        <button type="button" onClick={onDone}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
