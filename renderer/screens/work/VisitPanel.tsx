import { useEffect, useId, useRef } from 'react';
import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import type { PlanChoice, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { turnKey } from '#shared/visitColonies.ts';
import { Entering } from '../../parts/Entering.tsx';
import { dayShort, missing, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { MoveForm } from './MoveForm.tsx';
import { clock, type BoardVisit } from './planWeeks.ts';
import { words } from './words.ts';

interface VisitPanelProps {
  readonly yard: YardRow;
  readonly day: Day;
  readonly visits: readonly BoardVisit[];
  readonly tasks: ReadonlyMap<string, WorkTask>;
  readonly choices: readonly PlanChoice[];
  /** Which colonies each task of each day is about, where that is known. */
  readonly turns: ReadonlyMap<string, WorkTask['colonies']>;
  readonly yards: readonly YardRow[];
  readonly busy: boolean;
  onChoose(choice: Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>): void;
  onLift(choice: PlanChoice): void;
  onMove(to: Day): void;
  onClose(): void;
}

/** One visit: its tasks, their minutes and reasons, and what can be said about it. */
export function VisitPanel({ yard, day, visits, tasks, choices, turns, yards, busy, onChoose, onLift, onMove, onClose }: VisitPanelProps) {
  const id = useId();
  const note = useMarginNote();
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), [yard.id, day]);
  const held = choices.find((one) => one.yard === yard.id && one.day === day && one.task === null && (one.kind === 'pin' || one.kind === 'lock'));
  const work = visits.flatMap(({ visit }) => visit.tasks.map(({ key }) => key)).join(' ');
  // A button that has done its work goes; the keyboard stays with the visit.
  useEffect(() => {
    if (document.activeElement === document.body) head.current?.focus();
  }, [held?.key, work]);
  return (
    <section className="section visit-panel" aria-labelledby={id} onKeyDown={(event) => { if (event.key === 'Escape') onClose(); }}>
      <h2 id={id} ref={head} tabIndex={-1}>
        {words.visit(yard.name, day)}
      </h2>
      {visits.map(({ visit, outing }) => (
        <div key={`${visit.arrive}`}>
          <p>
            {words.visitLine(clock(visit.arrive), clock(visit.leave), clock(outing.leave), clock(outing.back), outing.people)} {words.weather(outing.weather)} {outing.bring.length === 0 ? '' : words.visitLoad(outing.bring)}
          </p>
          <table className="tight" aria-label={words.visit(yard.name, day)}>
            <thead>
              <tr>
                <th scope="col">{words.task}</th>
                <th scope="col" className="number">
                  {words.colonies}
                </th>
                <th scope="col" className="number">
                  {words.minutes}
                </th>
                <th scope="col">{words.by}</th>
                <th scope="col">{words.why}</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {visit.tasks.map((planned) => {
                const task = tasks.get(planned.key);
                const overdue = planned.by === null && task?.overdue === true;
                return (
                  <tr key={planned.key} tabIndex={0} {...note(() => <TaskNote task={task} what={planned.what} colonies={turns.get(turnKey(day, planned.key)) ?? task?.colonies ?? []} />)}>
                    <th scope="row">{planned.what}</th>
                    <td className="number">{words.of(planned.colonies, planned.of)}</td>
                    <td className="number">{number(planned.minutes)}</td>
                    <td className={planned.late > 0 || overdue ? 'needs' : undefined}>
                      {task === undefined ? missing : overdue ? words.since(task.latest) : `${dayShort(planned.by ?? task.latest)}${planned.late > 0 ? words.daysLate(planned.late) : ''}`}
                    </td>
                    <td className="small">{task?.reason ?? ''}</td>
                    <td>
                      <Entering>
                        <button type="button" className="link" disabled={busy} onClick={() => onChoose({ kind: 'drop', day: null, yard: null, task: planned.key })}>
                          {words.drop}
                          <span className="visually-hidden"> ({planned.what})</span>
                        </button>
                      </Entering>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      ))}
      <Entering>
        {held?.kind === 'lock' || visits.some(({ visit }) => visit.held === 'lock') ? null : <MoveForm key={`${yard.id} ${day}`} yard={yard} day={day} yards={yards} busy={busy} onMove={onMove} />}
        <div className="acts">
          {held === undefined ? (
            <>
              <button type="button" disabled={busy} onClick={() => onChoose({ kind: 'pin', day, yard: yard.id, task: null })}>
                {words.pin}
              </button>
              <button type="button" disabled={busy} onClick={() => onChoose({ kind: 'lock', day, yard: yard.id, task: null })}>
                {words.lock}
              </button>
              <button type="button" disabled={busy} onClick={() => onChoose({ kind: 'forbid', day, yard: yard.id, task: null })}>
                {words.forbid}
              </button>
            </>
          ) : (
            <button type="button" disabled={busy} onClick={() => onLift(held)}>
              {words.lift}
            </button>
          )}
          <Link href={`/print/trip/${day}`}>{words.trip}</Link>
          <Link href={`/tonight/${yard.id}/${day}`}>{words.round}</Link>
          <button type="button" className="quiet" onClick={onClose}>
            {words.close}
          </button>
        </div>
      </Entering>
    </section>
  );
}

function TaskNote({ task, what, colonies }: { readonly task: WorkTask | undefined; readonly what: string; readonly colonies: WorkTask['colonies'] }) {
  if (task === undefined) return <MarginPart heading={what}>{null}</MarginPart>;
  const { minutesReason: why } = task;
  return (
    <MarginPart heading={what}>
      <p>{task.reason}</p>
      {colonies.length === 0 ? null : <p>{colonies.slice(0, 30).map(({ label }) => label).join(', ')}{colonies.length > 30 ? words.andMore(colonies.length - 30) : ''}</p>}
      <p>{why.says}</p>
      <p>{words.weather(task.weather)}</p>
      {task.sources.map((source) => (
        <p key={source.label} className="small">
          {source.label}: {String(source.value)}. {source.source} ({source.confidence}).
        </p>
      ))}
    </MarginPart>
  );
}
