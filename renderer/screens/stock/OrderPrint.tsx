import { useEffect } from 'react';
import { Link } from 'wouter';
import type { OrderPlan } from '#shared/contract/order.ts';
import { yearOf } from '#shared/days.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, missing, money, number, percent } from '../../parts/format.ts';
import { useUnited } from '../losses/useUnited.ts';
import { OrderBy, orderSum } from './OrdersSection.tsx';
import './stock.css';
import { usePlan } from './usePlan.ts';
import { words } from './words.ts';

/** The order on paper: plain blocks, heads that repeat on every sheet, room to write. */
export function OrderPrint() {
  const { book } = useBook();
  const kept = useRead('order.kept', {});
  const [united] = useUnited();
  const { data: plan, fault } = usePlan(kept.data, united);
  // The title is the file's name when the page is printed into one.
  const title = plan ? words.printTitle(String(yearOf(plan.spring))) : words.orders;
  useEffect(() => {
    document.title = title;
  }, [title]);
  useOffer('print the order', plan ? () => window.print() : null);
  return (
    <main className="paper-page">
      <p className="paper-acts no-print">
        <button type="button" className="main" disabled={!plan} onClick={() => window.print()}>
          {words.printButton}
        </button>
        <Link href="/stock">{words.printBack}</Link>
      </p>
      <FaultNote fault={kept.fault ?? fault} />
      {plan && book && <OrderSheet plan={plan} book={book.name} />}
    </main>
  );
}

function OrderSheet({ plan, book }: { readonly plan: OrderPlan; readonly book: string }) {
  const line = words.printLine(book, dayText(plan.asOf));
  const parts = plan.equipment.filter(({ order }) => order > 0);
  return (
    <article>
      <h1>{words.printTitle(String(yearOf(plan.spring)))}</h1>
      <p>{line}</p>
      <p>{words.printPlan(plan.target, percent(plan.confidence, 1), words.framesOf[plan.hiveFrames])}</p>
      <p className="paper-sentence">{plan.sentences.join(' ')}</p>
      {plan.cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
      <h2>{words.printBees}</h2>
      {plan.orders.length === 0 ? <p>{words.printNothing}</p> : <BeesTable plan={plan} line={line} />}
      <h2>{words.printEquipment}</h2>
      {parts.length === 0 ? <p>{words.printNothing}</p> : <PartsTable parts={parts} line={line} />}
      <h2>{words.printNotes}</h2>
      <div className="paper-room" />
    </article>
  );
}

/** Names the book and the day at the head of the table, so that they stand on every sheet it runs over. */
function RunningHead({ line, columns }: { readonly line: string; readonly columns: number }) {
  return (
    <tr className="paper-running">
      <td colSpan={columns}>{line}</td>
    </tr>
  );
}

function BeesTable({ plan, line }: { readonly plan: OrderPlan; readonly line: string }) {
  const sum = orderSum(plan.orders);
  return (
    <table>
      <thead>
        <RunningHead line={line} columns={7} />
        <tr>
          <th scope="col">{words.what}</th>
          <th scope="col" className="number">
            {words.quantity}
          </th>
          <th scope="col">{words.seller}</th>
          <th scope="col">{words.orderBy}</th>
          <th scope="col">{words.delivery}</th>
          <th scope="col" className="number">
            {words.total}
          </th>
          <th scope="col">{words.ordered}</th>
        </tr>
      </thead>
      {plan.orders.map((order) => (
        <tbody key={`${order.what} ${order.orderBy}`}>
          <tr>
            <th scope="row">{order.what}</th>
            <td className="number">{number(order.quantity)}</td>
            <td>{order.seller ?? missing}</td>
            <td>
              <OrderBy order={order} />
            </td>
            <td>{order.delivery === '' ? missing : order.delivery}</td>
            <td className="number">{money(order.priceEach === null ? null : order.priceEach * order.quantity)}</td>
            <td className="paper-write" />
          </tr>
          <tr className="order-reason">
            <td colSpan={7}>{order.reason}</td>
          </tr>
        </tbody>
      ))}
      {sum.known > 0 && plan.orders.length > 1 && (
        <tbody className="totals">
          <tr>
            <th scope="row" colSpan={5}>
              {sum.known === plan.orders.length ? words.sum : words.sumPart}
            </th>
            <td className="number">{money(sum.minor)}</td>
            <td />
          </tr>
        </tbody>
      )}
    </table>
  );
}

function PartsTable({ parts, line }: { readonly parts: OrderPlan['equipment']; readonly line: string }) {
  return (
    <table>
      <thead>
        <RunningHead line={line} columns={6} />
        <tr>
          <th scope="col">{words.item}</th>
          <th scope="col" className="number">
            {words.need}
          </th>
          <th scope="col" className="number">
            {words.have}
          </th>
          <th scope="col" className="number">
            {words.order}
          </th>
          <th scope="col">{words.printReason}</th>
          <th scope="col">{words.ordered}</th>
        </tr>
      </thead>
      <tbody>
        {parts.map((part) => (
          <tr key={part.item}>
            <th scope="row">{part.item}</th>
            <td className="number">{number(part.need)}</td>
            <td className="number">{number(part.have)}</td>
            <td className="number">
              <strong>{number(part.order)}</strong>
            </td>
            <td>{part.reason}</td>
            <td className="paper-write" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
