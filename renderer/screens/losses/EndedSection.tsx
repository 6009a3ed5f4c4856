import { useState } from 'react';
import { Link } from 'wouter';
import type { LossEnded } from '#shared/contract/lossSections.ts';
import type { Season } from '#shared/seasons.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { dayShort, missing } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** A list of thousands is drawn a piece at a time. */
const page = 100;

/** Every colony that ended in the season, with how and of what. */
export function EndedSection({ season }: { readonly season: Season }) {
  const note = useMarginNote();
  const [most, setMost] = useState(page);
  const { data: review, stale } = useCalmRead('losses.ended', { season }, { keep: true });
  if (!review) return null;
  const names = new Map(review.yards.map(({ code, name }) => [code, name]));
  const ended = [...review.ended].sort((a, b) => a.day.localeCompare(b.day) || a.label.localeCompare(b.label));
  return (
    <section className="section" aria-label={words.ended}>
      <h3>{words.ended}</h3>
      <Awaited stale={stale}>
        {review.ended.length === 0 ? (
          <p className="soft">{words.endedEmpty}</p>
        ) : (
          <table className="tight">
            <caption className="visually-hidden">{words.ended}</caption>
            <thead>
              <tr>
                <th scope="col">{words.day}</th>
                <th scope="col">{words.colony}</th>
                <th scope="col">{words.yard}</th>
                <th scope="col">{words.how}</th>
                <th scope="col">{words.causes}</th>
              </tr>
            </thead>
            <tbody>
              {ended.slice(0, most).map((colony) => (
                <tr key={colony.id} {...note(<EndedNote colony={colony} />)}>
                  <td className="ended-day">{dayShort(colony.day)}</td>
                  <th scope="row">
                    <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
                  </th>
                  <td>{names.get(colony.yard) ?? colony.yard}</td>
                  <td>{words.endings[colony.how]}</td>
                  <td>
                    {colony.causes.length === 0 ? missing : colony.causes.join('; ')}
                    {colony.how === 'lost' && colony.causes.every((cause) => cause === 'unknown') ? (
                      <>
                        {' '}
                        <Link className="no-print" href={`/colonies/${colony.id}/dead-out`} aria-label={`${words.lookAt}: ${colony.label}`}>
                          {words.lookAt}
                        </Link>
                      </>
                    ) : null}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        {ended.length > most && (
          <button type="button" className="link no-print" onClick={() => setMost(most + 5 * page)}>
            {words.endedMore(most, ended.length)}
          </button>
        )}
      </Awaited>
    </section>
  );
}

function EndedNote({ colony }: { readonly colony: LossEnded['ended'][number] }) {
  return (
    <MarginPart heading={`${colony.label}, ${colony.yard}`}>
      <p>{colony.causes.length > 0 ? words.causesAre : colony.how === 'lost' ? words.noCause : words.openColony}</p>
    </MarginPart>
  );
}
