import { useState, type FormEvent } from 'react';
import type { YardId } from '#shared/brands.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { faultText } from '../../parts/Notice.tsx';
import { hoursWords as words } from './hoursWords.ts';

/** Minutes between yards: as written down, else reckoned; each can be written in its line. */
export function Distances() {
  const { data, fault } = useRead('work.distances', {});
  const { book } = useBook();
  if (data === undefined || book === undefined) return <FaultNote fault={fault} />;
  const nameOf = (id: YardId) => book.yards.find((yard) => yard.id === id)?.name ?? '';
  const ways = [...data.known.map((way) => ({ ...way, known: true })), ...data.estimated.map((way) => ({ ...way, known: false }))].toSorted((x, y) => x.a - y.a || x.b - y.b);
  return (
    <section className="section" aria-label={words.distances}>
      <h2>{words.distances}</h2>
      <p className="soft">{book.yards.length < 2 ? words.distancesFew : words.distancesHelp}</p>
      {data.without.length === 0 ? null : <p className="needs">{words.distancesNone(data.without.map(nameOf).join(', '))}</p>}
      {ways.length === 0 ? null : (
        <table className="tight narrow" aria-label={words.distances}>
          <thead>
            <tr>
              <th scope="col">{words.from}</th>
              <th scope="col">{words.to}</th>
              <th scope="col" className="number">
                {words.minutes}
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {ways.map((way) => (
              <tr key={`${way.a}-${way.b}`}>
                <th scope="row">{nameOf(way.a)}</th>
                <td>{nameOf(way.b)}</td>
                <td className="number">
                  {number(way.minutes)} <span className="soft small">{way.known ? words.known : words.estimated}</span>
                </td>
                <td>
                  <Entering>
                    <WayForm a={way.a} b={way.b} known={way.known} label={words.wayOf(nameOf(way.a), nameOf(way.b))} />
                  </Entering>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function WayForm({ a, b, known, label }: { readonly a: YardId; readonly b: YardId; readonly known: boolean; readonly label: string }) {
  const { send, busy } = useWrite('work.setDistance');
  const [typed, setTyped] = useState('');
  const [says, setSays] = useState<string | null>(null);
  const keep = async (minutes: number | null) => {
    const answer = await send({ a, b, minutes });
    setSays(answer.ok ? null : faultText(answer));
    if (answer.ok) setTyped('');
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const text = typed.trim();
    const read = readMeasure(text, { unit: 'min', most: 600, whole: true, suchAs: '25' });
    if (!read.ok) return setSays(read.sentence);
    void keep(read.value);
  };
  return (
    <form className="way-form" onSubmit={submit} noValidate>
      <input type="text" inputMode="numeric" size={4} aria-label={label} value={typed} aria-invalid={says !== null || undefined} onChange={(event) => { setTyped(event.target.value); setSays(null); }} />
      <button type="submit" className="link" disabled={busy || typed.trim() === ''}>
        {words.setWay}
        <span className="visually-hidden"> ({label})</span>
      </button>
      {known ? (
        <button type="button" className="link" disabled={busy} onClick={() => void keep(null)}>
          {words.clearWay}
          <span className="visually-hidden"> ({label})</span>
        </button>
      ) : null}
      {says === null ? null : <span className="field-fault">{says}</span>}
    </form>
  );
}
