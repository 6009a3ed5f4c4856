import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import type { WorkHours, WorkTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { HoursLack } from '#shared/hoursLack.ts';
import { Empty } from '../../parts/Empty.tsx';
import { words } from './words.ts';

interface NoHoursProps {
  readonly lack: HoursLack;
  /** What was written down, taken days not taken off. */
  readonly hours: WorkHours | undefined;
  readonly tasks: ReadonlyMap<string, WorkTask>;
  readonly yards: readonly YardRow[];
  readonly today: Day;
  /** Plans what can be done at home, where there are hours for that. */
  readonly action: ReactNode;
}

/** In place of a plan that could hold nothing: that there are no hours, and what waits for some. */
export function NoHours({ lack, hours, tasks, yards, today, action }: NoHoursProps) {
  const waiting = [...tasks.values()];
  const overdue = waiting.filter((task) => task.overdue).length;
  const byYard = [...Map.groupBy(waiting, ({ yard }) => yard)].map(([yard, own]): [string | null, string[]] => [yard === null ? null : (yards.find(({ id }) => id === yard)?.name ?? null), [...new Set(own.map(({ what }) => what))]]);
  const taken = lack === 'nobody' && hours !== undefined && someHours(hours, today);
  return (
    <>
      <Empty sentence={taken ? words.lackTaken : words.lack[lack]} action={taken ? <p><Link href="/work/calendar">{words.toCalendar}</Link></p> : action} />
      {waiting.length === 0 ? null : (
        <details className="work-waiting">
          <summary>{words.waiting(waiting.length, overdue)}</summary>
          <ul>
            {byYard.map(([yard, whats]) => (
              <li key={yard ?? ''}>{words.ofYard(yard ?? words.home, whats)}.</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** The one next step of a book without hours. */
export function ToHours() {
  return (
    <Link href="/work/hours" className="button main">
      {words.toHours}
    </Link>
  );
}

function someHours({ people }: WorkHours, today: Day): boolean {
  return people.some(({ week, exceptions }) => week.some((slot) => slot !== null) || exceptions.some(({ day, slot }) => slot !== null && day >= today));
}
