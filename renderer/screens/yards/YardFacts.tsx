import { useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent, type ReactNode } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { YardDetails } from '#shared/contract/yards.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayWithWeekday } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';
import { Renewal } from './YardsScreen.tsx';

export interface YardFactsProps {
  readonly yard: { readonly id: YardId; readonly name: string };
  readonly details: YardDetails;
  readonly today: Day;
  readonly order: DateOrder;
}

/** How to get in, whom to ask, the registration: read here, and changed in the same place. */
export function YardFacts(props: YardFactsProps) {
  const { details, today } = props;
  const id = useId();
  const [changing, setChanging] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const back = useRef(false);
  useEffect(() => {
    if (changing || !back.current) return;
    back.current = false;
    button.current?.focus();
  }, [changing]);
  const done = () => {
    back.current = true;
    setChanging(false);
  };
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.details}</h2>
      {changing ? (
        <Entering>
          <FactsForm {...props} onDone={done} />
        </Entering>
      ) : (
        <>
          <dl className="facts">
            <Fact name={words.access}>{details.access}</Fact>
            <Fact name={words.notes}>{details.notes}</Fact>
            <Fact name={words.registration}>{details.registration}</Fact>
            <Fact name={words.renewalDay}>{details.renewal === null ? null : <Renewal day={details.renewal} today={today} />}</Fact>
          </dl>
          <Entering>
            <div className="acts">
              <button ref={button} type="button" aria-label={words.changeLabel} onClick={() => setChanging(true)}>
                {words.change}
              </button>
            </div>
          </Entering>
        </>
      )}
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <>
      <dt>{name}</dt>
      <dd className="written">{children ?? <span className="soft">{words.notWritten}</span>}</dd>
    </>
  );
}

/** Ctrl+Enter or Keep keeps it, Escape leaves it as it was. */
function FactsForm({ yard, details, order, onDone }: YardFactsProps & { readonly onDone: () => void }) {
  const write = useWrite('yard.details');
  const { say } = useNotice();
  const id = useId();
  const first = useRef<HTMLTextAreaElement>(null);
  const [access, setAccess] = useState(details.access ?? '');
  const [notes, setNotes] = useState(details.notes ?? '');
  const [registration, setRegistration] = useState(details.registration ?? '');
  const [typed, setTyped] = useState<string>(details.renewal ?? '');
  const [fault, setFault] = useState<Fault | undefined>();
  useEffect(() => first.current?.focus(), []);

  const renewal = typed.trim() === '' ? null : dayFromTyped(typed, order);
  const bad = typed.trim() !== '' && renewal === null;
  const keep = async () => {
    if (bad || write.busy) return;
    setFault(undefined);
    const answer = await write.send({ id: yard.id, access, notes, registration, renewal });
    if (!answer.ok) return setFault(answer);
    say(words.kept(yard.name));
    onDone();
  };
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    void keep();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onDone();
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) void keep();
  };
  return (
    <form className="stacked yard-facts" onSubmit={onSubmit} onKeyDown={onKey}>
      <div className="field">
        <label htmlFor={`${id}-access`}>{words.access}</label>
        <textarea ref={first} id={`${id}-access`} rows={3} maxLength={4000} value={access} onChange={(event) => setAccess(event.target.value)} />
      </div>
      <div className="field">
        <label htmlFor={`${id}-notes`}>{words.notes}</label>
        <textarea id={`${id}-notes`} rows={3} maxLength={4000} value={notes} onChange={(event) => setNotes(event.target.value)} />
      </div>
      <div className="field">
        <label htmlFor={`${id}-registration`}>{words.registration}</label>
        <input id={`${id}-registration`} type="text" maxLength={80} value={registration} onChange={(event) => setRegistration(event.target.value)} />
      </div>
      <div className="field">
        <label htmlFor={`${id}-renewal`}>{words.renewalDay}</label>
        <input id={`${id}-renewal`} type="text" autoComplete="off" value={typed} aria-invalid={bad} aria-describedby={`${id}-is`} onChange={(event) => setTyped(event.target.value)} />
        <p className={bad ? 'field-fault' : 'soft small'} id={`${id}-is`}>
          {bad ? words.notADay(order) : renewal === null ? words.notWritten : dayWithWeekday(renewal)}
        </p>
      </div>
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" className="main" disabled={bad || write.busy}>
          {words.keep}
        </button>
        <button type="button" onClick={onDone}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
