import { useMemo, useState, type FormEvent } from 'react';
import type { YardId } from '#shared/brands.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { faultText } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { hoursWords as words } from './hoursWords.ts';

/** Above this one looks for a yard's ways rather than reading them all. */
const manyWays = 50;

/** Minutes between yards: as written down, else reckoned; each can be written in its line. */
export function Distances() {
  const { data, fault } = useRead('work.distances', {});
  const { book } = useBook();
  const [asked, setAsked] = useState<YardId | null>(null);
  const names = useMemo(() => new Map((book?.yards ?? []).map(({ id, name }) => [id, name])), [book]);
  const all = useMemo(() => [...(data?.known ?? []).map((way) => ({ ...way, known: true })), ...(data?.estimated ?? []).map((way) => ({ ...way, known: false }))].toSorted((x, y) => x.a - y.a || x.b - y.b), [data]);
  const from = asked !== null && names.has(asked) ? asked : null;
  const ways = useMemo(() => (from === null ? all : all.filter(({ a, b }) => a === from || b === from)), [all, from]);
  const { shown, more } = useFirstRows(ways, words.distances);
  if (data === undefined || book === undefined) return <FaultNote fault={fault} />;
  const nameOf = (id: YardId) => names.get(id) ?? '';
  return (
    <section className="section" aria-label={words.distances}>
      <h2>{words.distances}</h2>
      <p className="soft">{book.yards.length < 2 ? words.distancesFew : words.distancesHelp}</p>
      {data.without.length === 0 ? null : <p className="needs">{words.distancesNone(data.without.map(nameOf).join(', '))}</p>}
      {all.length <= manyWays ? null : (
        <div className="choices">
          <label className="inline-choice">
            {words.waysOf}{' '}
            <select value={from ?? ''} onChange={(event) => setAsked(book.yards.find(({ id }) => String(id) === event.target.value)?.id ?? null)}>
              <option value="">{words.waysAll}</option>
              {book.yards.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        </div>
      )}
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
            {shown.map((way) => (
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
      {more}
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
