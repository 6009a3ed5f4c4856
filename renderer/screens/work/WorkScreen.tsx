import { useState } from 'react';
import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import { addDays, type Day } from '#shared/days.ts';
import { useBook } from '../../desk/useBook.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { PlanBoard } from './PlanBoard.tsx';
import { mondayOf, visitsOn, weeksOf } from './planWeeks.ts';
import { useWorkPlan, type WorkPlanHere } from './useWorkPlan.ts';
import { VisitPanel } from './VisitPanel.tsx';
import { MonthView, WeekView } from './WeekView.tsx';
import { WorkNav } from './WorkNav.tsx';
import './work.css';
import { words } from './words.ts';

type View = keyof typeof words.view;
const views = Object.keys(words.view) as View[];

/** The plan of the work: a board to move visits on, its weeks and its months, and what does not fit. */
export function WorkScreen() {
  const here = useWorkPlan();
  const { book, today } = useBook();
  const { say } = useNotice();
  const { plan, progress, busy } = here;
  const running = progress?.state === 'running';
  const keep = async () => {
    if (await here.keep()) say(words.keptNow);
  };
  const action =
    plan === null || here.isKept ? (
      <button type="button" className={plan === null ? 'main' : undefined} disabled={busy || here.loading} onClick={() => void here.replan()}>
        {plan === null ? words.make : words.again}
      </button>
    ) : (
      <button type="button" className="main" disabled={busy} onClick={() => void keep()}>
        {words.keep}
      </button>
    );
  return (
    <Page title={words.title} line={words.line} action={<Entering>{action}</Entering>}>
      <WorkNav />
      <FaultNote fault={here.fault} />
      {here.stale === null ? null : <p className="needs">{here.stale}</p>}
      {here.loading || book === undefined || today === undefined ? <p className="soft">{words.loading}</p> : null}
      {!here.loading && plan === null ? <Empty sentence={words.empty} action={<p><Link href="/work/hours">{words.hoursFirst}</Link></p>} /> : null}
      {plan === null || progress === undefined ? null : (
        <div className="plan-state" role="status">
          <p className="sentence">
            {words.summary(plan)} {here.isKept && here.kept !== null ? words.kept(here.kept.made) : here.kept === null ? words.notKeptFirst : words.notKept}
          </p>
          <p className="soft">
            {running ? words.running : progress.says} {running ? words.seconds(progress.seconds) : ''} {words.gap(plan.gap)}{' '}
            {plan.changes === null ? '' : words.changes(plan.changes.same, plan.changes.moved)}{' '}
            {running ? (
              <button type="button" className="link" onClick={() => void here.stop()}>
                {words.stop}
              </button>
            ) : here.isKept ? null : (
              <Entering>
                <button type="button" className="link" disabled={busy} onClick={() => void here.replan()}>
                  {words.again}
                </button>
              </Entering>
            )}
          </p>
          {plan.remarks.map((remark) => (
            <p key={remark} className="soft">
              {remark}
            </p>
          ))}
        </div>
      )}
      {plan === null || book === undefined || today === undefined ? null : <PlanBody key={book.path} here={here} yards={book.yards} today={today} />}
      <MarginContent heading={words.marginPlan}>
        <p>{words.marginPlanText}</p>
      </MarginContent>
      <MarginContent heading={words.marginHeld}>
        <p>{words.marginHeldText}</p>
        <p>{words.caution}</p>
      </MarginContent>
    </Page>
  );
}

