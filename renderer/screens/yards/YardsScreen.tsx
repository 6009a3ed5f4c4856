import { Link, useLocation } from 'wouter';
import type { YardListRow } from '#shared/contract/yards.ts';
import { daysBetween, type Day } from '#shared/days.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { words } from './words.ts';
import './yards.css';

/** All yards of the operation, one line each. */
export function YardsScreen() {
  const { data, fault } = useRead('yards.list', {});
  return (
    <Page title={words.title} line={words.line}>
      <FaultNote fault={fault} />
      {data === undefined ? fault ? null : <p className="soft">{words.loading}</p> : null}
      {data?.yards.length === 0 ? <Empty sentence={words.none} action={<Link href="/book">{words.toBook}</Link>} /> : null}
      {data !== undefined && data.yards.length > 0 ? <YardTable yards={data.yards} today={data.today} /> : null}
      <MarginContent heading={words.marginVisit}>
        <p>{words.marginVisitText}</p>
      </MarginContent>
      <MarginContent heading={words.marginRoom}>
        <p>{words.marginRoomText}</p>
      </MarginContent>
      <MarginContent heading={words.marginRenewal}>
        <p>{words.marginRenewalText}</p>
      </MarginContent>
    </Page>
  );
}

function YardTable({ yards, today }: { readonly yards: readonly YardListRow[]; readonly today: Day }) {
  const [, navigate] = useLocation();
  const sum = (of: (yard: YardListRow) => number | null) => (yards.some((yard) => of(yard) === null) ? null : yards.reduce((all, yard) => all + (of(yard) ?? 0), 0));
  return (
    <table aria-label={words.table}>
      <thead>
        <tr>
          <th scope="col">{words.yard}</th>
          <th scope="col">{words.code}</th>
          <th scope="col" className="number">
            {words.living}
          </th>
          <th scope="col" className="number">
            {words.room}
          </th>
          <th scope="col" className="number">
            {words.minutes}
          </th>
          <th scope="col">{words.lastVisit}</th>
          <th scope="col">{words.renewal}</th>
        </tr>
      </thead>
      <tbody>
        {yards.map((yard) => (
          <tr key={yard.id} className="row-open" onClick={() => navigate(`/yards/${yard.id}`)}>
            <th scope="row">
              <Link className="yard-name" href={`/yards/${yard.id}`} onClick={(event) => event.stopPropagation()}>
                {yard.name}
              </Link>
            </th>
            <td>{yard.code}</td>
            <td className="number">{number(yard.living)}</td>
            <td className="number">{number(yard.room)}</td>
            <td className="number">{number(yard.minutes)}</td>
            <td>{dayText(yard.lastVisit)}</td>
            <td>
              <Renewal day={yard.renewal} today={today} />
            </td>
          </tr>
        ))}
      </tbody>
      {yards.length > 1 ? (
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              {words.all}
            </th>
            <td className="number">{number(sum((yard) => yard.living))}</td>
            <td className="number">{number(sum((yard) => yard.room))}</td>
            <td />
            <td />
            <td />
          </tr>
        </tfoot>
      ) : null}
    </table>
  );
}

/** The renewal day, and how far off it is once that matters. */
export function Renewal({ day, today }: { readonly day: Day | null; readonly today: Day }) {
  if (day === null) return dayText(day);
  const days = daysBetween(today, day);
  return (
    <>
      {dayText(day)}
      {days <= 60 ? <span className={days < 0 ? 'needs' : 'soft'}>, {words.renewalIn(days)}</span> : null}
    </>
  );
}
