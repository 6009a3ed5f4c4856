import type { OrderPlan } from '#shared/contract/order.ts';
import { number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** How many to buy for how much certainty. */
export function LadderSection({ plan }: { readonly plan: OrderPlan }) {
  const note = useMarginNote();
  return (
    <section aria-label={words.ladder} {...note(<LadderNote plan={plan} />)}>
      <h2>{words.ladder}</h2>
      <LadderTable plan={plan} />
    </section>
  );
}

export function LadderTable({ plan }: { readonly plan: OrderPlan }) {
  const chosen = (confidence: number) => Math.abs(confidence - plan.confidence) < 1e-9;
  const rows = plan.ladder.some(({ confidence }) => chosen(confidence))
    ? plan.ladder
    : [...plan.ladder, { confidence: plan.confidence, buy: plan.buy }].sort((a, b) => a.confidence - b.confidence);
  return (
    <table className="tight ladder">
      <caption className="visually-hidden">{words.ladder}</caption>
      <thead>
        <tr>
          <th scope="col" className="number">
            {words.ladderSure}
          </th>
          <th scope="col" className="number">
            {words.ladderBuy}
          </th>
          <td />
        </tr>
      </thead>
      <tbody>
        {rows.map(({ confidence, buy }) => (
          <tr key={confidence} className={chosen(confidence) ? 'ladder-chosen' : undefined}>
            <th scope="row" className="number">
              {number(confidence * 100, 1)}
            </th>
            <td className="number">{number(buy)}</td>
            <td className="soft">{chosen(confidence) ? words.ladderNow : ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function LadderNote({ plan }: { readonly plan: OrderPlan }) {
  return (
    <MarginPart heading={words.ladder}>
      <p>{words.ladderNote}</p>
      <p>{words.short(percent(plan.chanceShort), percent(plan.chanceShortBuyingNone))}</p>
    </MarginPart>
  );
}
