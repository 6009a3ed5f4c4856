import { useId, useState, type FormEvent } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { NeedLine } from '#shared/contract/needs.ts';
import { addDays, dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

export interface PutOffFormProps {
  readonly line: NeedLine;
  readonly yard: YardId | null;
  readonly today: Day;
  /** The last day until which it may be put off. */
  readonly most: Day;
  readonly order: DateOrder;
  /** `gone`: whether the line goes with it. */
  onLeft(gone: boolean): void;
}

const aWeek = 7;

/** Until a day it is quiet; for good, with a reason. It can be asked for again in the list below. */
export function PutOffForm({ line, yard, today, most, order, onLeft }: PutOffFormProps) {
  const id = useId();
  const putOff = useWrite('needs.putOff');
  const askAgain = useWrite('needs.askAgain');
  const { say } = useNotice();
  const [day, setDay] = useState<string>(addDays(today, aWeek));
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<Fault | undefined>();
  const [noDay, setNoDay] = useState(false);
  const send = async (until: Day | null) => {
    if (putOff.busy) return;
    const answer = await putOff.send({ line: line.key, yard, colony: null, until, reason });
    if (!answer.ok) {
      if (answer.code !== 'moved-on') return setFault(answer);
      // The list is read again, and the form goes from it with its line.
      say(faultText(answer));
      return onLeft(true);
    }
    const { keys } = answer.value;
    say(until === null ? words.saidGone(line.act) : words.saidOff(line.act, dayText(until)), {
      takeBack: async () => {
        const back = await askAgain.send({ keys });
        return back.ok ? words.saidBack(line.act) : faultText(back);
      },
    });
    onLeft(true);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const until = dayFromTyped(day, order);
    setNoDay(until === null);
    setFault(undefined);
    if (until !== null) void send(until);
  };
  return (
    <form
      className="entry-form needs-put-off"
      aria-label={words.laterOf(line.act)}
      noValidate
      onSubmit={submit}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onLeft(false);
      }}
    >
      <div className="fields">
        <DayField
          label={words.until}
          name={`${id}-until`}
          value={day}
          today={today}
          order={order}
          fault={noDay ? words.noDay : fault?.field === 'until' ? faultText(fault) : null}
          help={words.most(dayText(most))}
          onChange={(value) => {
            setDay(value);
            setNoDay(false);
            setFault(undefined);
          }}
        />
        <div className="field">
          <label htmlFor={`${id}-why`}>{words.reason}</label>
          <input id={`${id}-why`} type="text" maxLength={400} autoFocus value={reason} aria-invalid={fault?.field === 'reason'} aria-describedby={`${id}-help`} onChange={(event) => setReason(event.target.value)} />
          <span id={`${id}-help`} className={fault?.field === 'reason' ? 'field-fault' : 'soft small'}>
            {fault?.field === 'reason' ? faultText(fault) : words.reasonHelp}
          </span>
        </div>
      </div>
      <FaultNote fault={fault?.field === 'until' || fault?.field === 'reason' ? undefined : fault} />
      <div className="acts">
        <button type="submit" disabled={putOff.busy}>
          {words.putOff}
        </button>
        <button type="button" disabled={putOff.busy} onClick={() => void send(null)}>
          {words.dismiss}
        </button>
        <button type="button" className="quiet" onClick={() => onLeft(false)}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
