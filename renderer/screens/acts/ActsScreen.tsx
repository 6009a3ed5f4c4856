import { Link } from 'wouter';
import { dayFromIso } from '#shared/days.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayTight, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import './acts.css';
import { words } from './words.ts';

/** As many as the desk tells at once. */
const most = 200;

/** The acts at the desk, the last first, each with the way to its own page. */
export function ActsScreen() {
  const { data, fault } = useRead('journal.recent', { limit: most });
  const acts = data?.gestures ?? [];
  return (
    <Page title={words.listTitle} line={words.listLine}>
      <FaultNote fault={fault} />
      {data && acts.length === 0 ? <p>{words.listNone}</p> : null}
      {acts.length > 0 ? (
        <table className="tight act-lines" aria-label={words.listTitle}>
          <thead>
            <tr>
              <th scope="col">{words.listWhen}</th>
              <th scope="col">{words.listWhat}</th>
              <th scope="col" className="number">
                {words.listEntries}
              </th>
            </tr>
          </thead>
          <tbody>
            {acts.map((act) => (
              <tr key={act.id}>
                <td>
                  {dayTight(dayFromIso(act.at.slice(0, 10)))}, {act.at.slice(11)}
                </td>
                <td>
                  <Link href={`/acts/${act.id}`} className={act.undone ? 'struck' : ''}>
                    <bdi>{act.title}</bdi>
                  </Link>
                  {act.undone ? <span className="soft"> {words.listUndone}</span> : null}
                </td>
                <td className="number">{number(act.entries)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {acts.length === most ? <p className="soft">{words.listMost(most)}</p> : null}
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
      </MarginContent>
    </Page>
  );
}
