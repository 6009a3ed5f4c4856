import { useId, useState } from 'react';
import type { ColonyId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import { useRead } from '../../desk/useDesk.ts';
import { DueNote } from '../../parts/DueNote.tsx';
import { dueWords as words } from '../../parts/dueWords.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayTight } from '../../parts/format.ts';
import { MarginContent, useMarginNote } from '../../parts/Margin.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { RuleList } from '../stock/RulesMargin.tsx';
import '../stock/stock.css';

/** What stands here before all of it is asked for. */
const shownFirst = 6;

/** What the record made due for this colony, and what answered it. */
export function DueSection({ id }: { readonly id: ColonyId }) {
  const heading = useId();
  const { data, fault } = useRead('colony.due', { id });
  const rules = useRead('rules.list', {});
  const [all, setAll] = useState(false);
  const note = useMarginNote();
  const items = data?.items ?? [];
  const shown = all ? items : items.slice(0, shownFirst);
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.heading}</h2>
      <FaultNote fault={fault} />
      {data !== undefined && items.length === 0 ? <p className="soft">{words.none}</p> : null}
      {items.length === 0 ? null : (
        <table className="tight due-table" aria-labelledby={heading}>
          <thead>
            <tr>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.when}</th>
              <th scope="col">{words.state}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((item) => (
              <tr key={`${item.rule} ${item.cause}`} tabIndex={0} {...note(() => <DueNote item={item} />)}>
                <th scope="row">
                  {item.what}
                  <span className="soft small due-reason">{item.reason}</span>
                </th>
                <td className="due-days">{words.range(dayTight(item.earliest), dayTight(item.latest))}</td>
                <td>
                  <State item={item} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {items.length > shown.length ? (
        <button type="button" className="link" onClick={() => setAll(true)}>
          {words.all(items.length)}
        </button>
      ) : null}
      {items.length === 0 ? null : (
        <MarginContent heading={words.marginHeading}>
          <p>{words.marginText}</p>
          <RulesLink room="attention" />
          <details className="rule-parts">
            <summary>{words.rules}</summary>
            <RuleList rules={rules.data?.rules.filter(({ room }) => room === 'attention') ?? []} />
          </details>
        </MarginContent>
      )}
    </section>
  );
}

function State({ item: { status, done, says } }: { readonly item: DueItem }) {
  const word = words.status[status];
  return (
    <>
      <span className={status === 'overdue' ? 'needs' : ''}>{word}</span>
      {done === null ? null : (
        <>
          {done.late > 0 ? <span className="soft">, {words.late(done.late)}</span> : null}
          <span className="soft small due-reason">{words.done(dayTight(done.day), done.sentence)}</span>
        </>
      )}
      {says === null ? null : <span className="soft small due-reason">{says}</span>}
    </>
  );
}
