import { useState } from 'react';
import type { OrderAnswer } from '#shared/contract/decision.ts';
import { Entering } from '../../parts/Entering.tsx';
import { dayText, missing, money, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { bySeller, type SellerLine, type SellerOrder } from './bySeller.ts';
import { PlaceForm } from './PlaceForm.tsx';
import { words } from './words.ts';

/** The order, seller by seller, and its turning into entries. */
export function SellerSection({ answer }: { readonly answer: OrderAnswer }) {
  const orders = bySeller(answer);
  return (
    <section className="section" aria-label={words.order}>
      <h2>{words.order}</h2>
      {orders.length === 0 ? <p>{words.orderNone}</p> : orders.map((order) => <Seller key={order.seller ?? ''} order={order} />)}
    </section>
  );
}

function Seller({ order }: { readonly order: SellerOrder }) {
  const note = useMarginNote();
  const [placing, setPlacing] = useState(false);
  const { seller, lines } = order;
  const name = seller ?? words.nobody;
  const delivered = lines.some(({ delivery }) => delivery[0] !== null || delivery[1] !== null);
  return (
    <div className="seller">
      <h3>{name}</h3>
      {seller === null ? <p className="soft">{words.nobodyText}</p> : null}
      <table className="tight">
        <caption className="visually-hidden">
          {words.order}: {name}
        </caption>
        <thead>
          <tr>
            <th scope="col">{words.what}</th>
            <th scope="col" className="number">
              {words.quantity}
            </th>
            <th scope="col" className="number">
              {words.each}
            </th>
            <th scope="col" className="number">
              {words.together}
            </th>
            <th scope="col" className="number">
              {words.deposit}
            </th>
            <th scope="col">{words.orderBy}</th>
            {delivered ? <th scope="col">{words.delivery}</th> : null}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.offer} tabIndex={0} {...note(<LineNote line={line} />)}>
              <th scope="row">{line.words}</th>
              <td className="number">{quantityText(line)}</td>
              <td className="number">{money(line.each)}</td>
              <td className="number">{money(line.total)}</td>
              <td className="number">{money(line.deposit)}</td>
              <td>{dayText(line.orderBy)}</td>
              {delivered ? <td>{deliveryText(line.delivery)}</td> : null}
            </tr>
          ))}
        </tbody>
        {lines.length > 1 ? (
          <tfoot>
            <tr className="totals">
              <th scope="row" colSpan={3}>
                {words.sum}
              </th>
              <td className="number">{money(order.total)}</td>
              <td className="number">{order.deposit === 0 ? missing : money(order.deposit)}</td>
              <td colSpan={delivered ? 2 : 1} />
            </tr>
          </tfoot>
        ) : null}
      </table>
      {lines.length === 1 && lines[0] ? <p className="soft small seller-reason">{lines[0].reason}</p> : null}
      {seller === null ? null : (
        <Entering>
          {placing ? (
            <PlaceForm seller={seller} lines={lines} onDone={() => setPlacing(false)} />
          ) : (
            <p className="acts">
              <button type="button" onClick={() => setPlacing(true)} {...note(<MarginPart heading={words.place}><p>{words.placeText}</p></MarginPart>)}>
                {words.place}
                <span className="visually-hidden"> ({seller})</span>
              </button>
            </p>
          )}
        </Entering>
      )}
    </div>
  );
}

/** `21`, or of packs `6 packs of 5`. */
export function quantityText({ quantity, packSize }: Pick<SellerLine, 'quantity' | 'packSize'>): string {
  return packSize === 1 ? number(quantity) : words.packsOf(number(quantity), number(packSize));
}

export function deliveryText([from, until]: SellerLine['delivery']): string {
  if (from === null && until === null) return missing;
  return from !== null && until !== null ? words.between(dayText(from), dayText(until)) : dayText(from ?? until);
}

function LineNote({ line }: { readonly line: SellerLine }) {
  return (
    <MarginPart heading={line.words}>
      <p>{line.reason}</p>
    </MarginPart>
  );
}
