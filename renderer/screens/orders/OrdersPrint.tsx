import type { OrderAnswer, OrderDecision } from '#shared/contract/decision.ts';
import { yearOf } from '#shared/days.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { dayText, missing, money, number, percent } from '../../parts/format.ts';
import { PaperPage } from '../../parts/PaperPage.tsx';
import { bySeller, type SellerOrder } from './bySeller.ts';
import { packsText } from './EquipmentSection.tsx';
import './orders.css';
import { deliveryText, quantityText } from './SellerSection.tsx';
import { useQuestion } from './useQuestion.ts';
import { words } from './words.ts';

/** The order on paper: a list for each seller to send, and the build list for the shed. */
export function OrdersPrint() {
  const { book } = useBook();
  const { decision, fault } = useQuestion(book?.path ?? '');
  const title = decision ? words.printTitle(String(yearOf(decision.spring))) : words.title;
  useOffer('print the order', decision ? () => window.print() : null);
  return (
    <PaperPage title={title} print={words.printButton} ready={decision !== undefined && decision !== null} backTo="/orders" back={words.printBack} fault={fault}>
      {decision && book ? <OrderSheets decision={decision} book={book.name} /> : null}
    </PaperPage>
  );
}

function OrderSheets({ decision, book }: { readonly decision: OrderDecision; readonly book: string }) {
  const { answer } = decision;
  const line = words.printLine(book, dayText(decision.asOf));
  const orders = answer === null ? [] : bySeller(answer);
  return (
    <article>
      <h1>{words.printTitle(String(yearOf(decision.spring)))}</h1>
      <p>{line}</p>
      <p>{words.printPlan(decision.reached ?? decision.target, percent(decision.confidence, 1), words.framesOf[decision.question.hiveFrames === 8 ? '8' : '10'])}</p>
      <p className="paper-sentence">{decision.sentences.join(' ')}</p>
      {[...decision.limits.map(({ sentence }) => sentence), ...decision.cautions].map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
      {orders.length === 0 ? <p>{words.printNothing}</p> : orders.map((order) => <SellerSheet key={order.seller ?? ''} order={order} line={line} />)}
      {answer === null ? null : <BuildList answer={answer} line={line} />}
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

function SellerSheet({ order, line }: { readonly order: SellerOrder; readonly line: string }) {
  const heads = [words.quantity, words.each, words.together, words.deposit];
  return (
    <section className="paper-seller">
      <h2>{words.printList(order.seller ?? words.nobody)}</h2>
      <table>
        <thead>
          <RunningHead line={line} columns={8} />
          <tr>
            <th scope="col">{words.what}</th>
            {heads.map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            <th scope="col">{words.orderBy}</th>
            <th scope="col">{words.delivery}</th>
            <th scope="col">{words.printDone}</th>
          </tr>
        </thead>
        <tbody>
          {order.lines.map((one) => (
            <tr key={one.offer}>
              <th scope="row">{one.words}</th>
              <td className="number">{quantityText(one)}</td>
              <td className="number">{money(one.each)}</td>
              <td className="number">{money(one.total)}</td>
              <td className="number">{money(one.deposit)}</td>
              <td>{dayText(one.orderBy)}</td>
              <td>{deliveryText(one.delivery)}</td>
              <td className="paper-write" />
            </tr>
          ))}
        </tbody>
        <tbody className="totals">
          <tr>
            <th scope="row" colSpan={3}>
              {words.sum}
            </th>
            <td className="number">{money(order.total)}</td>
            <td className="number">{order.deposit === 0 ? missing : money(order.deposit)}</td>
            <td colSpan={3} />
          </tr>
        </tbody>
      </table>
    </section>
  );
}

function BuildList({ answer, line }: { readonly answer: OrderAnswer; readonly line: string }) {
  const heads = [words.need, words.have, words.fromDead, words.toMend, words.short];
  return (
    <section className="paper-build">
      <h2>{words.printBuild}</h2>
      <table>
        <thead>
          <RunningHead line={line} columns={8} />
          <tr>
            <th scope="col">{words.item}</th>
            {heads.map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            <th scope="col">{words.packs}</th>
            <th scope="col">{words.printBuilt}</th>
          </tr>
        </thead>
        <tbody>
          {answer.equipment.map((part) => (
            <tr key={part.item}>
              <th scope="row">{part.item}</th>
              <td className="number">{number(part.need)}</td>
              <td className="number">{number(part.have)}</td>
              <td className="number">{number(part.fromDeadOuts)}</td>
              <td className="number">{number(part.toMend)}</td>
              <td className="number">
                <strong>{number(part.order)}</strong>
              </td>
              <td>{packsText(part)}</td>
              <td className="paper-write" />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
