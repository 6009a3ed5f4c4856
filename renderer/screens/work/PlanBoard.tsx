import { useEffect, useRef, useState, type DragEvent, type KeyboardEvent } from 'react';
import type { YardId } from '#shared/brands.ts';
import type { YardRow } from '#shared/contract/book.ts';
import type { PlannedTask, WorkPlan, WorkTask } from '#shared/contract/work.ts';
import type { WorkDay } from '#shared/contract/workDays.ts';
import { addDays, type Day } from '#shared/days.ts';
import { dayShort } from '../../parts/format.ts';
import { useRead } from '../../desk/useDesk.ts';
import { shortOf } from './moveDayText.ts';
import { chiefTask, clock, freeOn, homeOn, loadOn, mondayOf, spell, visitsOn, weekDays, weekdayOf, type BoardVisit } from './planWeeks.ts';
import { words } from './words.ts';

export interface Carried {
  readonly yard: YardRow;
  readonly from: Day;
  readonly over: Day;
}

interface PlanBoardProps {
  readonly plan: WorkPlan;
  readonly yards: readonly YardRow[];
  readonly tasks: ReadonlyMap<string, WorkTask>;
  /** What hours the days have; a day that is not in it is not known. */
  readonly hours: ReadonlyMap<Day, WorkDay>;
  readonly today: Day;
  readonly monday: Day;
  readonly busy: boolean;
  /** Why no visit can be put on a day, or null. */
  refusal(to: Day): string | null;
  readonly opened: { readonly yard: number; readonly day: Day } | null;
  onMonday(monday: Day): void;
  onOpen(yard: YardRow, day: Day): void;
  onMove(yard: YardRow, from: Day, to: Day): void;
}

