import { useDeferredValue, useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import type { PlanChoice } from '#shared/contract/work.ts';
import { addDays, type Day } from '#shared/days.ts';
import { hoursLack } from '#shared/hoursLack.ts';
import { coloniesByTurn } from '#shared/visitColonies.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { NoHours, ToHours } from './NoHours.tsx';
import { patternText } from './patternText.ts';
import { PlanBoard } from './PlanBoard.tsx';
import { hoursRefusal, mondayOf, planDays, visitsGone, visitsOn, weekLoadOf, weeksOf } from './planWeeks.ts';
import { Troubles } from './Troubles.tsx';
import { useWorkPlan, type TakingBack, type WorkPlanHere } from './useWorkPlan.ts';
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
  const { plan, progress, busy, running, looking } = here;
  const hours = useRead('work.hours', {});
  const from = today ?? ('2000-01-01' as Day);
  const ahead = useRead('work.days', { from, until: addDays(from, planDays - 1) }, { enabled: today !== undefined });
  const living = book?.yards.some((yard) => yard.living > 0) ?? false;
  // Without a colony and a task there is nothing to plan, and nothing of a plan to keep; nor is there without hours.
  const bare = !living && looking === null && !running && here.tasks.size === 0 && (plan === null || (plan.outings.length === 0 && plan.home.length === 0));
  const short = !living || looking !== null || running || (plan !== null && plan.outings.length > 0) ? null : hoursLack(ahead.data?.days ?? []);
  // What can be done at home may still have its hours.
  const lack = plan !== null && plan.home.length > 0 ? null : short;
  const old = here.stale !== null && looking === null && !bare;
  const loading = here.loading || ahead.loading;
  const unsaid = living && looking === null && hours.data?.own === false;
  const house = patternText(hours.data?.hours.people[0]?.week ?? []);
  const acting = useRef<HTMLButtonElement>(null);
  const pressed = useRef(false);
  const first = plan === null;
  // A button that cannot be pressed for a while loses the keyboard; it comes back to it, under whatever name.
  useEffect(() => {
    // What is pressed for a first plan is gone before the plan is there.
    if (busy || !pressed.current || acting.current === null) return;
    pressed.current = false;
    if (document.activeElement === document.body || document.activeElement?.tagName === 'H1') acting.current.focus();
  }, [busy, running, first]);
  const press = (act: () => Promise<unknown>) => {
    pressed.current = true;
    void act();
  };
  const keep = async () => {
    if (await here.keep()) say(words.keptNow);
  };
  const planning = (name: string) => (
    <Entering>
      <button type="button" disabled={busy} onClick={() => press(here.replan)}>
        {name}
      </button>
    </Entering>
  );
  const planned = (main: string | undefined) =>
    plan === null || here.isKept || old ? (
      <button type="button" ref={acting} className={plan === null || !here.isKept ? main : undefined} disabled={busy || loading} onClick={() => press(here.replan)}>
        {plan === null ? words.make : words.again}
      </button>
    ) : (
      <button type="button" ref={acting} className={main} disabled={busy} onClick={() => press(keep)}>
        {words.keep}
      </button>
    );
  const action =
    bare ? null : lack !== null || (plan === null && unsaid) ? (
      <ToHours />
    ) : short !== null ? (
      <>
        {planned(undefined)} <ToHours />
      </>
    ) : (
      planned('main')
    );
  return (
    <Page title={words.title} line={words.line} action={<Entering>{action}</Entering>}>
      <WorkNav />
      <FaultNote fault={here.fault} />
      {!old || lack !== null ? null : (
        <p className="needs" role="status">
          {here.stale} {here.isKept ? `${words.staleKept} ` : ''}
          <Entering>
            <button type="button" className="link" disabled={busy} onClick={() => press(here.replan)}>
              {words.again}
            </button>
          </Entering>
        </p>
      )}
      {loading || book === undefined || today === undefined ? <p className="soft">{words.loading}</p> : running && plan === null ? <p role="status">{words.running}</p> : null}
      {looking === null ? null : <p className="soft">{plan === null ? words.lookingNone(looking) : words.looking(looking)}</p>}
      {loading || looking !== null || running || book === undefined || today === undefined ? null : bare ? (
        <Empty sentence={words.empty} action={<First yards={book.yards.length} />} />
      ) : lack !== null ? (
        <NoHours lack={lack} hours={hours.data?.hours} tasks={here.tasks} yards={book.yards} today={today} action={lack === 'nobody' || plan !== null ? null : planning(words.make)} />
      ) : plan !== null ? null : unsaid ? (
        <Empty sentence={words.unsaid} action={planning(words.makeHouse(house))} />
      ) : (
        <Empty sentence={words.empty} action={living ? null : <First yards={book.yards.length} />} />
      )}
      {plan === null || progress === undefined || loading || bare || lack !== null ? null : (
        <div className="plan-state" role="status">
          <p className="sentence">{plan.outings.length === 0 ? (plan.troubles.length === 0 ? words.nothing : words.noTrip) : words.summary(plan)}</p>
          <p className="soft">
            {here.isKept && here.kept !== null ? words.kept(here.kept.made) : here.kept === null ? words.notKeptFirst : words.notKept}{' '}
            {plan.changes === null || here.kept === null || here.isKept ? '' : words.changes(plan.changes.same, plan.changes.moved, visitsGone(plan, here.kept.plan))}
          </p>
          <p className="soft">
            {progress.state === 'none' || looking !== null ? words.gap(plan.gap) : progress.says} {running ? words.seconds(progress.seconds) : ''}{' '}
            {running ? (
              <button type="button" className="link" onClick={() => press(here.stop)}>
                {words.stop}
              </button>
            ) : here.isKept || here.stale !== null ? null : (
              <Entering>
                <button type="button" className="link" disabled={busy} onClick={() => press(here.replan)}>
                  {words.again}
                </button>
              </Entering>
            )}
          </p>
          {unsaid ? (
            <p>
              {words.byHouse(house)} <Link href="/work/hours">{words.toHours}</Link>
            </p>
          ) : null}
          {plan.remarks.filter((remark) => !plan.troubles.some(({ reason }) => reason === remark)).map((remark) => (
            <p key={remark}>{remark}</p>
          ))}
        </div>
      )}
      {plan === null || loading || bare || lack !== null || book === undefined || today === undefined ? null : <PlanBody key={book.path} here={here} yards={book.yards} today={today} />}
      <MarginContent heading={words.marginPlan}>
        <p>{words.marginPlanText}</p>
        <p>{words.marginWeather}</p>
      </MarginContent>
      <MarginContent heading={words.marginHeld}>
        <p>{words.marginHeldText}</p>
        <p>{words.caution}</p>
      </MarginContent>
    </Page>
  );
}

