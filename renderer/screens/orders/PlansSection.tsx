import { useId, useState, type FormEvent } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { Fault } from '#shared/faults.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, missing, money, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import type { Question } from './readQuestion.ts';
import { words } from './words.ts';

type Review = OutputOf<'plans.list'>['plans'][number];

/** Plans as they were made, each held against what happened. */
export function PlansSection({ question, ready }: { readonly question: Question | null; readonly ready: boolean }) {
  const id = useId();
  const { data } = useRead('plans.list', {});
  const placed = useRead('orders.placed', {});
  const { send, busy } = useWrite('plans.keep');
  const notice = useNotice();
  const note = useMarginNote();
  const [said, setSaid] = useState('');
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  if (data === undefined) return null;
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (question === null || busy) return;
    const answer = await send({ question, note: said.trim() === '' ? null : said.trim() });
    setFault(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    setSaid('');
    notice.say(words.planKept);
  };
  const ordered = (key: string) => placed.data?.orders.filter(({ plan }) => plan === key).length ?? 0;
  return (
    <section className="section" aria-label={words.plans}>
      <h2>{words.plans}</h2>
      {data.plans.length === 0 ? <p className="soft">{words.plansNone}</p> : <p className="said">{data.tally.sentence}</p>}
      {ready ? (
        <form className="one-field" onSubmit={(event) => void keep(event)}>
          <div className="field">
            <label htmlFor={`${id}note`}>{words.planNote}</label>
            <input id={`${id}note`} type="text" value={said} maxLength={400} onChange={(event) => setSaid(event.target.value)} />
          </div>
          <button type="submit" disabled={busy}>
            {words.keepPlan}
          </button>
        </form>
      ) : null}
      <FaultNote fault={fault} />
      {data.plans.length === 0 ? null : (
        <table className="tight plans">
          <caption className="visually-hidden">{words.plans}</caption>
          <thead>
            <tr>
              <th scope="col">{words.planDay}</th>
              <th scope="col" className="number">
                {words.planTarget}
              </th>
              <th scope="col" className="number">
                {words.planRange}
              </th>
              <th scope="col">{words.planOrder}</th>
              <th scope="col">{words.planHow}</th>
            </tr>
          </thead>
          <tbody>
            {data.plans.map((plan) => (
              <tr key={plan.key} tabIndex={0} {...note(<PlanNote plan={plan} />)}>
                <th scope="row">{dayText(plan.day)}</th>
                <td className="number">{plan.target}</td>
                <td className="number">
                  {plan.low}–{plan.high}
                </td>
                <td>
                  {words.planBuy(plan.bought, plan.splits)}
                  {ordered(plan.key) > 0 ? `; ${words.planFrom(ordered(plan.key))}` : ''}
                </td>
                <td>{plan.sentence}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function PlanNote({ plan }: { readonly plan: Review }) {
  return (
    <MarginPart heading={dayText(plan.day)}>
      {plan.note === null ? null : <p>{plan.note}</p>}
      <p>{plan.sentence}</p>
      <p>
        {words.confidence} {percent(plan.confidence)}; {words.costTotal.toLowerCase()} {plan.total === null ? missing : money(Math.round(plan.total / 100) * 100)}
      </p>
    </MarginPart>
  );
}
