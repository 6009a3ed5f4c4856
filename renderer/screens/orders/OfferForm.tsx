import { useEffect, useId, useRef, useState, type FormEvent } from 'react';
import type { ListedOffer } from '#shared/contract/offers.ts';
import type { Fault } from '#shared/faults.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { focusPart } from '../../parts/focusPart.ts';
import { dayText } from '../../parts/format.ts';
import { ItemQuestion } from '../../parts/ItemQuestion.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { restoredParts } from '../../parts/restoredParts.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { useItemQuestion } from '../../parts/useItemQuestion.ts';
import { blankOffer, offerKinds, partOf, readOffer, typedOffer, type OfferFaults, type OfferPart, type TypedOffer } from './readOffer.ts';
import { words } from './words.ts';

/** An offer typed or changed; Enter keeps it, and what is half typed is there again after the program was closed. */
export function OfferForm({ offer, onDone }: { readonly offer: ListedOffer | null; readonly onDone: () => void }) {
  const id = useId();
  const { book, today } = useBook();
  const { data } = useRead('offers.list', {});
  const { send, busy } = useWrite('offers.keep');
  const notice = useNotice();
  const itemQuestion = useItemQuestion();
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState<TypedOffer>(offer === null ? blankOffer : typedOffer(offer));
  const [faults, setFaults] = useState<OfferFaults>({});
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const [free, setFree] = useState(false);
  const [past, setPast] = useState<string | null>(null);
  const draft = useDraft(`offer ${offer?.key ?? 'new'}`, (body) => setTyped((before) => restoredParts(body, before)));
  useEffect(() => focusPart(form.current, 'seller'), []);

  const change = (part: OfferPart, value: string) => {
    const next = { ...typed, [part]: value };
    setTyped(next);
    setFaults({ ...faults, [part]: undefined });
    setPast(null);
    if (part === 'item' || part === 'kind') itemQuestion.drop();
    draft.keep(JSON.stringify(next));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void keep(typed);
  };
  const keep = async (typed: TypedOffer) => {
    if (book === undefined || today === undefined || busy) return;
    const read = readOffer(typed, book.dateOrder);
    setFaults(read.faults);
    setFault(undefined);
    if (read.offer === null) return focusPart(form.current, (Object.keys(blankOffer) as OfferPart[]).find((part) => read.faults[part] !== undefined));
    // A day that is past is asked about once: a second Enter keeps it as it is.
    if (read.offer.orderBy < today && past !== read.offer.orderBy) {
      setPast(read.offer.orderBy);
      setFaults({ orderBy: words.offerPast(dayText(read.offer.orderBy)) });
      return focusPart(form.current, 'orderBy');
    }
    if (typed.kind === 'equipment' && (await itemQuestion.asks(typed.item))) return;
    const answer = await send({ key: offer?.key ?? null, offer: read.offer, free });
    if (!answer.ok) {
      const part = partOf(answer.field);
      if (part === null) setFault(answer);
      else setFaults({ [part]: [answer.sentence, answer.mend].filter(Boolean).join(' ') });
      return focusPart(form.current, part ?? 'seller');
    }
    draft.drop();
    notice.say(words.offerKept(answer.value.offer.seller, answer.value.offer.words));
    onDone();
  };

  const label = words.offerFields;
  const sellers = [...new Set(data?.offers.map(({ seller }) => seller) ?? [])];
  const field = (part: OfferPart, more: { readonly label?: string; readonly list?: readonly string[]; readonly wide?: boolean } = {}) => (
    <div className={more.wide ? 'field wide' : 'field'}>
      <label htmlFor={`${id}${part}`}>{more.label ?? label[part]}</label>
      <input id={`${id}${part}`} name={part} type="text" autoComplete="off" value={typed[part]} aria-invalid={faults[part] !== undefined} aria-describedby={`${id}${part}-says`} {...(more.list ? { list: `${id}${part}-list` } : {})} onChange={(event) => change(part, event.target.value)} />
      {more.list ? (
        <datalist id={`${id}${part}-list`}>
          {more.list.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      ) : null}
      <span id={`${id}${part}-says`} className="field-fault">
        {faults[part]}
      </span>
    </div>
  );
  return (
    <form ref={form} className="entry-form" aria-label={offer === null ? words.offerNew : `${words.offerChange}: ${offer.seller}, ${offer.words}`} onSubmit={submit} onKeyDown={(event) => { if (event.key === 'Escape') onDone(); }} noValidate>
      <div className="fields">
        {field('seller', { list: sellers })}
        <div className="field">
          <label htmlFor={`${id}kind`}>{label.kind}</label>
          <select id={`${id}kind`} name="kind" value={typed.kind} onChange={(event) => change('kind', event.target.value)}>
            {offerKinds.map((kind) => (
              <option key={kind} value={kind}>
                {words.kinds[kind]}
              </option>
            ))}
          </select>
        </div>
        {typed.kind === 'package' ? field('pounds') : null}
        {typed.kind === 'nuc' ? field('frames') : null}
        {typed.kind === 'equipment' ? field('item') : null}
        {typed.kind === 'equipment' ? field('packSize') : null}
        {field('each', { label: typed.kind === 'equipment' ? words.packPrice : label.each })}
        {field('from2')}
        {field('each2')}
        {typed.from2.trim() === '' ? null : field('from3')}
        {typed.from2.trim() === '' ? null : field('each3')}
        {field('orderBy')}
        {field('deliveryFrom')}
        {field('deliveryUntil')}
        {field('least')}
        {field('most')}
        {field('deposit')}
        {field('note', { wide: true })}
      </div>
      {Number(typed.each.replace(',', '.')) === 0 && typed.each.trim() !== '' ? (
        <p className="ticks">
          <label>
            <input type="checkbox" checked={free} onChange={(event) => setFree(event.target.checked)} />
            {words.free}
          </label>
        </p>
      ) : null}
      <ItemQuestion
        question={itemQuestion}
        onUse={(item) => {
          change('item', item);
          void keep({ ...typed, item });
        }}
        onNew={() => void keep(typed)}
      />
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy}>
          {words.keepOffer}
        </button>
        <button type="button" className="quiet" onClick={() => { draft.drop(); onDone(); }}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
