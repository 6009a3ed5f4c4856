import { useEffect, useId, useRef, useState, type FormEvent } from 'react';
import { Link } from 'wouter';
import type { LotPage } from '#shared/contract/lots.ts';
import type { Fault } from '#shared/faults.ts';
import type { MassUnit } from '#shared/units.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted, dayText, missing } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massFigure, massText } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';

/** Everything that happened to the lot, day by day, with what was in bulk then; what was done at home can be taken back. */
export function LotEvents({ page, unit }: { readonly page: LotPage; readonly unit: MassUnit }) {
  const { shown, more } = useFirstRows(gathered(page.events, unit), words.events);
  return (
    <section className="section" aria-label={words.events}>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.events}>
        <table className="tight honey-events">
          <caption>
            <h2>{words.events}</h2>
          </caption>
          <thead>
            <tr>
              <th scope="col">{words.day}</th>
              <th scope="col">{words.what}</th>
              <th scope="col" className="number">{`${words.change}, ${unit}`}</th>
              <th scope="col" className="number">{`${words.bulkThen}, ${unit}`}</th>
              <th scope="col">
                <span className="visually-hidden">{words.takeBack}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((event, at) => (
              <tr key={`${event.key ?? event.entry} ${at}`} className={event.back === null ? undefined : 'honey-back'}>
                <td>{event.entry === null ? dayText(event.day) : <Link href={`/entries/${event.entry}`}>{dayText(event.day)}</Link>}</td>
                <td>
                  {event.back === null ? event.sentence : <del>{event.sentence}</del>}
                  {event.back === null ? null : <span className="soft"> {words.backBecause(event.back)}</span>}
                </td>
                <td className="number">{event.back !== null || event.change === 0 ? missing : massFigure(event.change, unit)}</td>
                <td className="number">{event.back === null ? massFigure(event.bulk, unit) : missing}</td>
                <td>{event.key === null || event.back !== null ? null : <TakeBackStep step={event.key} sentence={event.sentence} />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more}
    </section>
  );
}

type Event = LotPage['events'][number];

/** Harvests of one day that came in one after the other, as one line. */
function gathered(events: readonly Event[], unit: MassUnit): Event[] {
  const rows: Event[] = [];
  let count = 0;
  for (const event of events) {
    const last = rows.at(-1);
    const same = last !== undefined && last.what === 'harvest' && event.what === 'harvest' && last.day === event.day;
    count = same ? count + 1 : 1;
    if (!same) rows.push(event);
    else rows[rows.length - 1] = { ...event, entry: null, change: last.change + event.change, sentence: words.harvestsOf(counted(count, 'harvest', 'harvests'), massText(last.change + event.change, unit)) };
  }
  return rows;
}

function TakeBackStep({ step, sentence }: { readonly step: string; readonly sentence: string }) {
  const { send, busy } = useWrite('lots.takeBack');
  const { say } = useNotice();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const [missed, setMissed] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  useEffect(() => {
    if (open) field.current?.focus();
  }, [open]);
  const leave = () => {
    setOpen(false);
    requestAnimationFrame(() => opener.current?.focus());
  };
  const takeBack = async (event: FormEvent) => {
    event.preventDefault();
    setFault(undefined);
    setMissed(reason.trim() === '');
    if (reason.trim() === '' || busy) return field.current?.focus();
    const answer = await send({ key: step, reason: reason.trim() });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence);
    // What was taken back has no button any more: the keyboard stays with the table.
    form.current?.closest<HTMLElement>('[role="group"]')?.focus();
    setOpen(false);
  };
  if (!open) {
    return (
      <Entering>
        <button ref={opener} type="button" className="link" aria-label={words.takeBackOf(sentence)} onClick={() => setOpen(true)}>
          {words.takeBack}
        </button>
      </Entering>
    );
  }
  return (
    <Entering>
      <form ref={form} className="honey-take-back" aria-label={words.takeBackOf(sentence)} onSubmit={(event) => void takeBack(event)} onKeyDown={(event) => { if (event.key === 'Escape') leave(); }} noValidate>
        <label htmlFor={id}>{words.reason}</label>
        <input ref={field} id={id} type="text" autoComplete="off" value={reason} aria-invalid={missed} aria-describedby={`${id}-says`} onChange={(event) => setReason(event.target.value)} />
        <span id={`${id}-says`} className="field-fault">
          {missed ? words.reasonNeeded : null}
        </span>
        <FaultNote fault={fault} />
        <span className="acts">
          <button type="submit" disabled={busy}>
            {words.takeBack}
          </button>
          <button type="button" className="quiet" onClick={leave}>
            {words.leave}
          </button>
        </span>
      </form>
    </Entering>
  );
}