function PlanBody({ here, yards: all, today }: { readonly here: WorkPlanHere; readonly yards: readonly YardRow[]; readonly today: Day }) {
  const { say } = useNotice();
  const { plan, choices, tasks, busy } = here;
  const [view, setView] = useState<View>('board');
  const [monday, setMonday] = useState<Day | null>(null);
  const [opened, setOpened] = useState<{ yard: YardRow; day: Day } | null>(null);
  if (plan === null) return null;
  const weeks = weeksOf(plan);
  const firstTrip = plan.outings.find(({ day }) => day >= today)?.day ?? plan.from;
  const shown = monday !== null && weeks.includes(monday) ? monday : mondayOf(firstTrip);
  // A yard without a living bee and without a visit has no place on the board.
  const yards = all.filter(({ id, living }) => living > 0 || plan.outings.some(({ visits }) => visits.some((visit) => visit.yard === id)));
  const onOpen = (yard: YardRow, day: Day) => setOpened({ yard, day });
  const close = () => {
    setOpened(null);
    requestAnimationFrame(() => document.querySelector<HTMLElement>('.board td[tabindex="0"]')?.focus());
  };
  const move = async (yard: YardRow, from: Day, to: Day) => {
    say(words.moving(yard.name, from, to));
    if (await here.move(yard.id, from, to)) setOpened(null);
  };
  const visits = opened === null ? [] : visitsOn(plan, opened.day, opened.yard.id);
  const week = plan.weeks.find(({ from }) => from >= shown && from <= addDays(shown, 6));
  const at = weeks.indexOf(shown);
  return (
    <>
      <Troubles here={here} yards={all} />
      <div className="choices">
        <span role="radiogroup" aria-label={words.views} className="view-choice">
          {views.map((one) => (
            <label key={one} className="inline-choice">
              <input type="radio" name="view" checked={view === one} onChange={() => setView(one)} /> {words.view[one]}
            </label>
          ))}
        </span>
        {view === 'month' ? null : (
          <span className="week-choice">
            <button type="button" className="quiet" disabled={at <= 0} aria-label={words.earlier} onClick={() => setMonday(weeks[at - 1] ?? shown)}>
              ←
            </button>
            <span aria-live="polite">{words.weekOf(shown, addDays(shown, 6))}</span>
            <button type="button" className="quiet" disabled={at >= weeks.length - 1} aria-label={words.later} onClick={() => setMonday(weeks[at + 1] ?? shown)}>
              →
            </button>
          </span>
        )}
        {week === undefined || view === 'month' ? null : (
          <span className="push">
            {words.weekLoad(week.out, week.have)} {week.out > week.have ? <span className="needs">{words.weekOver(week.out - week.have)}</span> : null}
          </span>
        )}
      </div>
      {view === 'board' ? (
        <>
          <PlanBoard plan={plan} yards={yards} today={today} monday={shown} busy={busy} opened={opened === null ? null : { yard: opened.yard.id, day: opened.day }} onMonday={setMonday} onOpen={onOpen} onMove={(yard, from, to) => void move(yard, from, to)} />
          <p className="soft small">{words.boardHelp}</p>
        </>
      ) : view === 'week' ? (
        <WeekView plan={plan} yards={all} monday={shown} onOpen={onOpen} />
      ) : (
        <MonthView plan={plan} yards={all} today={today} onWeek={(one) => { setMonday(one); setView('board'); }} />
      )}
      {opened === null || visits.length === 0 ? null : (
        <VisitPanel yard={opened.yard} day={opened.day} visits={visits} tasks={tasks} choices={choices} busy={busy} onChoose={(choice) => void here.choose(choice)} onLift={(key) => void here.lift(key)} onClose={close} />
      )}
      <Chosen here={here} yards={all} />
    </>
  );
}

function Troubles({ here: { plan }, yards }: { readonly here: WorkPlanHere; readonly yards: readonly YardRow[] }) {
  const troubles = plan?.troubles ?? [];
  if (troubles.length === 0) return <p className="soft">{words.troublesNone}</p>;
  return (
    <section className="troubles" aria-label={words.troubles}>
      <h2>{words.troubles}</h2>
      <ul>
        {troubles.map((trouble) => (
          <li key={`${trouble.key} ${trouble.kind}`}>
            <span className="needs">
              {trouble.yard === null ? '' : `${yards.find(({ id }) => id === trouble.yard)?.name ?? ''}: `}
              {trouble.what} {trouble.kind === 'left' ? words.left : words.late(trouble.late)}.
            </span>{' '}
            {trouble.reason} {trouble.mend ?? ''}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Chosen({ here, yards }: { readonly here: WorkPlanHere; readonly yards: readonly YardRow[] }) {
  const { choices, tasks, busy } = here;
  return (
    <section className="section" aria-label={words.chosen}>
      <h2>
        {words.chosen}
        {choices.length === 0 ? '' : ` (${counted(choices.length, 'choice', 'choices')})`}
      </h2>
      {choices.length === 0 ? <p className="soft">{words.chosenNone}</p> : null}
      <Entering>
        <ul>
          {choices.map((choice) => {
            const said = words.choice(choice.kind, choice.day, yards.find(({ id }) => id === choice.yard)?.name ?? null, choice.task === null ? null : (tasks.get(choice.task)?.what ?? choice.task));
            return (
              <li key={choice.key}>
                {said}{' '}
                <button type="button" className="link" disabled={busy} onClick={() => void here.lift(choice.key)}>
                  {words.lift}
                  <span className="visually-hidden"> ({said})</span>
                </button>
              </li>
            );
          })}
        </ul>
      </Entering>
    </section>
  );
}
