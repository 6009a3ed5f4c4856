import { useId, useState, type FormEvent } from 'react';
import type { PlacedOrder } from '#shared/contract/placed.ts';
import { typedFigure } from '#shared/typedMeasure.ts';
import type { Fault } from '#shared/faults.ts';
import { Link } from 'wouter';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, missing, money, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** Orders that were placed, and what came of them. */
export function PlacedSection() {
  const { data } = useRead('orders.placed', {});
  const note = useMarginNote();
  const [open, setOpen] = useState<number | null>(null);
  if (data === undefined) return null;
  const delivering = data.orders.find(({ entry }) => entry === open);
  return (
    <section className="section" aria-label={words.placedHeading}>
      <h2>{words.placedHeading}</h2>
      {data.orders.length === 0 ? (
        <p className="soft">{words.placedNone}</p>
      ) : (
        <table className="tight">
          <caption className="visually-hidden">{words.placedHeading}</caption>
          <thead>
            <tr>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.offerFields.seller}</th>
              <th scope="col">{words.orderedOn}</th>
              {[words.quantity, words.together, words.arrived, words.toCome].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {data.orders.map((order) => (
              <tr key={order.entry} tabIndex={0} {...note(<MarginPart heading={order.item}><p>{order.sentence}</p></MarginPart>)}>
                <th scope="row">
                  <Link href={`/entries/${order.entry}`}>{order.item}</Link>
                </th>
                <td>{order.seller ?? missing}</td>
                <td>{dayText(order.day)}</td>
                <td className="number">{number(order.quantity)}</td>
                <td className="number">{money(order.price)}</td>
                <td className="number">{number(order.arrived)}</td>
                <td className="number">{number(order.left)}</td>
                <td className="offer-acts">
                  {order.left > 0 ? (
                    <button type="button" className="link" onClick={() => setOpen(order.entry)}>
                      {words.deliver}
                      <span className="visually-hidden">
                        {' '}
                        ({order.item}, {order.seller})
                      </span>
                    </button>
                  ) : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {delivering ? <DeliveryForm key={delivering.entry} order={delivering} onDone={() => setOpen(null)} /> : null}
    </section>
  );
}

function DeliveryForm({ order, onDone }: { readonly order: PlacedOrder; readonly onDone: () => void }) {
  const id = useId();
  const { book } = useBook();
  const { send, busy } = useWrite('orders.deliver');
  const notice = useNotice();
  const [quantity, setQuantity] = useState(String(order.left));
  const [to, setTo] = useState('shed');
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const [bad, setBad] = useState(false);
  const enter = async (event: FormEvent) => {
    event.preventDefault();
    const came = typedFigure(quantity);
    if (came === null || came.unit !== '' || !(came.amount > 0)) return setBad(true);
    setBad(false);
    const answer = await send({ entry: order.entry, quantity: came.amount, to });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    notice.say(answer.value.sentence, { undoGesture: answer.value.gesture });
    onDone();
  };
  return (
    <form className="entry-form" aria-label={words.deliverOf(order.item, order.seller ?? '')} onSubmit={(event) => void enter(event)} onKeyDown={(event) => { if (event.key === 'Escape') onDone(); }} noValidate>
      <h3>{words.deliverOf(order.item, order.seller ?? '')}</h3>
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}came`}>{words.delivered}</label>
          <input id={`${id}came`} type="text" inputMode="decimal" autoFocus value={quantity} aria-invalid={bad} aria-describedby={`${id}came-says`} onChange={(event) => setQuantity(event.target.value)} />
          <span id={`${id}came-says`} className="field-fault">
            {bad ? words.must.number : ''}
          </span>
        </div>
        {order.kind === 'equipment' ? (
          <div className="field">
            <label htmlFor={`${id}to`}>{words.deliverTo}</label>
            <select id={`${id}to`} value={to} onChange={(event) => setTo(event.target.value)}>
              <option value="shed">{words.shedPlace}</option>
              {book?.yards.map(({ code, name }) => (
                <option key={code} value={code}>
                  {code} {name}
                </option>
              ))}
            </select>
          </div>
        ) : null}
      </div>
      {order.kind === 'equipment' ? null : <p className="soft">{words.deliverBees}</p>}
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy}>
          {words.deliverEnter}
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
