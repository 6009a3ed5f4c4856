import { useDeferredValue, useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import { useLocation } from 'wouter';
import type { OpenBook } from '#shared/contract/book.ts';
import type { DeadOutPlace } from '#shared/contract/deadOut.ts';
import { deadOutRow, foulbroodSigns } from '#shared/deadOut.ts';
import type { Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { ConsequenceNote } from '../colonies/ConsequenceNote.tsx';
import { CauseTicks } from './CauseTicks.tsx';
import { readDeadOutDraft, type DeadOutDraft } from './deadOutDraft.ts';
import { DeadOutMargin } from './DeadOutMargin.tsx';
import { SignTicks } from './SignTicks.tsx';
import { words } from './words.ts';

export interface DeadOutFormProps {
  readonly place: DeadOutPlace;
  readonly book: OpenBook;
  readonly today: Day;
}

export function DeadOutForm({ place, book, today }: DeadOutFormProps) {
  const { loss } = place;
  const first: DeadOutDraft = { day: loss?.cells.date ?? today, signs: loss?.signs ?? [], taken: loss?.causes ?? [], words: loss?.words ?? '' };
  const [draft, setDraft] = useState(first);
  const [restored, setRestored] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const enter = useWrite('journal.enter');
  const replace = useWrite('journal.replace');
  const { say } = useNotice();
  const [, go] = useLocation();
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  const kept = useDraft(`dead-out ${place.id} ${loss?.entry ?? ''}`.trim(), (body) => {
    const found = readDeadOutDraft(body);
    if (found === null) return;
    setDraft(found);
    setRestored(true);
  });
  const judged = useRead('deadOut.judge', { signs: [...draft.signs] }, { keep: true });
  const judgement = judged.data;
  const stopped = draft.signs.some((sign) => foulbroodSigns.includes(sign));
  // While foulbrood is feared nothing is taken up; what was recorded before stays as it is.
  const row = deadOutRow(loss?.cells ?? { colony: place.label }, stopped ? (loss?.causes ?? []) : draft.taken, draft.words, draft.signs);
  const cells: Cells = { ...row, date: draft.day };
  const changed = loss === null || JSON.stringify(cells) !== JSON.stringify({ ...deadOutRow(loss.cells, loss.causes, loss.words, loss.signs), date: loss.cells.date });
  const asked = useDeferredValue(JSON.stringify(cells));
  const { data: consequence } = useRead('journal.consequence', { entry: loss?.entry ?? 1, cells: JSON.parse(asked) as Cells }, { enabled: loss !== null && changed, keep: true });

  useEffect(() => form.current?.querySelector<HTMLElement>('input[type=checkbox]')?.focus(), []);

  const change = (part: Partial<DeadOutDraft>) => {
    const next = { ...draft, ...part };
    setDraft(next);
    setFault(undefined);
    kept.keep(JSON.stringify(next));
  };
  const send = async () => {
    if (enter.busy || replace.busy || !changed) return;
    setFault(undefined);
    const answer = loss === null ? await enter.send({ title: words.title(place.label), rows: [cells] }) : await replace.send({ entry: loss.entry, cells, reason: words.reason });
    if (!answer.ok) return setFault(answer);
    kept.drop();
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    go(`/colonies/${place.id}`);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void send();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return;
    // Enter in a tick would send the form half way through the look.
    if (event.ctrlKey) void send();
    if (event.ctrlKey || event.target instanceof HTMLInputElement) event.preventDefault();
  };

  return (
    <form ref={form} className="dead-out" aria-label={words.title(place.label)} onSubmit={submit} onKeyDown={onKey} noValidate>
      {restored ? (
        <p className="soft" role="status">
          {words.restored}
        </p>
      ) : null}
      <p className="soft small">{words.keys}</p>
      <SignTicks signs={draft.signs} onChange={(signs) => change({ signs })} />
      {judgement?.stop ? (
        <p className="caution dead-out-stop" role="alert">
          {judgement.stop.caution}
        </p>
      ) : null}
      {judgement && !stopped ? <CauseTicks judgement={judgement} looked={draft.signs.length > 0} taken={draft.taken} onChange={(taken) => change({ taken })} /> : null}
      <div className="fields dead-out-rest">
        <DayField label={words.day} name={`${id}-date`} value={draft.day} today={today} order={book.dateOrder} fault={null} onChange={(day) => change({ day })} />
        <div className="field wide">
          <label htmlFor={`${id}-words`}>{words.words}</label>
          <textarea id={`${id}-words`} rows={2} maxLength={2500} value={draft.words} aria-describedby={`${id}-kept`} onChange={(event) => change({ words: event.target.value })} />
          <p className="soft small" id={`${id}-kept`}>
            {words.keptWords}
          </p>
        </div>
      </div>
      {loss !== null && changed && consequence ? <ConsequenceNote consequence={consequence} heading={words.ifReplaced} /> : null}
      {changed ? null : <p className="soft small">{words.unchanged}</p>}
      <FaultNote fault={fault ?? judged.fault} />
      {fault?.rows?.map((one) => (
        <p key={one.sentence} className="field-fault">
          {one.sentence}
        </p>
      ))}
      <div className="acts">
        <button type="submit" className="main" disabled={!changed || enter.busy || replace.busy}>
          {buttonWords(loss !== null, stopped)}
          <kbd>Ctrl Enter</kbd>
        </button>
      </div>
      <DeadOutMargin place={place} judgement={judgement} signs={draft.signs} />
    </form>
  );
}

function buttonWords(recorded: boolean, stopped: boolean): string {
  if (stopped) return recorded ? words.enterStoppedKept : words.enterStopped;
  return recorded ? words.replace : words.enter;
}
