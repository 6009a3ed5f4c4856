import { useState } from 'react';
import type { LossSurvival } from '#shared/contract/lossSections.ts';
import { useRead } from '../../desk/useDesk.ts';
import { fixed, missing } from '../../parts/format.ts';
import { reviewWords as words } from './reviewWords.ts';

/** Each pair of groups by itself, only when asked: the test of all groups comes first. */
export function PairsTable({ asked }: { readonly asked: LossSurvival['asked'] }) {
  const [open, setOpen] = useState(false);
  const { data } = useRead('losses.pairs', asked, { enabled: open });
  if (!open) {
    return (
      <p className="no-print">
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {words.pairsAsk}
        </button>
      </p>
    );
  }
  if (!data) return <p className="soft">{words.reading}</p>;
  return (
    <section className="section" aria-label={words.pairsName}>
      <h3>{words.pairsName}</h3>
      <p className="sentence survival-sentence">{data.sentence}</p>
      {data.pairs.length > 0 && (
        <table className="tight pairs">
          <caption className="visually-hidden">{words.pairsName}</caption>
          <thead>
            <tr>
              <th scope="col">{words.pair}</th>
              <th scope="col" className="number">
                {words.pairChi}
              </th>
              <th scope="col" className="number">
                {words.pairP}
              </th>
            </tr>
          </thead>
          <tbody>
            {data.pairs.map(({ a, b, chiSquare, pHolm }) => (
              <tr key={`${a} ${b}`}>
                <th scope="row">
                  {a}, {b}
                </th>
                <td className="number">{fixed(chiSquare, 2)}</td>
                <td className="number">{pHolm === null ? missing : pHolm < 0.0001 ? '< 0.0001' : fixed(pHolm, 4)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