/** The one next step of a book in which no colony lives. */
function First({ yards }: { readonly yards: number }) {
  return (
    <p>
      {yards === 0 ? <Link href="/book">{words.yardsFirst}</Link> : <Link href="/colonies">{words.coloniesFirst}</Link>}
    </p>
  );
}

function toBoard(): void {
  document.querySelector<HTMLElement>('.board td[tabindex="0"]')?.focus();
}

function PlanBody({ here, yards: all, today }: { readonly here: WorkPlanHere; readonly yards: readonly YardRow[]; readonly today: Day }) {
  const { say } = useNotice();
  const { plan, choices, tasks, busy } = here;
  const weeks = plan === null ? [] : weeksOf(plan);
  const hours = useRead('work.days', { from: weeks[0] ?? today, until: addDays(weeks.at(-1) ?? today, 6) });
  const hoursOf = new Map((hours.data?.days ?? []).map((one) => [one.day, one]));
  const [view, setView] = useState<View>('board');
  // Hundreds of yards are drawn in slices; the choice itself stands at once.
  const drawn = useDeferredValue(view);
  const [monday, setMonday] = useState<Day | null>(null);
  const [opened, setOpened] = useState<{ yard: YardRow; day: Day } | null>(null);
  const gone = plan !== null && opened !== null && visitsOn(plan, opened.day, opened.yard.id).length === 0;
  // The visit went and took its part of the page along; the keyboard stays on the board.
  useEffect(() => {
    if (gone && document.activeElement === document.body) toBoard();
  }, [gone]);
  if (plan === null) return null;
  const firstTrip = plan.outings.find(({ day }) => day >= today)?.day ?? plan.from;
  const shown = monday !== null && weeks.includes(monday) ? monday : mondayOf(firstTrip);
  // A yard without a living bee and without a visit has no place on the board.
  const yards = all.filter(({ id, living }) => living > 0 || plan.outings.some(({ visits }) => visits.some((visit) => visit.yard === id)));
  const turns = coloniesByTurn(plan, tasks, today);
  const refusal = (to: Day) => {
    const why = hoursRefusal(hoursOf, to);
    return why === null ? null : { dark: words.darkOn, unled: words.unledOn, nobody: words.nobodyOn }[why](to);
  };
  const onOpen = (yard: YardRow, day: Day) => setOpened({ yard, day });
  const close = () => {
    setOpened(null);
    requestAnimationFrame(toBoard);
  };
  const told = (sentence: string, takeBack: TakingBack | null, undone: string) => {
    if (takeBack !== null) say(sentence, { takeBack: async () => ({ same: `${undone} ${words.asItWas}`, anew: words.backAnew, refused: words.notUndone })[await takeBack()] });
  };
  const move = async (yard: YardRow, from: Day, to: Day) => {
    const back = await here.move(yard.id, from, to);
    told(words.moving(yard.name, from, to), back, words.movedBack(yard.name, from));
    if (back !== null && opened !== null) close();
  };
  const nameOf = (choice: Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>) =>
    words.choice(choice.kind, choice.day, all.find(({ id }) => id === choice.yard)?.name ?? null, choice.task === null ? null : (tasks.get(choice.task)?.what ?? choice.task));
  const choose = async (choice: Pick<PlanChoice, 'kind' | 'day' | 'yard' | 'task'>) => {
    told(words.chose(nameOf(choice)), await here.choose(choice), words.unchosen(nameOf(choice)));
  };
  const lift = async (choice: PlanChoice) => {
    told(words.unchose(nameOf(choice)), await here.lift(choice), words.chosenAgain(nameOf(choice)));
  };
  const visits = opened === null ? [] : visitsOn(plan, opened.day, opened.yard.id);
  const week = weekLoadOf(plan, shown, hoursOf);
  const at = weeks.indexOf(shown);
  return (
    <>
      <Troubles plan={plan} tasks={tasks} yards={all} />
      <div className="choices">
        <span role="radiogroup" aria-label={words.views} className="view-choice">
          {views.map((one) => (
            <label key={one} className="inline-choice">
              <input type="radio" name="view" checked={view === one} onChange={() => { setView(one); setOpened(null); }} /> {words.view[one]}
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
        {week === null || view === 'month' ? null : (
          <span className="push">
            {words.weekLoad(week)} {week.over > 0 ? <span className="needs">{words.weekOver(week.over)}</span> : null}
          </span>
        )}
      </div>
      {drawn === 'board' ? (
        <>
          <PlanBoard plan={plan} yards={yards} tasks={tasks} hours={hoursOf} today={today} monday={shown} busy={busy} refusal={refusal} opened={opened === null ? null : { yard: opened.yard.id, day: opened.day }} onMonday={setMonday} onOpen={onOpen} onMove={(yard, from, to) => void move(yard, from, to)} />
          <p className="soft small">{words.boardHelp}</p>
        </>
      ) : drawn === 'week' ? (
        <WeekView plan={plan} yards={all} monday={shown} onOpen={onOpen} />
      ) : (
        <MonthView plan={plan} yards={all} hours={hoursOf} today={today} onWeek={(one) => { setMonday(one); setView('board'); }} />
      )}
      {opened === null || visits.length === 0 ? null : (
        <VisitPanel yard={opened.yard} day={opened.day} visits={visits} tasks={tasks} choices={choices} turns={turns} yards={all} busy={busy} onChoose={(choice) => void choose(choice)} onLift={(choice) => void lift(choice)} onMove={(to) => void move(opened.yard, opened.day, to)} onClose={close} />
      )}
      <Chosen choices={choices.filter(({ day }) => day === null || day >= today)} busy={busy} nameOf={nameOf} onLift={(choice) => void lift(choice)} />
    </>
  );
}

interface ChosenProps {
  readonly choices: readonly PlanChoice[];
  readonly busy: boolean;
  nameOf(choice: PlanChoice): string;
  onLift(choice: PlanChoice): void;
}

function Chosen({ choices, busy, nameOf, onLift }: ChosenProps) {
  return (
    <section className="section" aria-label={words.chosen}>
      <h2>
        {words.chosen}
        {choices.length === 0 ? '' : ` (${counted(choices.length, 'choice', 'choices')})`}
      </h2>
      {choices.length === 0 ? <p className="soft">{words.chosenNone}</p> : null}
      <Entering>
        <ul>
          {choices.map((choice) => (
            <li key={choice.key}>
              {nameOf(choice)}{' '}
              <button type="button" className="link" disabled={busy} onClick={() => onLift(choice)}>
                {words.lift}
                <span className="visually-hidden"> ({nameOf(choice)})</span>
              </button>
            </li>
          ))}
        </ul>
      </Entering>
    </section>
  );
}
