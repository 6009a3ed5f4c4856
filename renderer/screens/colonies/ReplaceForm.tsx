import { useDeferredValue, useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import type { OpenBook } from '#shared/contract/book.ts';
import type { StoryEntry } from '#shared/contract/journal.ts';
import type { Day } from '#shared/days.ts';
import type { Cells, Column, Kind } from '#shared/entryForms.ts';
import type { Fault } from '#shared/faults.ts';
import { namesItem } from '#shared/itemWords.ts';
import type { Strange } from '#shared/ordinary.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { columnsOf, rowOf } from '../../parts/entryColumns.ts';
import { EntryFields } from '../../parts/EntryFields.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { useDayAhead } from '../../parts/useDayAhead.ts';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { useStrange, withStrange } from '../../parts/useStrange.ts';
import { useKnownLabels } from '../../parts/useKnownLabels.ts';
import { ConsequenceNote } from './ConsequenceNote.tsx';
import { ReasonField } from './ReasonField.tsx';
import { storyWords as words } from './storyWords.ts';

export interface ReplaceFormProps {
  readonly entry: StoryEntry;
  readonly kind: Kind;
  readonly first: Cells;
  readonly book: OpenBook;
  readonly today: Day;
  onMended(): void;
  onLeft(): void;
}

/** The entry's own cells to be mended; what that changes is shown as they are typed, and both entries stay readable. */
export function ReplaceForm({ entry, kind, first, book, today, onMended, onLeft }: ReplaceFormProps) {
  const replace = useWrite('journal.replace');
  const { say } = useNotice();
  const labels = useKnownLabels();
  const [cells, setCells] = useState<Cells>(first);
  const [reason, setReason] = useState('');
  const [lacking, setLacking] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const askAhead = useDayAhead(today, book.dateOrder);
  const [ahead, setAhead] = useState<string | null>(null);
  const itemQuestion = useItemQuestion();
  const askStrange = useStrange(rowOf(kind, first));
  const [strange, setStrange] = useState<readonly Strange[]>([]);
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  const row = rowOf(kind, cells);
  const asked = useDeferredValue(JSON.stringify(row));
  const changed = JSON.stringify(row) !== JSON.stringify(rowOf(kind, first));
  const { data: consequence, fault: unknown } = useRead('journal.consequence', { entry: entry.id, cells: JSON.parse(asked) as Cells }, { enabled: changed, keep: true });
  const shown: readonly string[] = ['date', ...columnsOf(kind)];
  const refused = new Map((changed ? (consequence?.refusal?.cells ?? []) : []).map((one) => [one.column ?? '', one.sentence]));

  useEffect(() => form.current?.querySelector<HTMLElement>('input')?.focus(), []);

  const change = (column: Column, value: string) => {
    if (column === 'item') itemQuestion.drop();
    setCells((before) => ({ ...before, [column]: value }));
    setFault(undefined);
    if (column === 'date') setAhead(null);
    setStrange((before) => before.filter((one) => one.column !== column));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void enterIt();
  };
  const enterIt = async () => {
    if (!changed || replace.busy) return;
    setFault(undefined);
    setLacking(reason.trim() === '');
    if (reason.trim() === '') {
      form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-reason`)}"]`)?.focus();
      return;
    }
    const question = askAhead(cells.date ?? '');
    setAhead(question);
    if (question !== null) {
      form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-date`)}"]`)?.focus();
      return;
    }
    const odd = askStrange(row);
    setStrange(odd);
    if (odd[0] !== undefined) {
      form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-${odd[0].column}`)}"]`)?.focus();
      return;
    }
    if (namesItem(kind) && row.item !== rowOf(kind, first).item && (await itemQuestion.asks(row.item ?? ''))) return;
    const answer = await replace.send({ entry: entry.id, cells: row, reason });
    if (!answer.ok) {
      const [first] = refused.keys();
      if (first !== undefined) form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-${first}`)}"]`)?.focus();
      return setFault(answer);
    }
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onMended();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onLeft();
  };

  return (
    <form ref={form} className="entry-form strike" aria-label={words.replaceHeading} onSubmit={submit} onKeyDown={onKey} noValidate>
      <div className="fields">
        <EntryFields id={id} kind={kind} columns={columnsOf(kind)} cells={cells} refused={withStrange(refused, strange)} ahead={ahead} book={book} today={today} labels={labels} onChange={change} />
      </div>
      {changed && consequence ? (
        <ConsequenceNote consequence={consequence} heading={words.ifReplaced} cellsElsewhere={[...refused.keys()].every((column) => shown.includes(column))} />
      ) : null}
      <ItemQuestion
        question={itemQuestion}
        onUse={(item) => {
          change('item', item);
          form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-item`)}"]`)?.focus();
        }}
        onNew={() => void enterIt()}
      />
      <FaultNote fault={changed ? unknown : undefined} />
      <div className="one-field">
        <ReasonField id={`${id}-reason`} label={words.replaceWhy} value={reason} lacking={lacking} onChange={setReason} />
        <button type="submit" className="main" disabled={!changed || replace.busy}>
          {words.replaceEntry}
        </button>
        <button type="button" onClick={onLeft}>
          {words.strikeLeave}
        </button>
      </div>
      {changed ? null : <p className="soft small">{words.replaceUnchanged}</p>}
      {/* What the consequence says already is not said again. */}
      <FaultNote fault={changed && consequence?.refusal != null ? undefined : fault} />
    </form>
  );
}
