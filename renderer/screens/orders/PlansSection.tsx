import { Fragment, useId, useState, type FormEvent } from 'react';
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
  const [open, setOpen] = useState<string | null>(null);
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
              <Fragment key={plan.key}>
                <tr tabIndex={0} {...note(<PlanNote plan={plan} />)}>
                  <th scope="row">{dayText(plan.day)}</th>
                  <td className="number">{plan.target}</td>
                  <td className="number">
                    {plan.low}–{plan.high}
                  </td>
                  <td>
                    {words.planBuy(plan.bought, plan.splits)}
                    {ordered(plan.key) > 0 ? `; ${words.planFrom(ordered(plan.key))}` : ''}
                  </td>
                  <td>
                    {plan.sentence}{' '}
                    <button type="button" className="link" aria-expanded={open === plan.key} onClick={() => setOpen(open === plan.key ? null : plan.key)}>
                      {words.planLines}
                      <span className="visually-hidden"> ({dayText(plan.day)})</span>
                    </button>
                  </td>
                </tr>
                {open === plan.key ? (
                  <tr className="plan-open">
                    <td colSpan={5}>
                      <PlanLines plan={plan} />
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      {data.tally.springs.length === 0 ? null : <Calibration tally={data.tally} />}
    </section>
  );
}

/** What the plan said beside what happened. */
function PlanLines({ plan }: { readonly plan: Review }) {
  return (
    <table className="tight">
      <caption className="visually-hidden">{words.planLineOf(dayText(plan.day))}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">{words.planPlanned}</th>
          <th scope="col">{words.planHappened}</th>
          <th scope="col">{words.planSays}</th>
        </tr>
      </thead>
      <tbody>
        {plan.lines.map((line) => (
          <tr key={line.what}>
            <th scope="row">{words.planWhat[line.what]}</th>
            <td>{line.planned}</td>
            <td>{line.happened ?? missing}</td>
            <td className={line.held === false ? 'needs' : undefined}>{line.sentence}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Spring by spring, whether the survivors lay inside the range, and the tally as it ran. */
function Calibration({ tally }: { readonly tally: OutputOf<'plans.list'>['tally'] }) {
  return (
    <>
      <h3>{words.calibration}</h3>
      <table className="tight">
        <caption className="visually-hidden">{words.calibration}</caption>
        <thead>
          <tr>
            <th scope="col">{words.calibrationSpring}</th>
            <th scope="col" className="number">
              {words.calibrationRange}
            </th>
            <th scope="col" className="number">
              {words.calibrationLived}
            </th>
            <th scope="col">{words.calibrationInside}</th>
            <th scope="col" className="number">
              {words.calibrationRunning}
            </th>
          </tr>
        </thead>
        <tbody>
          {tally.springs.map((one) => (
            <tr key={one.spring}>
              <th scope="row">{one.spring.slice(0, 4)}</th>
              <td className="number">
                {one.low}–{one.high}
              </td>
              <td className="number">{words.calibrationOf(one.survivors, one.living)}</td>
              <td>{one.inside ? words.calibrationYes : words.calibrationNo}</td>
              <td className="number">{words.calibrationOf(one.runningInside, one.runningOver)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function PlanNote({ plan }: { readonly plan: Review }) {
  return (
    <MarginPart heading={dayText(plan.day)}>
      {plan.note === null ? null : <p>{plan.note}</p>}
      <p>{plan.sentence}</p>
      <p>{words.planSure(percent(plan.confidence), plan.total === null ? missing : money(Math.round(plan.total / 100) * 100))}</p>
    </MarginPart>
  );
}
