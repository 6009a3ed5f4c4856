import { Link } from 'wouter';
import type { MitesYard } from '#shared/contract/mites.ts';
import { Figure } from '../../charts/Figure.tsx';
import { MiteChart, MiteCountsTable } from '../../charts/MiteChart.tsx';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, dayTight, percent } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { rateText } from './mitesText.ts';
import { words } from './words.ts';

/** One yard: its season as a picture, the last count of each colony, and who was never counted. */
export function YardSection({ yard }: { readonly yard: MitesYard }) {
  const { data, fault } = useRead('mites.yard', { id: yard.id });
  const { shown, more } = useFirstRows(data?.colonies ?? [], 'mites yard');
  const name = `${yard.code} ${yard.name}`;
  const hot = new Set(yard.hot.map(({ id }) => id));
  return (
    <section className="section figured" aria-label={name}>
      <h2>{data ? words.season(name, data.season.name) : name}</h2>
      <FaultNote fault={fault} />
      {data ? (
        <>
          <p className="sentence">{words.chartSays(data.counts.length, data.treatments.length)}</p>
          <Figure name={name} most={720} picture={(width) => <MiteChart facts={data} width={width} name={name} />} table={<MiteCountsTable facts={data} caption={name} />} />
          <p className="soft small">{words.chartKey}</p>
          {data.colonies.length === 0 ? null : (
            <div className="scroll" tabIndex={0} role="group" aria-label={words.lastCounts}>
              <table className="tight">
                <caption>
                  <h3>{words.lastCounts}</h3>
                </caption>
                <thead>
                  <tr>
                    <th scope="col">{words.colony}</th>
                    <th scope="col">{words.day}</th>
                    <th scope="col" className="number">
                      {words.mitesBees}
                    </th>
                    <th scope="col" className="number">
                      {words.rate}
                    </th>
                    <th scope="col" className="number">
                      {words.aboveMixed}
                    </th>
                    <td />
                  </tr>
                </thead>
                <tbody>
                  {shown.map(({ id, label, day, mites, bees, rate, above, inRound, treatedSince }) => (
                    <tr key={id}>
                      <th scope="row">
                        <Link href={`/colonies/${id}`}>{label}</Link>
                      </th>
                      <td>{dayText(day)}</td>
                      <td className="number">{words.mitesIn(mites, bees)}</td>
                      <td className="number figure-range">{rateText(rate)}</td>
                      <td className={hot.has(id) ? 'number needs' : 'number'}>{percent(above)}</td>
                      <td className="soft">{treatedSince !== null ? words.treatedSince(treatedSince.ingredient, dayTight(treatedSince.from)) : inRound ? words.inRound : words.notInRound}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
              {more}
            </div>
          )}
          <Uncounted colonies={data.uncounted} />
          <p className="no-print">
            <Link href="/tonight">{words.enterCounts}</Link>
          </p>
        </>
      ) : null}
    </section>
  );
}

function Uncounted({ colonies }: { readonly colonies: readonly { readonly id: number; readonly label: string }[] }) {
  if (colonies.length === 0) return <p className="soft">{words.uncountedNone}</p>;
  return (
    <details className="mites-uncounted">
      <summary>{words.uncounted(colonies.length)}</summary>
      <p>
        {colonies.map(({ id, label }, at) => (
          <span key={id}>
            {at > 0 ? ', ' : ''}
            <Link href={`/colonies/${id}`}>{label}</Link>
          </span>
        ))}
      </p>
    </details>
  );
}
