import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import type { WorkPlan } from '#shared/contract/work.ts';
import type { WorkDay } from '#shared/contract/workDays.ts';
import type { Day } from '#shared/days.ts';
import { dayShort, dayWithWeekday } from '../../parts/format.ts';
import { DayLoad, HomeTask } from './PlanBoard.tsx';
import { clock, homeOn, weekDays, weekLoadOf, weeksOf } from './planWeeks.ts';
import { words } from './words.ts';

/** The trips of a week, one below the other. */
export function WeekView({ plan, yards, monday, onOpen }: { readonly plan: WorkPlan; readonly yards: readonly YardRow[]; readonly monday: Day; onOpen(yard: YardRow, day: Day): void }) {
  const days = weekDays(monday);
  const outings = plan.outings.filter(({ day }) => days.includes(day));
  const home = plan.home.filter(({ day }) => days.includes(day));
  if (outings.length === 0 && home.length === 0) return <p className="soft">{words.noOuting}</p>;
  return (
    <ol className="lines work-days">
      {days.flatMap((day) => [
        ...outings.filter((outing) => outing.day === day).map((outing) => (
          <li key={`${outing.day} ${outing.leave}`}>
            <span>{dayWithWeekday(outing.day)}</span>
            <div>
              {outing.visits.map((visit) => {
                const yard = yards.find(({ id }) => id === visit.yard);
                return yard === undefined ? null : (
                  <p key={`${visit.yard} ${visit.arrive}`}>
                    <button type="button" className="link" onClick={() => onOpen(yard, outing.day)}>
                      {yard.name}
                    </button>{' '}
                    {clock(visit.arrive)}–{clock(visit.leave)}: {visit.tasks.length === 0 ? words.noTask : [...new Set(visit.tasks.map(({ what }) => what))].join('; ')}
                    {visit.held === null ? null : <span className="soft">, {words.held[visit.held]}</span>}
                  </p>
                );
              })}
              <p className="soft small">
                {words.weekTrip(clock(outing.leave), clock(outing.back), outing.people, outing.driving)} {words.weather(outing.weather)} <Link href={`/print/trip/${outing.day}`}>{words.trip}</Link>
              </p>
            </div>
          </li>
        )),
        ...[home.filter((one) => one.day === day)].filter((own) => own.length > 0).map((own) => (
          <li key={`${day} home`}>
            <span>{dayWithWeekday(day)}</span>
            <div>
              <p>{words.home}:</p>
              {own.map(({ task }) => (
                <HomeTask key={task.key} task={task} />
              ))}
            </div>
          </li>
        )),
      ])}
    </ol>
  );
}

/** All weeks of the plan as a calendar page. */
export function MonthView({ plan, yards, hours, today, onWeek }: { readonly plan: WorkPlan; readonly yards: readonly YardRow[]; readonly hours: ReadonlyMap<Day, WorkDay>; readonly today: Day; onWeek(monday: Day): void }) {
  const codeOf = new Map(yards.map((yard) => [yard.id, yard.code]));
  return (
    <table className="month tight" aria-label={words.month(plan.from, plan.until)}>
      <thead>
        <tr>
          {words.weekday.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
          <th scope="col" className="number">
            {words.weekHead}
          </th>
        </tr>
      </thead>
      <tbody>
        {weeksOf(plan).map((monday) => {
          const week = weekLoadOf(plan, monday, hours);
          return (
            <tr key={monday}>
              {weekDays(monday).map((day) => {
                const out = plan.outings.filter((one) => one.day === day);
                const codes = out.flatMap(({ visits }) => visits.map(({ yard }) => codeOf.get(yard) ?? ''));
                return (
                  <td key={day} className={day < plan.from || day > plan.until ? 'board-shut' : undefined}>
                    <span className={day === today ? 'small board-today' : 'soft small'}>{dayShort(day)}</span>
                    {out.length === 0 && homeOn(plan, day) === 0 ? null : (
                      <>
                        {codes.length === 0 ? null : <span className="block month-yards">{codes.join(' ')}</span>}
                        <DayLoad plan={plan} day={day} />
                      </>
                    )}
                  </td>
                );
              })}
              <td className="number">
                <button type="button" className="link" onClick={() => onWeek(monday)}>
                  {dayShort(monday)}
                </button>
                {week === null ? null : <span className={`block small ${week.over > 0 ? 'needs' : 'soft'}`}>{words.weekShort(week)}</span>}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
