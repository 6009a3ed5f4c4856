import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { Link } from 'wouter';
import type { ColonyId } from '#shared/brands.ts';
import type { TripOuting, TripStop, TripTask } from '#shared/contract/trips.ts';
import { dayFromIso, type Day } from '#shared/days.ts';
import { useOffer } from '../../commands/offers.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import '../../parts/paperPage.css';
import { PaperLabel } from '../tonight/PaperLabel.tsx';
import { FieldArticle } from '../tonight/RoundPrint.tsx';
import { clock, spell } from './planWeeks.ts';
import './trip.css';
import { tripWords as words } from './tripWords.ts';

/** How often a search that is under way is looked at. */
const every = 1000;

/** What to load, where to go in which order, and what to do there; then each yard's own sheet to write on. */
export function TripPrint({ day: typed }: { readonly day: string }) {
  const day = dayFromIso(typed);
  if (day === null) {
    return (
      <main className="paper-page">
        <p>{words.nowhere}</p>
        <Link href="/work">{words.back}</Link>
      </main>
    );
  }
  return <TripSheet day={day} />;
}

function TripSheet({ day }: { readonly day: Day }) {
  const { book } = useBook();
  const { data, fault } = useRead('trip.sheet', { day });
  useSearchSeen();
  const title = words.title(day);
  // The title is the file's name when the page is printed into one.
  useEffect(() => {
    document.title = title;
  }, [title]);
  const outings = data?.outings ?? [];
  const ready = book !== undefined && outings.length > 0;
  useOffer('print the trip sheet', ready ? () => window.print() : null);
  return (
    <main className="paper-page field-sheet trip-sheet">
      <p className="paper-acts no-print">
        {ready ? (
          <button type="button" className="main" onClick={() => window.print()}>
            {words.print}
          </button>
        ) : null}
        <Link href="/work">{words.back}</Link>
      </p>
      <FaultNote fault={fault} />
      {data !== undefined && outings.length === 0 ? <p>{words.none}</p> : null}
      {ready && !data?.kept ? <p>{words.notKept}</p> : null}
      {ready ? outings.map((outing) => <Trip key={outing.leave} day={day} outing={outing} name={book.name} />) : null}
    </main>
  );
}

/** A plan that is still being sought is another one when it is found: then the sheet is asked for again. */
function useSearchSeen(): void {
  const client = useQueryClient();
  const looking = useAsOf();
  const state = useRead('work.progress', {}).data?.state;
  const running = looking === null && state === 'running';
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => void client.invalidateQueries({ queryKey: ['work.progress'] }), every);
    return () => {
      clearInterval(timer);
      void client.invalidateQueries({ queryKey: ['trip.sheet'] });
    };
  }, [client, running]);
}

function Trip({ day, outing: { leave, back, driving, people, weather, load, inCase, cautions, stops }, name }: { readonly day: Day; readonly outing: TripOuting; readonly name: string }) {
  return (
    <>
      <article>
        <h1>{words.title(day)}</h1>
        <p>
          {words.line(name, clock(leave), clock(back), people, spell(driving))} {words.weather[weather]}.
        </p>
        <h2>{words.load}</h2>
        {load.length === 0 ? <p>{words.loadNone}</p> : null}
        <ul className="trip-load">
          {[...load, ...inCase.map(words.inCase), words.always].map((line) => (
            <li key={line}>
              {words.box} {line}
            </li>
          ))}
        </ul>
        {cautions.map((caution) => (
          <p key={caution} className="trip-caution">
            {caution}
          </p>
        ))}
        <h2>{words.order}</h2>
        {stops.map((stop, at) => (
          <Stop key={`${stop.yard.id} ${stop.arrive}`} day={day} stop={stop} at={at + 1} />
        ))}
      </article>
      {stops.map((stop) => {
        const deadOuts = deadOutsOf(stop);
        // Where nothing is written colony by colony, the yard needs no sheet of its own.
        if (stop.sheet === null && deadOuts.length === 0) return null;
        return (
          <FieldArticle key={`${stop.yard.id} ${stop.arrive}`} yard={stop.yard.id} day={day} todo={todoOf(stop)} rows={stop.sheet !== null}>
            {deadOuts.length === 0 ? null : <DeadOuts rows={deadOuts} />}
          </FieldArticle>
        );
      })}
    </>
  );
}

