import { useId, useRef, useState, type FormEvent } from 'react';
import { dayFromTyped } from '#shared/days.ts';
import { fixedPlaces, type Cells } from '#shared/entryForms.ts';
import { plainText, typedFigure } from '#shared/typedMeasure.ts';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { restoredParts } from '../../parts/restoredParts.ts';
import { useDayAhead } from '../../parts/useDayAhead.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { words } from './words.ts';

type Typed = {
  readonly item: string;
  readonly quantity: string;
  readonly from: string;
  readonly to: string;
  /** As typed; '' is today. */
  readonly day: string;
  readonly note: string;
};
type Part = keyof Typed;
type Faults = Partial<Record<Part, string>>;

const blank: Typed = { item: '', quantity: '', from: 'supplier', to: 'shed', day: '', note: '' };

/** One movement of stock; Enter enters it and begins the next of the same day and way. */
export function MovementForm({ items, places }: { readonly items: readonly string[]; readonly places: readonly string[] }) {
  const { book, today } = useBook();
  const { send, busy } = useWrite('journal.enter');
  const notice = useNotice();
  const question = useItemQuestion();
  const order = book?.dateOrder ?? 'month-first';
  const askAhead = useDayAhead(today, order);
  const [typed, setTyped] = useState<Typed>(blank);
  const [faults, setFaults] = useState<Faults>({});
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft('stock movement', (body) => setTyped(restoredParts(body, blank)));
  const id = useId();

  useOffer('enter a movement', () => focus(form.current, 'item'));

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
    const day = typed.day.trim() === '' ? today : dayFromTyped(typed.day, order);
    const found = { ...readMovement(typed), ...(day === null ? { day: words.must.day } : {}) };
    setFaults(found);
    setFault(undefined);
    const first = firstOf(found);
    if (first !== undefined || day === null) return focus(form.current, first ?? 'day');
    const ahead = askAhead(day);
    if (ahead !== null) {
      setFaults({ day: ahead });
      return focus(form.current, 'day');
    }
    if (await question.asks(typed.item)) return;
    const row: Cells = { date: day, entry: 'stock', item: typed.item.trim(), quantity: quantityText(typed.quantity), from: typed.from, to: typed.to };
    const answer = await send({ rows: [typed.note.trim() === '' ? row : { ...row, note: typed.note.trim() }] });
    if (answer.ok) {
      setTyped({ ...blank, from: typed.from, to: typed.to, day: typed.day });
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
        {today && <DayField label={words.day} name="day" value={typed.day === '' ? today : typed.day} today={today} order={order} fault={faults.day ?? null} onChange={change('day')} />}
        <Field label={words.note} {...field('note')} wide />
      </div>
      <ItemQuestion
        question={question}
        onUse={(item) => {
          question.drop();
          change('item')(item);
          void enter({ ...typed, item });
        }}
        onNew={() => void enter(typed)}
      />
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy || today === undefined}>
          {words.enter}
        </button>
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
    if (row.column === 'date') faults.day = row.sentence;
    else if (row.column !== null && row.column in blank) faults[row.column as Part] = row.sentence;
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
