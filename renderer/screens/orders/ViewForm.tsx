import { useId, useState, type FormEvent } from 'react';
import type { OrderDecision } from '#shared/contract/decision.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, percent } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** What the person expects of the winter, with the reason; the forecast follows it until it is dropped. */
export function ViewForm({ yards }: { readonly yards: OrderDecision['yards'] }) {
  const id = useId();
  const { data } = useRead('survival.views', {});
  const keep = useWrite('survival.keep');
  const drop = useWrite('survival.drop');
  const notice = useNotice();
  const [yard, setYard] = useState('');
  const [rate, setRate] = useState('');
  const [reason, setReason] = useState('');
  const [says, setSays] = useState<{ rate: string; reason: string }>({ rate: '', reason: '' });
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const named = (of: number | null) => yards.find((one) => one.yard === of)?.name ?? words.viewAll;

  const enter = async (event: FormEvent) => {
    event.preventDefault();
    const read = readMeasure(rate, { unit: '%', least: 1, most: 99, suchAs: '30' });
    const percentLost = read.ok ? read.value : 0;
    const wrong = { rate: read.ok ? '' : read.sentence, reason: reason.trim().length >= 3 ? '' : words.viewBadReason };
    setSays(wrong);
    if (wrong.rate !== '' || wrong.reason !== '') return;
    const of = yards.find((one) => String(one.yard) === yard)?.yard ?? null;
    const answer = await keep.send({ yard: of, rate: percentLost / 100, reason: reason.trim() });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    setRate('');
    setReason('');
    notice.say(words.viewKept(named(of)));
  };
  return (
    <details className="order-view" open={(data?.views.length ?? 0) > 0}>
      <summary>{words.viewHeading}</summary>
      <p className="soft">{words.viewText}</p>
      <ul className="order-said">
        {data?.views.map((view) => (
          <li key={view.yard ?? 'all'}>
            {words.viewLine(named(view.yard), percent(view.rate), view.reason, dayText(view.day))}{' '}
            <button type="button" className="link" disabled={drop.busy} onClick={() => void drop.send({ yard: view.yard }).then((answer) => answer.ok && notice.say(words.viewDropped(named(view.yard))))}>
              {words.viewDrop}
              <span className="visually-hidden"> ({named(view.yard)})</span>
            </button>
          </li>
        ))}
      </ul>
      <form className="fields" onSubmit={(event) => void enter(event)} noValidate>
        <div className="field">
          <label htmlFor={`${id}yard`}>{words.viewYard}</label>
          <select id={`${id}yard`} value={yard} onChange={(event) => setYard(event.target.value)}>
            <option value="">{words.viewAll}</option>
            {yards.map((one) => (
              <option key={one.yard} value={String(one.yard)}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${id}rate`}>{words.viewRate}</label>
          <input id={`${id}rate`} type="text" inputMode="decimal" value={rate} aria-invalid={says.rate !== ''} aria-describedby={`${id}rate-says`} onChange={(event) => setRate(event.target.value)} />
          <span id={`${id}rate-says`} className="field-fault">
            {says.rate}
          </span>
        </div>
        <div className="field wide">
          <label htmlFor={`${id}reason`}>{words.viewReason}</label>
          <input id={`${id}reason`} type="text" value={reason} aria-invalid={says.reason !== ''} aria-describedby={`${id}reason-says`} onChange={(event) => setReason(event.target.value)} />
          <span id={`${id}reason-says`} className="field-fault">
            {says.reason}
          </span>
        </div>
        <div className="wide">
          <FaultNote fault={fault} />
          <button type="submit" disabled={keep.busy}>
            {words.viewKeep}
          </button>
        </div>
      </form>
    </details>
  );
}
