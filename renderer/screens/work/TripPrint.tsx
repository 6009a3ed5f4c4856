import { useEffect } from 'react';
import { Link } from 'wouter';
import type { ColonyId } from '#shared/brands.ts';
import type { YardRow } from '#shared/contract/book.ts';
import type { Outing, WorkTask } from '#shared/contract/work.ts';
import { dayFromIso, type Day } from '#shared/days.ts';
import { useOffer } from '../../commands/offers.ts';
import { useBook } from '../../desk/useBook.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import '../../parts/paperPage.css';
import { FieldArticle } from '../tonight/RoundPrint.tsx';
import { clock, spell } from './planWeeks.ts';
import './trip.css';
import { tripWords as words } from './tripWords.ts';
import { useWorkPlan } from './useWorkPlan.ts';
import { coloniesByTurn, turnKey } from './visitColonies.ts';

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
  const { book, today } = useBook();
  const { plan, tasks, isKept, loading, fault } = useWorkPlan();
  const outings = plan?.outings.filter((one) => one.day === day) ?? [];
  const title = words.title(day);
  // The title is the file's name when the page is printed into one.
  useEffect(() => {
    document.title = title;
  }, [title]);
  const ready = !loading && book !== undefined && outings.length > 0;
  const turns = plan === null || today === undefined ? noTurns : coloniesByTurn(plan, tasks, today);
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
      {!loading && outings.length === 0 ? <p>{words.none}</p> : null}
      {ready && !isKept ? <p>{words.notKept}</p> : null}
      {ready ? outings.map((outing) => <Trip key={outing.leave} outing={outing} tasks={tasks} turns={turns} name={book.name} yards={book.yards} />) : null}
    </main>
  );
}

type Turns = ReadonlyMap<string, WorkTask['colonies']>;
const noTurns: Turns = new Map();

function Trip({ outing, tasks, turns, name, yards }: { readonly outing: Outing; readonly tasks: ReadonlyMap<string, WorkTask>; readonly turns: Turns; readonly name: string; readonly yards: readonly YardRow[] }) {
  const { day, visits, bring } = outing;
  return (
    <>
      <article>
        <h1>{words.title(day)}</h1>
        <p>
          {words.line(name, clock(outing.leave), clock(outing.back), outing.people, spell(outing.driving))} {words.weather[outing.weather]}.
        </p>
        <h2>{words.load}</h2>
        {bring.length === 0 ? <p>{words.loadNone}</p> : null}
        <ul className="trip-load">
          {bring.map(({ item, count }) => (
            <li key={item}>
              {words.box} {words.item(count, item)}
            </li>
          ))}
          <li>
            {words.box} {words.caution}
          </li>
        </ul>
        <h2>{words.order}</h2>
        {visits.map((visit, at) => {
          const yard = yards.find(({ id }) => id === visit.yard);
          return (
            <section key={`${visit.yard} ${visit.arrive}`} className="trip-yard">
              <h3>{words.yard(at + 1, yard?.name ?? '', clock(visit.arrive), clock(visit.leave))}</h3>
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
                  {visit.tasks.map((planned) => {
                    const task = tasks.get(planned.key);
                    const turn = turns.get(turnKey(day, planned.key));
                    return (
                      <tr key={planned.key}>
                        <td>{words.box}</td>
                        <th scope="row">{planned.what}</th>
                        <td>
                          {planned.colonies < planned.of ? words.some(planned.colonies, planned.of, turn !== undefined) : planned.of > 1 ? words.allOf(planned.of) : ''}
                          {(turn ?? task?.colonies ?? []).map(({ label }) => label).join(', ')}
                        </td>
                        <td>{number(planned.minutes)}</td>
                        <td>{task?.reason ?? ''}</td>
                      </tr>
                    );
                  })}
                </tbody>
              </table>
              {yard === undefined ? null : (
                <p className="no-print">
                  <Link href={`/tonight/${yard.id}/${day}`}>{words.enter(yard.name)}</Link>
                </p>
              )}
            </section>
          );
        })}
      </article>
      {visits.map((visit) => (
        <FieldArticle key={`${visit.yard} ${visit.arrive}`} yard={visit.yard} day={day} todo={todoOf(visit.tasks, day, tasks, turns)} />
      ))}
    </>
  );
}

/** What each colony of a yard wants that day, to stand in its own line of the sheet. A round through the whole yard needs no word: the sheet is the round. */
function todoOf(planned: Outing['visits'][number]['tasks'], day: Day, tasks: ReadonlyMap<string, WorkTask>, turns: Turns): ReadonlyMap<ColonyId, readonly string[]> {
  const todo = new Map<ColonyId, string[]>();
  for (const { key, what, colonies, of } of planned) {
    const task = tasks.get(key);
    if (task?.source === 'round' && colonies === of) continue;
    for (const { id } of turns.get(turnKey(day, key)) ?? task?.colonies ?? []) todo.set(id, [...(todo.get(id) ?? []), what]);
  }
  return todo;
}
