import { useEffect, useId, useRef, useState, type FormEvent, type RefObject } from 'react';
import { flushSync } from 'react-dom';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { Fault } from '#shared/faults.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { focusPart } from '../../parts/focusPart.ts';
import { dayShort } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { Distances } from './Distances.tsx';
import { mostPeople, noPerson, readHours, readTypedHours, typedHours, type TypedHours, type TypedPerson } from './hoursForm.ts';
import { hoursWords as words } from './hoursWords.ts';
import { clock } from './planWeeks.ts';
import { WorkNav } from './WorkNav.tsx';
import './work.css';

/** Who can work when, where daylight is reckoned, and the ways between the yards. */
export function HoursScreen() {
  const { data, fault } = useRead('work.hours', {}, { fresh: true });
  /** The form is made anew from what was kept; the keyboard stays with it. */
  const justKept = useRef(false);
  return (
    <Page title={words.title} line={words.line}>
      <WorkNav />
      <FaultNote fault={fault} />
      {data === undefined ? null : (
        <>
          {data.own ? null : <p className="soft">{words.house}</p>}
          <Entering>
            <HoursForm key={JSON.stringify(data.hours)} hours={data.hours} justKept={justKept} />
          </Entering>
          <MarginContent heading={words.marginHours}>
            <p>{words.marginHoursText}</p>
          </MarginContent>
          <MarginContent heading={words.daylight}>
            <p>{words.marginDaylight}:</p>
            <dl className="facts">
              {data.daylight.map(({ day, sunrise, sunset }) => (
                <div key={day}>
                  <dt>{dayShort(day)}</dt>
                  <dd>{words.daylightLine(clock(sunrise), clock(sunset))}</dd>
                </div>
              ))}
            </dl>
          </MarginContent>
        </>
      )}
      <Distances />
    </Page>
  );
}

function HoursForm({ hours, justKept }: { readonly hours: OutputOf<'work.hours'>['hours']; readonly justKept: RefObject<boolean> }) {
  const id = useId();
  const { book } = useBook();
  const { send, busy } = useWrite('work.setHours');
  const { say } = useNotice();
  const form = useRef<HTMLFormElement>(null);
  const keeper = useRef<HTMLButtonElement>(null);
  const adder = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // Only where the keyboard was left without a place: whoever has gone on is not called back.
    if (justKept.current && document.activeElement === document.body) keeper.current?.focus();
    justKept.current = false;
  }, [justKept]);
  const [typed, setTyped] = useState<TypedHours>(() => typedHours(hours));
  const [restored, setRestored] = useState(false);
  const draft = useDraft('work hours', (body) => {
    const found = readTypedHours(body);
    if (found === null) return;
    setTyped(found);
    setRestored(true);
  });
  const type = (next: TypedHours) => {
    setTyped(next);
    draft.keep(JSON.stringify(next));
  };
  const asKept = () => {
    draft.drop();
    setRestored(false);
    setTrouble(null);
    setTyped(typedHours(hours));
    adder.current?.focus();
  };
  const [trouble, setTrouble] = useState<{ sentence: string; field: string } | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const person = (at: number, change: Partial<TypedPerson>) => {
    setTrouble(null);
    type({ ...typed, people: typed.people.map((one, place) => (place === at ? { ...one, ...change } : one)) });
  };
  // Typing goes on with whom was added; with whom was dropped the button went, and the keyboard stays beside it.
  const add = () => {
    flushSync(() => type({ ...typed, people: [...typed.people, noPerson] }));
    focusPart(form.current, `name ${typed.people.length}`);
  };
  const drop = (at: number) => {
    setTrouble(null);
    flushSync(() => type({ ...typed, people: typed.people.toSpliced(at, 1) }));
    adder.current?.focus();
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (busy || book === undefined) return;
    const read = readHours(typed, book.dateOrder);
    setTrouble(read.trouble);
    setFault(undefined);
    if (read.trouble !== null) {
      focusPart(form.current, read.trouble.field);
      return;
    }
    justKept.current = true;
    const answer = await send(read.hours);
    if (answer.ok) {
      draft.drop();
      setRestored(false);
      return say(read.hours.people.some(({ week, exceptions }) => [...week, ...exceptions.map(({ slot }) => slot)].some((slot) => slot !== null)) ? words.kept : words.keptNone);
    }
    justKept.current = false;
    setFault(answer);
  };
  const invalid = (field: string) => ({ name: field, 'aria-invalid': trouble?.field === field || undefined, ...(trouble?.field === field ? { 'aria-describedby': `${id}trouble` } : {}) });
  return (
    <form ref={form} onSubmit={(event) => void keep(event)} noValidate className="section work-part">
      <h2>{words.people}</h2>
      {restored ? (
        <p role="status">
          {words.restored}{' '}
          <button type="button" className="link" onClick={asKept}>
            {words.asKept}
          </button>
        </p>
      ) : null}
      <p className="soft">{words.help}</p>
      <table className="hours-grid tight" aria-label={words.people}>
        <thead>
          <tr>
            <th scope="col">{words.name}</th>
            {words.weekday.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {typed.people.map((one, at) => (
            <tr key={at}>
              <td>
                <input type="text" aria-label={words.name} value={one.name} onChange={(event) => person(at, { name: event.target.value })} {...invalid(`name ${at}`)} />
                <label className="small">
                  <input type="checkbox" checked={one.alone} onChange={(event) => person(at, { alone: event.target.checked })} /> {words.alone}
                </label>{' '}
                {typed.people.length > 1 ? (
                  <button type="button" className="link" onClick={() => drop(at)}>
                    {words.dropPerson}
                    <span className="visually-hidden"> ({one.name})</span>
                  </button>
                ) : null}
              </td>
              {one.week.map((slot, weekday) => (
                <td key={words.weekday[weekday]}>
                  <input type="text" className="hours-slot" autoComplete="off" aria-label={`${one.name}, ${words.weekdays[weekday]}`} value={slot} onChange={(event) => person(at, { week: one.week.with(weekday, event.target.value) })} {...invalid(`week ${at} ${weekday}`)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="acts">
        <button type="button" className="quiet" ref={adder} disabled={typed.people.length >= mostPeople} onClick={add}>
          {words.addPerson}
        </button>
      </p>
      <div className="fields hours-place">
        {typed.people.map((one, at) => (
          <div className="field" key={at}>
            <label htmlFor={`${id}exceptions${at}`}>{words.exceptions(one.name)}</label>
            <textarea id={`${id}exceptions${at}`} rows={3} value={one.exceptions} onChange={(event) => person(at, { exceptions: event.target.value })} {...invalid(`exceptions ${at}`)} />
            <span className="soft small">{words.exceptionsHelp}</span>
          </div>
        ))}
      </div>
      <h3>{words.place}</h3>
      <div className="fields hours-place hours-spot">
        {(['latitude', 'longitude', 'zone'] as const).map((part) => (
          <div className="field" key={part}>
            <label htmlFor={`${id}${part}`}>{words[part]}</label>
            <input type="text" id={`${id}${part}`} value={typed[part]} onChange={(event) => { setTrouble(null); type({ ...typed, [part]: event.target.value }); }} {...invalid(part)} />
          </div>
        ))}
      </div>
      {trouble === null ? null : (
        <p className="field-fault" id={`${id}trouble`} role="alert">
          {trouble.sentence}
        </p>
      )}
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" ref={keeper} disabled={busy}>
          {words.keep}
        </button>
      </div>
    </form>
  );
}
