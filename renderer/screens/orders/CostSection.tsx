import type { OrderAnswer } from '#shared/contract/decision.ts';
import { money } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** Whole dollars: these are expectations, not bills. */
const whole = (cents: number) => money(Math.round(cents / 100) * 100);

/** What is paid, and what is reckoned beside it. */
export function CostSection({ answer }: { readonly answer: OrderAnswer }) {
  const note = useMarginNote();
  const { costs } = answer;
  const parts = (Object.keys(words.costParts) as (keyof typeof words.costParts)[]).filter((part) => costs[part] >= 50);
  const paid = new Set<string>(['bees', 'queens', 'equipment']);
  return (
    <section className="section" aria-label={words.costs} {...note(<MarginPart heading={words.costs}><p>{words.costNote}</p></MarginPart>)}>
      <h2>{words.costs}</h2>
      <table className="tight narrow">
        <caption className="visually-hidden">{words.costs}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col" className="number">
              {words.paid}, $
            </th>
            <th scope="col" className="number">
              {words.reckoned}, $
            </th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={part}>
              <th scope="row">{words.costParts[part]}</th>
              <td className="number">{paid.has(part) ? whole(costs[part]) : ''}</td>
              <td className="number">{paid.has(part) ? '' : whole(costs[part])}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr className="totals">
            <th scope="row">{words.costTotal}</th>
            <td className="number">{whole(answer.cash)}</td>
            <td className="number">{whole(answer.total - answer.cash)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}
