import { useId, useRef, useState, type FormEvent } from 'react';
import type { LotPage } from '#shared/contract/lots.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { massIn, type MassUnit } from '#shared/units.ts';
import type { Grams } from '#shared/brands.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { focusPart } from '../../parts/focusPart.ts';
import { number } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { restoredParts } from '../../parts/restoredParts.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { asProposed, bestBeforeShown, blankAct, deedOf, deeds, partOfRefusal, partsOf, readAct, type ActFaults, type ActPart, type TypedAct } from './actForm.ts';
import { typedCelsius, typedNumber, typedPercent } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';

const sizes = ['1 lb', '2 lb', '12 oz', '8 oz', '500 g', '250 g', '1 kg'];

interface ActFormProps {
  readonly page: LotPage;
  readonly unit: MassUnit;
  readonly order: DateOrder;
  readonly today: Day;
}

/** What was done with a lot, one deed at a time; what is half typed is there again after the program was closed. */
export function ActForm({ page, unit, order, today }: ActFormProps) {
  const { code } = page.line;
  const keep = useWrite('lots.keep');
  const sell = useWrite('lots.sell');
  const { say } = useNotice();
  const fresh: TypedAct = { ...blankAct, soldSize: sizeText(page.line.jars.find(({ left }) => left > 0)?.size) };
  const [typed, setTyped] = useState<TypedAct>(fresh);
  const [faults, setFaults] = useState<ActFaults>({});
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(`lot ${code}`, (body) => setTyped((before) => restoredParts(body, before)));
  const id = useId();
  const deed = deedOf(typed.deed);
  const months = page.bestBeforeMonths;
  const best = bestBeforeShown(typed, { order, today, months });
  const parts = partsOf(typed);

  const change = (part: ActPart, value: string) => {
    const next = { ...typed, [part]: value };
    setTyped(next);
    setFaults({ ...faults, [part]: undefined });
    setFault(undefined);
    draft.keep(JSON.stringify(next));
  };
  const refused = (answer: Fault) => {
    const part = partOfRefusal(answer.field, typed);
    if (part === null) return setFault(answer);
    setFaults({ [part]: [answer.sentence, answer.mend].filter(Boolean).join(' ') });
    focusPart(form.current, part);
  };
  const write = async (event: FormEvent) => {
    event.preventDefault();
    if (keep.busy || sell.busy) return;
    const read = readAct(typed, { unit, order, today, months });
    setFaults(read.faults ?? {});
    setFault(undefined);
    if (read.faults !== null) return focusPart(form.current, (['day', ...parts] as const).find((part) => read.faults[part] !== undefined));
    if ('sale' in read) {
      const answer = await sell.send({ lot: code, day: read.day, ...read.sale });
      if (!answer.ok) return refused(answer);
      say(answer.value.sentence, { undoGesture: answer.value.gesture });
    } else {
      const answer = await keep.send({ lot: code, day: read.day, act: read.act });
      if (!answer.ok) return refused(answer);
      say(answer.value.sentence);
    }
    draft.drop();
    setTyped({ ...fresh, deed: typed.deed, how: typed.how, day: typed.day });
    focusPart(form.current, 'deed');
  };

  const options: Partial<Record<ActPart, readonly { readonly value: string; readonly text: string }[]>> = {
    how: [{ value: 'index', text: words.hows.index }, { value: 'water', text: words.hows.water }],
    from: [{ value: '', text: words.choose }, ...page.others.map((one) => ({ value: one, text: one }))],
    soldSize: [...[...new Map(page.line.jars.map(({ size, words: jar }) => [sizeText(size), jar]))].map(([value, text]) => ({ value, text })), { value: '', text: `${words.inBulk}, ${unit}` }],
  };
  const help: Partial<Record<ActPart, string>> = { ...words.says, warmth: words.degrees(unit), bestBefore: words.bestSays(typed.bestBefore === asProposed ? Math.round(months) : null, dayFromTyped(best, order)) };
  const label = (part: ActPart) => (['gross', 'tare', 'mass'].includes(part) ? `${words.fields[part]}, ${unit}` : words.fields[part]);
  const field = (part: ActPart) => {
    const common = { id: `${id}${part}`, name: part, value: part === 'bestBefore' ? best : typed[part], 'aria-invalid': faults[part] !== undefined, 'aria-describedby': `${id}${part}-says` };
    const choices = options[part];
    return (
      <div key={part} className="field">
        <label htmlFor={common.id}>{label(part)}</label>
        {choices === undefined ? (
          <input type="text" autoComplete="off" {...common} {...(part === 'size' ? { list: `${id}sizes` } : {})} onChange={(event) => change(part, event.target.value)} />
        ) : (
          <select {...common} onChange={(event) => change(part, event.target.value)}>
            {choices.map(({ value, text }) => (
              <option key={value} value={value}>
                {text}
              </option>
            ))}
          </select>
        )}
        <span id={`${id}${part}-says`} className={faults[part] === undefined ? 'soft small' : 'field-fault'}>
          {faults[part] ?? help[part]}
        </span>
      </div>
    );
  };
  return (
    <form ref={form} className="entry-form honey-form" aria-label={words.did} onSubmit={(event) => void write(event)} noValidate>
      <h2>{words.did}</h2>
      {deed === 'weighed' ? <p className="caution">{words.lifting}</p> : null}
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}deed`}>{words.deed}</label>
          <select id={`${id}deed`} name="deed" value={deed} onChange={(event) => change('deed', event.target.value)}>
            {deeds.map((one) => (
              <option key={one} value={one}>
                {words.deeds[one]}
              </option>
            ))}
          </select>
        </div>
        <DayField label={words.fields.day} name="day" value={typed.day === '' ? today : typed.day} today={today} order={order} fault={faults.day ?? null} onChange={(value) => change('day', value)} />
        {parts.map(field)}
        <datalist id={`${id}sizes`}>
          {sizes.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      </div>
      {deed === 'water' && typed.how === 'index' ? <ReadingSays typed={typed} unit={unit} told={faults.index !== undefined || faults.warmth !== undefined} /> : null}
      {deed === 'poured' ? <BlendSays lot={code} typed={typed} unit={unit} told={faults.from !== undefined || faults.target !== undefined || faults.mass !== undefined} onTake={(mass) => change('mass', mass)} /> : null}
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={keep.busy || sell.busy}>
          {words.keep}
        </button>
      </div>
    </form>
  );
}

/** What a reading comes to, before it is written down; a refusal that stands beside its field already is not said again. */
function ReadingSays({ typed, unit, told }: { readonly typed: TypedAct; readonly unit: MassUnit; readonly told: boolean }) {
  const [reading, celsius] = [typedNumber(typed.index), typedCelsius(typed.warmth, unit)];
  const ready = reading !== null && celsius !== null;
  const { data, fault } = useRead('lots.water', { reading: reading ?? 1.49, celsius: celsius ?? 20 }, { enabled: ready });
  if (!ready) return null;
  return (
    <div role="status">
      {data ? <p className="said">{data.sentence}</p> : null}
      {fault && !told ? <p className="needs">{[fault.sentence, fault.mend].filter(Boolean).join(' ')}</p> : null}
    </div>
  );
}

/** How much of a drier lot brings this one down to a target, by the Pearson square. */
function BlendSays({ lot, typed, unit, told, onTake }: { readonly lot: string; readonly typed: TypedAct; readonly unit: MassUnit; readonly told: boolean; readonly onTake: (mass: string) => void }) {
  const target = typedPercent(typed.target);
  const ready = target !== null && target >= 10 && target <= 40 && typed.from !== '';
  const { data, fault } = useRead('lots.blend', { lot, dry: typed.from === '' ? lot : typed.from, target: ready ? target : 17 }, { enabled: ready });
  if (!ready) return null;
  return (
    <div role="status">
      {data ? (
        <p className="said">
          {data.sentence}{' '}
          {data.enough ? (
            <button type="button" className="link" onClick={() => onTake(number(massIn(data.mass as Grams, unit), 1).replaceAll(',', ''))}>
              {words.take}
            </button>
          ) : null}
        </p>
      ) : null}
      {fault && !told ? <p className="needs">{[fault.sentence, fault.mend].filter(Boolean).join(' ')}</p> : null}
    </div>
  );
}

function sizeText(size: { readonly amount: number; readonly unit: string } | undefined): string {
  return size === undefined ? '' : `${size.amount} ${size.unit}`;
}
