import { useEffect, useId, useMemo, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import { Link } from 'wouter';
import { entryForms, fields, kinds, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import type { OpenBook } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { namesItem } from '#shared/itemWords.ts';
import { useRead, useWrite } from '../desk/useDesk.ts';
import { colonyLabels } from './colonyLabels.ts';
import { DayField } from './DayField.tsx';
import { cellsAsKind, columnsOf, freshCells, nextCells, rowOf } from './entryColumns.ts';
import { EntryField } from './EntryField.tsx';
import { readDraft, refusalsOf, type Refusals } from './entryRefusals.ts';
import { entryWords, severalAtOnce } from './entryWords.ts';
import { FaultNote } from './FaultNote.tsx';
import { counted } from './format.ts';
import { useNotice } from './Notice.tsx';
import { byLabel } from './searchText.ts';
import { useDayAhead } from './useDayAhead.ts';
import { ItemQuestion } from './ItemQuestion.tsx';
import { useDraft } from './useDraft.ts';
import { useItemQuestion } from './useItemQuestion.ts';
import { useStrange } from './useStrange.ts';
import { YardOffer } from './YardOffer.tsx';

export interface EntryFormProps {
  readonly book: OpenBook;
  readonly today: Day;
  readonly firstKind: Kind;
  /** Filled in when the form stands on a colony's own page. */
  readonly colony?: string;
  /** What the place it stands on says already; what was typed there and not entered has a draft of its own. */
  readonly given?: Cells;
  /** The caution stands beside the form already. */
  readonly cautioned?: boolean;
  readonly onClose: () => void;
}

/** Any record by hand: one form, made from the exchange form's own description of each kind. */
export function EntryForm({ book, today, firstKind, colony, given, cautioned = false, onClose }: EntryFormProps) {
  const enter = useWrite('journal.enter');
  const { say } = useNotice();
  const living = useRead('colonies.list', { which: 'living' });
  const labels = useMemo(() => (living.data?.rows ?? []).map((row) => row.label).sort(byLabel), [living.data]);
  const own: Cells = colony === undefined ? {} : { colony };
  const [kind, setKind] = useState<Kind>(firstKind);
  const [cells, setCells] = useState<Cells>({ ...freshCells(firstKind, book.massUnit), date: today, ...own, ...given });
  const [refusals, setRefusals] = useState<Refusals>({});
  const [fault, setFault] = useState<Fault | undefined>();
  const [restored, setRestored] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const askAhead = useDayAhead(today, book.dateOrder);
  const askStrange = useStrange();
  const itemQuestion = useItemQuestion();
  const id = useId();

  const draft = useDraft(given === undefined ? `entry ${colony ?? ''}` : `entry of ${Object.values(given).join(' ')}`, (body) => {
    const kept = readDraft(body);
    if (kept === null) return;
    setKind(kept.kind);
    setCells({ date: today, ...kept.cells });
    setRestored(true);
  });

  const several = severalAtOnce.has(kind);
  const named = several ? colonyLabels(cells.colony ?? '', new Set(labels)) : null;
  const many = named?.ok && named.labels.length > 1 ? named.labels : null;

  const dead = kind === 'loss' && !many ? living.data?.rows.find((row) => row.label === cells.colony?.trim()) : undefined;

  const change = (column: Column, value: string) => {
    if (column === 'item') itemQuestion.drop();
    const next = { ...cells, [column]: value };
    setCells(next);
    draft.keep(JSON.stringify({ kind, cells: next }));
    if (refusals[column] !== undefined) setRefusals({ ...refusals, [column]: undefined });
  };
  const changeKind = (next: Kind) => {
    setKind(next);
    const filled = cellsAsKind(next, kind, cells, book.massUnit);
    setCells(filled);
    setRefusals({});
    setFault(undefined);
    itemQuestion.drop();
    draft.keep(JSON.stringify({ kind: next, cells: filled }));
  };
  const startAgain = (next: Cells) => {
    setCells({ date: today, ...next, ...own });
    setRefusals({});
    setFault(undefined);
    setRestored(false);
    draft.drop();
  };
  const focusOn = (column: string) => {
    // After the refusal is drawn, so that the field is read out with it.
    requestAnimationFrame(() => form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-${column}`)}"]`)?.focus());
  };

  const send = async (cells: Cells) => {
    if (enter.busy) return;
    setFault(undefined);
    const question = askAhead(cells.date ?? '');
    if (question !== null) {
      setRefusals({ date: question });
      return focusOn('date');
    }
    if (named && !named.ok) {
      setRefusals({ colony: named.sentence });
      return focusOn('colony');
    }
    const row = rowOf(kind, cells);
    const strange = askStrange(row);
    if (strange[0] !== undefined) {
      setRefusals(Object.fromEntries(strange.map(({ column, sentence }) => [column, sentence])));
      return focusOn(strange[0].column);
    }
    if (namesItem(kind) && (await itemQuestion.asks(row.item ?? ''))) return;
    const rows = many ? many.map((label) => ({ ...row, colony: label })) : [{ ...row, ...(named?.labels[0] ? { colony: named.labels[0] } : {}) }];
    const answer = await enter.send({ rows });
    if (answer.ok) {
      say(answer.value.sentence, { undoGesture: answer.value.gesture });
      const next = nextCells(kind, cells, book.massUnit);
      startAgain(next);
      return focusOn(entryForms[kind].must.find((column) => next[column] === undefined && own[column] === undefined) ?? 'note');
    }
    const found = refusalsOf(answer, rows, kind);
    setRefusals(found.byColumn);
    setFault(found.rest);
    if (found.first) focusOn(found.first);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void send(cells);
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && event.ctrlKey) {
      event.preventDefault();
      void send(cells);
    }
  };

  useEffect(() => {
    form.current?.querySelector('select')?.focus();
  }, []);

  const belowOf = (column: Column) => {
    if (column === 'colony' && many) return <p className="small">{namesOf(many)}</p>;
    if (fieldTypeOf(column) !== 'yard') return null;
    return <YardOffer typed={cells[column] ?? ''} yards={book.yards} said={refusals[column] !== undefined} onAdded={() => focusOn(nextAfter(column))} />;
  };
  const nextAfter = (column: Column) => columnsOf(kind)[columnsOf(kind).indexOf(column) + 1] ?? 'note';
  const mustOf = entryForms[kind].must;
  return (
    <form ref={form} className="entry-form" aria-labelledby={`${id}-head`} onSubmit={submit} onKeyDown={onKey} noValidate>
      <h2 id={`${id}-head`}>{entryWords.heading}</h2>
      {restored ? (
        <p className="soft" role="status">
          {entryWords.back}{' '}
          <button type="button" className="link" onClick={() => startAgain(freshCells(kind, book.massUnit))}>
            {entryWords.clear}
          </button>
        </p>
      ) : null}
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}-kind`}>{entryWords.kind}</label>
          <select id={`${id}-kind`} value={kind} onChange={(event) => changeKind(kinds.find((known) => known === event.target.value) ?? kind)}>
            {kinds.map((known) => (
              <option key={known} value={known}>
                {entryForms[known].label}
              </option>
            ))}
          </select>
        </div>
        <DayField
          label={entryWords.day}
          name={`${id}-date`}
          value={cells.date ?? ''}
          today={today}
          order={book.dateOrder}
          fault={refusals.date ?? null}
          onChange={(value) => change('date', value)}
        />
        {columnsOf(kind).map((column) =>
          column === 'date' || column === 'entry' ? null : (
            <EntryField
              key={column}
              kind={kind}
              column={column}
              name={`${id}-${column}`}
              must={mustOf.includes(column)}
              value={cells[column] ?? ''}
              fault={refusals[column] ?? null}
              yards={book.yards}
              colonies={labels}
              onChange={(value) => change(column, value)}
              below={belowOf(column)}
            />
          ),
        )}
      </div>
      {kind === 'treatment' && !cautioned ? <p className="caution">{entryWords.treatmentCaution}</p> : null}
      {dead === undefined ? null : (
        <p className="small">
          <Link href={`/colonies/${dead.id}/dead-out`}>{entryWords.deadOut}</Link>
        </p>
      )}
      {kind === 'loss' && (cells.cause ?? '').split(';').includes('disease') ? (
        <p className="caution" role="alert">
          {entryWords.diseaseCaution}
        </p>
      ) : null}
      <ItemQuestion
        question={itemQuestion}
        onUse={(item) => {
          change('item', item);
          void send({ ...cells, item });
        }}
        onNew={() => void send(cells)}
      />
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" className="main" disabled={enter.busy}>
          {many ? entryWords.enterMany(many.length) : entryWords.enter}
          <kbd>Ctrl Enter</kbd>
        </button>
        <button type="button" onClick={onClose}>
          {entryWords.close}
        </button>
      </div>
    </form>
  );
}

function namesOf(labels: readonly string[]): string {
  const shown = labels.length > 8 ? [...labels.slice(0, 6), '…', labels[labels.length - 1] ?? ''] : labels;
  return entryWords.names(counted(labels.length, 'colony', 'colonies'), shown.join(', '));
}

function fieldTypeOf(column: Column): string {
  return column === 'date' || column === 'entry' ? 'text' : fields[column].type;
}
