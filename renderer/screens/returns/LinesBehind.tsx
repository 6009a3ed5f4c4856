import { Link } from 'wouter';
import type { MoneyLineView } from '#shared/contract/returns.ts';
import { dayText, missing, number } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { amountText } from './amountText.ts';
import type { Chosen } from './ReturnsTable.tsx';
import { words } from './words.ts';

/** The entries behind an opened figure, each with its page, and their sum. */
export function LinesBehind({ chosen, lines, onClose }: { readonly chosen: Chosen; readonly lines: readonly MoneyLineView[]; readonly onClose: () => void }) {
  const own = lines.filter(({ side, line, yard }) => side === chosen.side && (chosen.line === null || line === chosen.line) && (chosen.yard === undefined || yard === chosen.yard));
  const { shown, more } = useFirstRows(own, 'entries behind');
  const title = words.behind(chosen.title);
  return (
    <section className="behind" aria-label={title} aria-live="polite">
      <div className="behind-head">
        <h3>{title}</h3>
        <button type="button" className="link no-print" onClick={onClose}>
          {words.close}
        </button>
      </div>
      <div className="scroll behind-list" tabIndex={0} role="group" aria-label={title}>
        <table className="tight">
          <caption className="visually-hidden">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{words.day}</th>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.yard}</th>
              <th scope="col" className="number">
                {words.quantity}
              </th>
              <th scope="col" className="number">
                {words.amount}
              </th>
              <th scope="col">{words.basis}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map(({ entry, day, description, quantity, amount, yard, basis, line }) => (
              <tr key={`${entry} ${line}`}>
                <th scope="row">
                  <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
                </th>
                <td>{description}</td>
                <td>{yard ?? missing}</td>
                <td className="number">{number(quantity, 2)}</td>
                <td className="number">{amountText(amount)}</td>
                <td>{words.basisWord[basis]}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={4}>
                {words.all}
              </th>
              <td className="number">{amountText(own.reduce((sum, { amount }) => sum + amount, 0))}</td>
              <td />
            </tr>
          </tfoot>
        </table>
        {more}
      </div>
    </section>
  );
}