/** A week, yard by day. A visit is carried to another day by dragging it, or picked up with Space, carried with the arrows and put down. */
export function PlanBoard({ plan, yards, tasks, hours, today, monday, busy, refusal, opened, onMonday, onOpen, onMove }: PlanBoardProps) {
  const table = useRef<HTMLTableElement>(null);
  const [here, setHere] = useState<{ row: number; day: Day }>({ row: 0, day: monday });
  const [carried, setCarried] = useState<Carried | null>(null);
  const [says, setSays] = useState('');
  const following = useRef(false);
  const reach = useRead('work.moveDays', { yard: carried?.yard.id ?? (0 as YardId), day: carried?.from ?? today }, { enabled: carried !== null });
  /** Why the visit that is carried cannot go to a day, or null; until it is known, only what the hours say. */
  const refusalTo = ({ yard, from }: Pick<Carried, 'yard' | 'from'>, to: Day) =>
    refusal(to) ?? (to === from || reach.data === undefined || reach.data.days.some(({ day: one }) => one === to) ? null : words.noRoomOn(yard.name, to));
  /** What of the work of the visit that is carried has no room on a day, or null. */
  const shortOn = ({ from }: Pick<Carried, 'from'>, to: Day) => {
    const there = to === from ? undefined : reach.data?.days.find(({ day: one }) => one === to);
    const short = there === undefined ? 0 : shortOf(there);
    return short > 0.5 ? words.workShort(spell(short)) : null;
  };
  const days = weekDays(monday);
  const day = days.includes(here.day) ? here.day : (days[weekdayOf(here.day)] ?? monday);
  const row = Math.min(here.row, yards.length - 1);
  const first = plan.from > today ? plan.from : today;

  // The keyboard goes with the cell, also when it is on another week's page.
  useEffect(() => {
    if (!following.current) return;
    following.current = false;
    table.current?.querySelector<HTMLElement>('td[tabindex="0"]')?.focus();
  });
  const goTo = (to: { row: number; day: Day }) => {
    following.current = true;
    setHere(to);
    if (mondayOf(to.day) !== monday) onMonday(mondayOf(to.day));
  };
  const carryTo = (to: Day) => {
    if (carried === null) return;
    if (to > plan.until) return setSays(words.beyond(plan.until));
    if (to < first) return setSays(words.past(to));
    setCarried({ ...carried, over: to });
    setSays(words.over_(carried.yard.name, to, refusalTo(carried, to) ?? shortOn(carried, to)));
    goTo({ row, day: to });
  };
  const putDown = () => {
    if (carried === null) return;
    const { yard, from, over } = carried;
    const why = over === from ? null : refusalTo(carried, over);
    if (why !== null) return setSays(words.notThere(why));
    setCarried(null);
    if (over === from) setSays(words.letGo(yard.name, from));
    else {
      setSays('');
      onMove(yard, from, over);
    }
  };
  const pickUp = (yard: YardRow) => {
    const visits = visitsOn(plan, day, yard.id);
    if (busy || visits.length === 0 || day < first) return;
    if (visits.some(({ visit }) => visit.held === 'lock')) return setSays(words.promised(yard.name, day));
    setCarried({ yard, from: day, over: day });
    setSays(words.picked(yard.name, day));
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    const yard = yards[row];
    if (yard === undefined) return;
    const acts: Record<string, () => void> = {
      ArrowLeft: () => (carried === null ? goTo({ row, day: addDays(day, -1) < mondayOf(plan.from) ? day : addDays(day, -1) }) : carryTo(addDays(carried.over, -1))),
      ArrowRight: () => (carried === null ? goTo({ row, day: addDays(day, 1) > addDays(mondayOf(plan.until), 6) ? day : addDays(day, 1) }) : carryTo(addDays(carried.over, 1))),
      ArrowUp: () => (carried === null ? goTo({ row: Math.max(0, row - 1), day }) : setSays(words.staysInYard)),
      ArrowDown: () => (carried === null ? goTo({ row: Math.min(yards.length - 1, row + 1), day }) : setSays(words.staysInYard)),
      Home: () => goTo({ row, day: monday }),
      End: () => goTo({ row, day: addDays(monday, 6) }),
      ' ': () => (carried === null ? pickUp(yard) : putDown()),
      Enter: () => (carried === null ? (visitsOn(plan, day, yard.id).length === 0 ? undefined : onOpen(yard, day)) : putDown()),
      Escape: () => {
        if (carried === null) return;
        setCarried(null);
        setSays(words.letGo(carried.yard.name, carried.from));
        goTo({ row, day: carried.from });
      },
    };
    const act = acts[event.key];
    if (act === undefined) return;
    event.preventDefault();
    // What was said of a visit that is no longer carried is over with the next key.
    if (carried === null) setSays('');
    act();
  };
  const dragProps = (yard: YardRow, on: Day) => ({
    draggable: !busy && on >= first && !visitsOn(plan, on, yard.id).some(({ visit }) => visit.held === 'lock'),
    onDragStart: (event: DragEvent) => {
      event.dataTransfer.effectAllowed = 'move';
      // Firefox-like engines start no drag without data.
      event.dataTransfer.setData('text/plain', yard.name);
      setCarried({ yard, from: on, over: on });
      setSays(words.picked(yard.name, on));
    },
    onDragEnd: (event: DragEvent) => {
      setCarried(null);
      // Where it could not be put down, why stays to be read.
      if (event.dataTransfer.dropEffect !== 'none') setSays('');
    },
  });
  const dropProps = (yard: YardRow, on: Day) => ({
    onDragOver: (event: DragEvent) => {
      if (carried === null) return;
      const why = refusalTo(carried, on);
      const said = carried.yard.id !== yard.id ? words.staysInYard : on < first ? words.past(on) : on > plan.until ? words.beyond(plan.until) : words.over_(yard.name, on, why ?? shortOn(carried, on));
      if (said !== says) setSays(said);
      if (carried.yard.id !== yard.id || on < first || on > plan.until || why !== null) return;
      event.preventDefault();
      if (carried.over !== on) setCarried({ ...carried, over: on });
    },
    onDrop: (event: DragEvent) => {
      event.preventDefault();
      putDown();
    },
  });

  return (
    <>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-to-interactive-role -- a grid of cells that the arrows go through, as the ARIA grid pattern has it for tables */}
      <table ref={table} role="grid" className="board tight" aria-label={words.board(days[0] ?? monday, days[6] ?? monday)} onKeyDown={onKey}>
        <thead>
          <tr>
            <th scope="col">{words.yard}</th>
            {days.map((one) => (
              <th key={one} scope="col" className={one === today ? 'board-today' : one < first ? 'soft' : undefined}>
                {words.weekday[weekdayOf(one)]} {dayShort(one)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {yards.map((yard, place) => (
            <tr key={yard.id}>
              <th scope="row">{yard.name}</th>
              {days.map((one) => {
                const visits = visitsOn(plan, one, yard.id);
                const target = carried?.yard.id === yard.id && carried.over === one && carried.from !== one;
                const open = opened?.yard === yard.id && opened.day === one;
                return (
                  <td
                    key={one}
                    tabIndex={place === row && one === day ? 0 : -1}
                    aria-selected={carried?.yard.id === yard.id && carried.from === one}
                    className={[one < first || one > plan.until || (carried?.yard.id === yard.id ? refusalTo(carried, one) : refusal(one)) !== null ? 'board-shut' : '', target ? 'board-target' : '', open ? 'board-open' : ''].filter(Boolean).join(' ') || undefined}
                    onFocus={() => setHere({ row: place, day: one })}
                    onClick={() => {
                      setSays('');
                      if (visits.length > 0) onOpen(yard, one);
                    }}
                    {...dropProps(yard, one)}
                  >
                    <span className="visually-hidden">{labelOf(yard.name, one, visits)}</span>
                    {visits.length === 0 ? null : (
                      <div aria-hidden="true" className={`board-visit${carried?.yard.id === yard.id && carried.from === one ? ' dragged' : ''}`} {...dragProps(yard, one)}>
                        <VisitChip visits={visits} tasks={tasks} />
                      </div>
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
        <tfoot>
          {plan.home.some(({ day: on }) => days.includes(on)) ? (
            <tr>
              <th scope="row">{words.home}</th>
              {days.map((one) => (
                <td key={one}>{plan.home.filter(({ day: on }) => on === one).map(({ task }) => <HomeTask key={task.key} task={task} />)}</td>
              ))}
            </tr>
          ) : null}
          <tr>
            <th scope="row">{words.load}</th>
            {days.map((one) => (
              <td key={one}>
                <DayLoad plan={plan} day={one} hours={one < first || one > plan.until ? undefined : hours.get(one)} />
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
      <p className="board-says small" role="status">
        {says}
      </p>
    </>
  );
}

function VisitChip({ visits, tasks }: { readonly visits: readonly BoardVisit[]; readonly tasks: ReadonlyMap<string, WorkTask> }) {
  const [first] = visits;
  if (first === undefined) return null;
  const { visit } = first;
  const chief = chiefTask(visits, tasks);
  const more = visits.reduce((sum, one) => sum + one.visit.tasks.length, 0) - 1;
  const late = visits.some((one) => one.visit.tasks.some((task) => task.late > 0));
  const held = visits.map((one) => one.visit.held).find((one) => one !== null) ?? null;
  return (
    <>
      <span className="board-time">
        {clock(visit.arrive)}–{clock(visits.at(-1)?.visit.leave ?? visit.leave)}
      </span>
      {chief === undefined ? <span className="soft">{words.noTask}</span> : <span className="board-what">{chief.what}</span>}
      {more > 0 || held !== null || late ? (
        <span className="board-flags">
          {more > 0 ? <span className="soft">{words.more(more)}</span> : null}
          {held === null ? null : <span className="board-held">{words.held[held]}</span>}
          {late ? <span className="needs">{words.late1}</span> : null}
        </span>
      ) : null}
    </>
  );
}

/** A task at home, its minutes, and whether it comes late. */
export function HomeTask({ task: { what, minutes, late } }: { readonly task: PlannedTask }) {
  return (
    <span className="block">
      {what}, {spell(minutes)}
      {late > 0 ? <span className="needs">{words.daysLate(late)}</span> : null}
    </span>
  );
}

/** Planned work against the hours of that day, as a figure and a bar; what is done at home beside it. */
export function DayLoad({ plan, day, hours }: { readonly plan: WorkPlan; readonly day: Day; readonly hours?: WorkDay | undefined }) {
  const load = loadOn(plan, day);
  const home = homeOn(plan, day);
  const atHome = home > 0 ? <span className="block soft">{words.atHome(home)}</span> : null;
  if (load === null) {
    const free = hours === undefined ? 0 : freeOn(hours, home);
    const says = hours === undefined ? '' : free > 0 ? words.idle(free) : hours.have > 0 ? '' : hours.dark ? words.dark : hours.unled ? words.unled : words.noHours;
    return (
      <>
        <span className="soft">{says}</span>
        {atHome}
      </>
    );
  }
  const over = load.working - load.room;
  const share = load.room <= 0 ? 1 : Math.min(1, load.working / load.room);
  return (
    <>
      <span className={over > 0.5 ? 'needs' : undefined}>
        {words.loadOf(load.working, load.room)}
        <span className="load-bar" aria-hidden="true">
          <span className={over > 0.5 ? 'load-over' : 'load-done'} style={{ width: `${Math.round(share * 100)}%` }} />
        </span>
        {over > 0.5 ? <span className="block">{words.over(over)}</span> : null}
      </span>
      {atHome}
    </>
  );
}

function labelOf(yard: string, day: Day, visits: readonly BoardVisit[]): string {
  const [first] = visits;
  if (first === undefined) return words.cellNone(yard, day);
  const held = visits.map((one) => one.visit.held).find((one) => one !== null) ?? null;
  const spent = visits.reduce((sum, { visit }) => sum + visit.leave - visit.arrive, 0);
  return words.cell(yard, day, clock(first.visit.arrive), spent, visits.reduce((sum, one) => sum + one.visit.tasks.length, 0), held === null ? null : words.held[held]);
}

