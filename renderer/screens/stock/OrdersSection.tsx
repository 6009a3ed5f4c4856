import type { OrderPlan } from '#shared/contract/order.ts';
import { dayText, missing, money, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

export type Order = OrderPlan['orders'][number];

/** Bees to order: how many, of whom, by when, at what price, and why. */
export function OrdersSection({ plan }: { readonly plan: OrderPlan }) {
  return (
    <section className="section" aria-label={words.orders}>
      <h2>{words.orders}</h2>
      {plan.orders.length === 0 ? <p>{words.ordersNone}</p> : <OrdersTable orders={plan.orders} />}
    </section>
  );
}

function OrdersTable({ orders }: { readonly orders: readonly Order[] }) {
  const note = useMarginNote();
  const sum = orderSum(orders);
  return (
    <table>
      <caption className="visually-hidden">{words.orders}</caption>
      <thead>
        <tr>
          <th scope="col">{words.what}</th>
          <th scope="col" className="number">
            {words.quantity}
          </th>
          <th scope="col">{words.seller}</th>
          <th scope="col">{words.orderBy}</th>
          <th scope="col">{words.delivery}</th>
          <th scope="col" className="number">
            {words.each}
          </th>
          <th scope="col" className="number">
            {words.total}
          </th>
        </tr>
      </thead>
      {orders.map((order) => (
        <tbody key={`${order.what} ${order.orderBy}`} tabIndex={0} className="order-row" {...note(<OrderNote order={order} />)}>
          <tr>
            <th scope="row">{order.what}</th>
            <td className="number">{number(order.quantity)}</td>
            <td>{order.seller ?? missing}</td>
            <td>
              <OrderBy order={order} />
            </td>
            <td>{order.delivery === '' ? missing : order.delivery}</td>
            <td className="number">{money(order.priceEach)}</td>
            <td className="number">{money(order.priceEach === null ? null : order.priceEach * order.quantity)}</td>
          </tr>
          <tr className="order-reason">
            <td colSpan={7}>{order.reason}</td>
          </tr>
        </tbody>
      ))}
      {sum.known > 0 && orders.length > 1 && (
        <tfoot>
          <tr>
            <th scope="row" colSpan={6}>
              {sum.known === orders.length ? words.sum : words.sumPart}
            </th>
            <td className="number">{money(sum.minor)}</td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

/** The day to order by; a past one says so in a word. */
export function OrderBy({ order }: { readonly order: Order }) {
  return order.late ? (
    <span className="needs">
      {dayText(order.orderBy)}, {words.late}
    </span>
  ) : (
    dayText(order.orderBy)
  );
}

/** Sum of the orders whose price is in the book, in minor units, and how many those are. */
export function orderSum(orders: readonly Order[]): { minor: number; known: number } {
  const priced = orders.filter((order) => order.priceEach !== null);
  return { minor: priced.reduce((sum, order) => sum + (order.priceEach ?? 0) * order.quantity, 0), known: priced.length };
}

function OrderNote({ order }: { readonly order: Order }) {
  return (
    <MarginPart heading={order.what}>
      <p>{order.reason}</p>
      {order.late && <p className="needs">{words.lateText}</p>}
      {order.seller === null && <p>{words.noSeller}</p>}
      <p>{order.priceEach === null ? words.noPrice : order.priceFrom === null ? '' : words.priceFrom(order.priceFrom)}</p>
    </MarginPart>
  );
}