function Stop({ day, stop, at }: { readonly day: Day; readonly stop: TripStop; readonly at: number }) {
  const { yard, arrive, leave, sheet, tasks } = stop;
  const deadOuts = deadOutsOf(stop);
  return (
    <section className="trip-yard">
      <h3>{words.yard(at, yard.name, clock(arrive), clock(leave))}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.done}</th>
            <th scope="col">{words.task}</th>
            <th scope="col">{words.colonies}</th>
            <th scope="col">{words.minutes}</th>
            <th scope="col">{words.why}</th>
          </tr>
        </thead>
        <tbody>
          {tasks.map((task) => (
            <tr key={task.key}>
              <td>{words.box}</td>
              <th scope="row">{task.what}</th>
              <td>
                <Colonies task={task} />
              </td>
              <td>{number(task.minutes)}</td>
              <td>{task.reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{sheet === null ? words.noSheet : words.sheetIs(sheet)}</p>
      {sheet === null && deadOuts.length === 0 ? <p>{words.foot}</p> : null}
      <p className="no-print trip-enter">
        <Link href={`/tonight/${yard.id}/${day}`}>{words.enter(yard.name)}</Link>
        {deadOuts.map(({ id, label }) => (
          <Link key={id} href={`/colonies/${id}/dead-out`}>
            {words.lookOver(label)}
          </Link>
        ))}
      </p>
    </section>
  );
}

function Colonies({ task: { colonies, count, of, whole, known, among } }: { readonly task: TripTask }) {
  if (of === 0) return among === null ? null : <>{words.among(among)}</>;
  if (whole && colonies.every(({ detail }) => detail === null)) return <>{words.whole(of)}</>;
  return (
    <>
      {colonies.length === 0 ? words.someOf(count, of) : count < of ? words.some(count, of, known) : of > 1 ? words.allOf(of) : ''}
      {colonies.map(({ id, label, ended }, at) => (
        <span key={id}>
          {at === 0 ? '' : ', '}
          <PaperLabel label={label} />
          {ended === null ? '' : ` ${words.ended(ended)}`}
        </span>
      ))}
    </>
  );
}

interface DeadOutRow {
  readonly id: ColonyId;
  readonly label: string;
  readonly ended: NonNullable<TripTask['colonies'][number]['ended']>;
  readonly what: readonly string[];
}

/** The colonies that died and of which something is to be done that day, each once. */
function deadOutsOf({ tasks }: TripStop): DeadOutRow[] {
  const all = tasks.flatMap(({ what, colonies }) => colonies.flatMap(({ id, label, ended }) => (ended === null ? [] : [{ id, label, ended, what }])));
  return [...Map.groupBy(all, ({ id }) => id).values()].flatMap(([first, ...more]) => (first === undefined ? [] : [{ ...first, what: [first, ...more].map(({ what }) => what) }]));
}

/** They stand on no round sheet, since nothing lives there, so there is room for them below it. */
function DeadOuts({ rows }: { readonly rows: readonly DeadOutRow[] }) {
  return (
    <table className="trip-dead">
      <thead>
        <tr>
          <th scope="col">{words.deadOut}</th>
          <th scope="col">{words.toDo}</th>
          <th scope="col">{words.deadFound}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, label, ended, what }) => (
          <tr key={id}>
            <th scope="row">
              <PaperLabel label={label} /> {words.ended(ended)}
            </th>
            <td>{what.map(words.todo).join(' ')}</td>
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What each colony of a yard wants that day, to stand in its own line of the sheet. What goes through the whole yard needs no word there, unless the colony's own record has one. */
function todoOf({ tasks }: TripStop): ReadonlyMap<ColonyId, readonly string[]> {
  const todo = new Map<ColonyId, string[]>();
  for (const { what, colonies, whole, known } of tasks) {
    if (!known) continue;
    for (const { id, detail } of colonies) {
      if (whole && detail === null) continue;
      todo.set(id, [...(todo.get(id) ?? []), detail === null ? what : words.withDetail(what, detail)]);
    }
  }
  return todo;
}
