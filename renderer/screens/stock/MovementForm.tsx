import { useId, useRef, useState, type FormEvent } from 'react';
import { fixedPlaces, type Cells } from '#shared/entryForms.ts';
import { plainText, typedFigure } from '#shared/typedMeasure.ts';
import type { Fault } from '#shared/faults.ts';
import { useBook } from '../../desk/useBook.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { words } from './words.ts';

interface Typed {
  readonly item: string;
  readonly quantity: string;
  readonly from: string;
  readonly to: string;
  readonly note: string;
}
type Part = keyof Typed;
type Faults = Partial<Record<Part, string>>;

const blank: Typed = { item: '', quantity: '', from: 'supplier', to: 'shed', note: '' };

/** One movement of stock, entered under today's day; Enter enters it and begins the next. */
export function MovementForm({ items, places }: { readonly items: readonly string[]; readonly places: readonly string[] }) {
  const { book, today } = useBook();
  const { send, busy } = useWrite('journal.enter');
  const notice = useNotice();
  const question = useItemQuestion();
  const [typed, setTyped] = useState<Typed>(blank);
  const [faults, setFaults] = useState<Faults>({});
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft('stock movement', (body) => setTyped(readDraft(body)));
  const id = useId();

  const yards = book?.yards ?? [];
  const known = new Set<string>([...fixedPlaces, ...yards.map(({ code }) => code)]);
  const options = [
    ...fixedPlaces.map((place) => ({ value: place as string, text: place as string })),
    ...yards.map(({ code, name }) => ({ value: code, text: `${code} ${name}` })),
    ...places.filter((place) => !known.has(place)).map((place) => ({ value: place, text: place })),
  ];
  const change = (part: Part) => (value: string) => {
    const next = { ...typed, [part]: value };
    setTyped(next);
    draft.keep(JSON.stringify(next));
    setFaults({ ...faults, [part]: undefined });
    if (part === 'item') question.drop();
  };

  const submit = (event: FormEvent) => {
    event.preventDefault();
    void enter(typed);
  };
  const enter = async (typed: Typed) => {
    if (today === undefined || busy) return;
    const found = readMovement(typed);
    setFaults(found);
    setFault(undefined);
    const first = firstOf(found);
    if (first !== undefined) return focus(form.current, first);
    if (await question.asks(typed.item)) return;
    const row: Cells = { date: today, entry: 'stock', item: typed.item.trim(), quantity: quantityText(typed.quantity), from: typed.from, to: typed.to };
    const answer = await send({ rows: [typed.note.trim() === '' ? row : { ...row, note: typed.note.trim() }] });
    if (answer.ok) {
      setTyped({ ...blank, from: typed.from, to: typed.to });
      draft.drop();
      focus(form.current, 'item');
      notice.say(answer.value.sentence, { undoGesture: answer.value.gesture });
      return;
    }
    const placed = placeFaults(answer);
    setFaults(placed);
    if (firstOf(placed) === undefined) setFault(answer);
    else focus(form.current, firstOf(placed) ?? 'item');
  };

  const field = (part: Part) => ({ id: `${id}${part}`, part, value: typed[part], fault: faults[part], onChange: change(part) });
  return (
    <form ref={form} className="movement" aria-label={words.enterHeading} onSubmit={submit} noValidate>
      <h3>{words.enterHeading}</h3>
      <div className="fields">
        <Field label={words.item} {...field('item')} list={items} />
        <Field label={words.quantity} {...field('quantity')} numeric />
        <Field label={words.fromLabel} {...field('from')} options={options} />
        <Field label={words.toLabel} {...field('to')} options={options} />
        <Field label={words.note} {...field('note')} wide />
      </div>
      {question.found ? (
        <ItemQuestion
          found={question.found}
          onUse={(item) => {
            question.drop();
            change('item')(item);
            void enter({ ...typed, item });
          }}
          onNew={() => {
            question.isNew();
            void enter(typed);
          }}
        />
      ) : null}
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy || today === undefined}>
          {words.enter}
        </button>
        <span className="soft small">{dayText(today)}</span>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly id: string;
  readonly part: Part;
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
  readonly list?: readonly string[];
  readonly options?: readonly { value: string; text: string }[];
  readonly numeric?: boolean;
  readonly wide?: boolean;
}

function Field({ id, part, label, value, fault, onChange, list, options, numeric, wide }: FieldProps) {
  const common = { id, name: part, value, 'aria-invalid': fault !== undefined, 'aria-describedby': `${id}-says` };
  return (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {options ? (
        <select {...common} onChange={(event) => onChange(event.target.value)}>
          {options.map(({ value: place, text }) => (
            <option key={place} value={place}>
              {text}
            </option>
          ))}
        </select>
      ) : (
        <input
          type="text"
          {...common}
          {...(list ? { list: `${id}-list` } : {})}
          {...(numeric ? { inputMode: 'decimal' as const } : {})}
          autoComplete="off"
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      {list && (
        <datalist id={`${id}-list`}>
          {list.map((known) => (
            <option key={known} value={known} />
          ))}
        </datalist>
      )}
      <span id={`${id}-says`} className="field-fault">
        {fault}
      </span>
    </div>
  );
}

/** What was typed and not entered the last time; whatever cannot be read of it is left blank. */
function readDraft(body: string): Typed {
  let found: unknown;
  try {
    found = JSON.parse(body);
  } catch {
    return blank;
  }
  if (typeof found !== 'object' || found === null) return blank;
  const kept = Object.entries(found).filter(([part, value]) => part in blank && typeof value === 'string');
  return { ...blank, ...Object.fromEntries(kept) };
}

/** What is missing from a movement before it is sent; the desk judges everything else. */
function readMovement(typed: Typed): Faults {
  const faults: Faults = {};
  if (typed.item.trim() === '') faults.item = words.must.item;
  const quantity = typedFigure(typed.quantity);
  if (quantity === null || quantity.unit !== '' || !(quantity.amount > 0)) faults.quantity = words.must.quantity;
  // Within one place a row says how pieces are; without a state it would say nothing.
  if (typed.from === typed.to && !/,\s*(sound|to mend|worn( out)?)\s*(,|$)/i.test(typed.item)) faults.to = words.must.same;
  return faults;
}

function quantityText(typed: string): string {
  const found = typedFigure(typed);
  return found === null ? typed : plainText(found.amount);
}

/** The desk's sentences beside the fields they are about. */
function placeFaults(fault: Fault): Faults {
  const faults: Faults = {};
  for (const row of fault.rows ?? []) {
    if (row.column !== null && row.column in blank) faults[row.column as Part] = row.sentence;
  }
  return faults;
}

function firstOf(faults: Faults): Part | undefined {
  return (Object.keys(blank) as Part[]).find((part) => faults[part] !== undefined);
}

function focus(form: HTMLFormElement | null, part: Part): void {
  const field = form?.elements.namedItem(part);
  if (field instanceof HTMLElement) field.focus();
}
