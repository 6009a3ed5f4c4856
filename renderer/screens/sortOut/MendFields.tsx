import { useDeferredValue, useEffect, useId, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import { columns, entryForms, fields, kinds, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import type { Fault } from '#shared/faults.ts';
import { namesItem } from '#shared/itemWords.ts';
import type { Strange } from '#shared/ordinary.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { columnsOf } from '../../parts/entryColumns.ts';
import { EntryFields } from '../../parts/EntryFields.tsx';
import { entryWords } from '../../parts/entryWords.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { plainCells } from '../../parts/typedCells.ts';
import { useDayAhead } from '../../parts/useDayAhead.ts';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { useStrange, withStrange } from '../../parts/useStrange.ts';
import { useKnownLabels } from '../../parts/useKnownLabels.ts';
import { YardOffer } from '../../parts/YardOffer.tsx';
import type { KeptCells, MendProps } from './MendForm.tsx';
import { SetAside } from './SetAside.tsx';
import { words } from './words.ts';

/** The cells of a waiting row. None is left out of sight: one that its kind has no place for is shown and must be cleared. */
export function MendFields({ row, book, today, onLeave, onDone, kept }: MendProps & { readonly kept: KeptCells }) {
  const enter = useWrite('sortOut.enter');
  const { say } = useNotice();
  const labels = useKnownLabels();
  const [cells, setCells] = useState<Cells>(kept.cells);
  const [fault, setFault] = useState<Fault | undefined>();
  const askAhead = useDayAhead(today, book.dateOrder);
  const [ahead, setAhead] = useState<string | null>(null);
  const itemQuestion = useItemQuestion();
  const askStrange = useStrange();
  const [strange, setStrange] = useState<readonly Strange[]>([]);
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  const kind = kinds.find((known) => known === cells.entry?.trim().toLowerCase()) ?? null;
  const sent = plainCells(filled(cells));
  const asked = useDeferredValue(JSON.stringify(sent));
  const { data: judged, fault: unread, stale } = useRead('sortOut.judge', { key: row.key, cells: JSON.parse(asked) as Cells }, { keep: true });
  const shown = kind === null ? [] : shownColumns(kind, kept.cells);
  const refused = new Map((judged?.refusals ?? []).map((one) => [one.column ?? '', one.sentence]));
  const elsewhere = (judged?.refusals ?? []).filter(({ column }) => kind === null || column === null || (column !== 'date' && !shown.some((one) => one === column)));
  const stands = judged?.says != null && !stale;

  // To the first cell, and on to the one that is wrong when that is known, unless the person has gone on meanwhile.
  const wrong = judged?.refusals[0]?.column;
  const began = useRef(false);
  useEffect(() => form.current?.querySelector<HTMLElement>('select, input')?.focus(), []);
  useEffect(() => {
    if (began.current || judged === undefined) return;
    began.current = true;
    const field = wrong == null ? null : form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-${wrong}`)}"]`);
    if (document.activeElement === form.current?.querySelector('select, input')) field?.focus();
  }, [judged, wrong, id]);

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
    if (enter.busy) return;
    const question = askAhead(cells.date ?? '');
    setAhead(question);
    if (question !== null) {
      form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-date`)}"]`)?.focus();
      return;
    }
    const odd = askStrange(sent);
    setStrange(odd);
    if (odd[0] !== undefined) {
      form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-${odd[0].column}`)}"]`)?.focus();
      return;
    }
    if (namesItem(kind) && (await itemQuestion.asks(sent.item ?? ''))) return;
    const answer = await enter.send({ key: row.key, cells: sent });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onDone();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onLeave();
  };

  return (
    <div onKeyDown={onKey}>
      <form ref={form} className="entry-form strike" aria-label={words.form(row.line, row.file)} onSubmit={submit} noValidate>
        <p className="soft small">
          {words.typed}:{' '}
          {kept.typed.map(({ column, value }, at) => (
            <bdi key={`${at} ${column}`}>
              {at > 0 ? '; ' : ''}
              {column === '' ? '' : `${column}: `}
              <b>{value.slice(0, 200)}</b>
            </bdi>
          ))}
        </p>
        <div className="fields">
          <div className="field">
            <label htmlFor={`${id}-kind`}>{entryWords.kind}</label>
            <select id={`${id}-kind`} name={`${id}-entry`} value={kind ?? ''} aria-invalid={kind === null} onChange={(event) => change('entry', event.target.value)}>
              {kind === null ? <option value="">{words.chooseKind}</option> : null}
              {kinds.map((known) => (
                <option key={known} value={known}>
                  {entryForms[known].label}
                </option>
              ))}
            </select>
          </div>
          <EntryFields
            id={id}
            kind={kind}
            columns={shown}
            cells={cells}
            refused={withStrange(refused, strange)}
            ahead={ahead}
            book={book}
            today={today}
            labels={labels}
            below={(column) => (fields[column].type === 'yard' ? <YardOffer typed={cells[column] ?? ''} yards={book.yards} onAdded={() => undefined} /> : null)}
            onChange={change}
          />
        </div>
        <div className={stands ? 'consequence' : 'consequence needs'} role="status">
          {judged?.says == null ? (
            <>
              {judged === undefined ? null : <p>{elsewhere.length > 0 ? words.notYet : words.notYetAt}</p>}
              {elsewhere.map(({ column, sentence }) => (
                <p key={`${column ?? ''} ${sentence}`}>{sentence}</p>
              ))}
            </>
          ) : (
            <p>
              {words.wouldSay} <bdi>{judged.says}</bdi>
            </p>
          )}
        </div>
        <ItemQuestion
          question={itemQuestion}
          onUse={(item) => {
            change('item', item);
            form.current?.querySelector<HTMLElement>(`[name="${CSS.escape(`${id}-item`)}"]`)?.focus();
          }}
          onNew={() => void enterIt()}
        />
        <FaultNote fault={unread ?? fault} />
        <div className="acts">
          <button type="submit" className="main" disabled={!stands || enter.busy}>
            {words.enter}
          </button>
          <button type="button" onClick={onLeave}>
            {words.leave}
          </button>
        </div>
      </form>
      <SetAside
        row={row}
        onSet={() => {
          say(words.asideDone(row.line, row.file));
          onDone();
        }}
        onRefused={(answer) => say(faultText(answer))}
      />
    </div>
  );
}

/** The kind's own columns, and whatever else the row has something in. */
function shownColumns(kind: Kind, typed: Cells): Exclude<Column, 'date' | 'entry'>[] {
  const own = columnsOf(kind);
  const also = columns.filter((column) => !own.includes(column) && (typed[column] ?? '').trim() !== '');
  return [...own, ...also].filter((column): column is Exclude<Column, 'date' | 'entry'> => column !== 'date' && column !== 'entry');
}

function filled(cells: Cells): Cells {
  const row: Cells = {};
  for (const column of columns) {
    const value = cells[column]?.trim() ?? '';
    if (value !== '') row[column] = value;
  }
  return row;
}
