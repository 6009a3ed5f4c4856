import { readMeasure } from '#shared/typedMeasure.ts';
import { useEffect, useId, useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { LotPage } from '#shared/contract/lots.ts';
import { jarText } from '#shared/jarText.ts';
import { netWeight } from '#shared/netWeight.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { lotAddress, lotIn } from '../../parts/lotAddress.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { tagCode } from '../tags/tagCode.ts';
import { labelWords as words } from './labelWords.ts';
import './labels.css';

const papers = ['letter', 'A4'] as const;
const perSheet = 12;
/** More would keep the window busy for seconds, and nobody prints them at once. */
const most = 540;

/** A longer name would leave a label no room, and no code holds the longest. */
const longestOnLabel = 60;

type Jars = LotPage['line']['jars'][number];

/** Jars of one size that were filled for two days of best before are told apart by it. */
const nameOf = ({ words: jar, bestBefore }: Jars) => (bestBefore === null ? jar : words.jarsBest(jar, dayText(bestBefore)));

/** Labels for the jars of a lot, twelve to a sheet of Letter or A4. */
export function LabelPrint({ lot }: { readonly lot: string }) {
  const code = lotIn(lot);
  const { data, fault } = useRead('lots.page', { lot: code }, { keep: true });
  const [size, setSize] = useState<string | null>(null);
  const [typed, setTyped] = useState<string | null>(null);
  const [paper, setPaper] = useState<(typeof papers)[number]>('letter');
  const [who, setWho] = useState('');
  const draft = useDraft('honey labels', setWho);
  const id = useId();
  const title = words.title(data?.line.code ?? code);
  useEffect(() => {
    document.title = title;
  }, [title]);
  const all = data?.line.jars.filter(({ filled }) => filled > 0) ?? [];
  const tooLong = [...code].length > longestOnLabel;
  const jars = tooLong ? undefined : (all.find((one) => nameOf(one) === size) ?? all[0]);
  const asked = typed ?? String(Math.min(most, jars?.filled ?? 0));
  const read = readMeasure(asked, { unit: null, own: ['label', 'labels', 'jar', 'jars'], least: 1, most, whole: true, suchAs: '24' });
  const count = read.ok ? read.value : null;
  const sheets = Math.ceil((count ?? 0) / perSheet);
  return (
    <main className="labels-page">
      {/* The size of the sheet is chosen here and cannot be a class of its own. */}
      <style>{`@page labels { size: ${paper}; margin: 10mm; }`}</style>
      <div className="no-print">
        <p className="labels-acts">
          {jars === undefined ? null : (
            <button type="button" className="main" disabled={count === null} onClick={() => window.print()}>
              {words.print}
            </button>
          )}
          {fault && data === undefined ? <Link href="/honey">{words.toHoney}</Link> : <Link href={lotAddress(code)}>{words.back(code)}</Link>}
        </p>
        <h1>{title}</h1>
        <FaultNote fault={fault} />
        {data && jars === undefined ? <p className="soft">{tooLong ? words.tooLong(longestOnLabel) : words.none}</p> : null}
        {data && jars ? (
          <>
            <p className="caution">{words.caution}</p>
            {data.line.within === false ? <p className="needs">{data.limitSentence}</p> : null}
            <div className="fields labels-fields">
              <div className="field">
                <label htmlFor={`${id}size`}>{words.size}</label>
                <select id={`${id}size`} value={nameOf(jars)} onChange={(event) => { setSize(event.target.value); setTyped(null); }}>
                  {all.map((one) => (
                    <option key={nameOf(one)} value={nameOf(one)}>
                      {nameOf(one)}
                    </option>
                  ))}
                </select>
              </div>
              <div className="field">
                <label htmlFor={`${id}count`}>{words.count}</label>
                <input id={`${id}count`} type="text" inputMode="numeric" autoComplete="off" value={asked} aria-invalid={count === null} aria-describedby={`${id}count-says`} onChange={(event) => setTyped(event.target.value)} />
                <span id={`${id}count-says`} className="field-fault">
                  {count === null ? words.badCount(most) : null}
                </span>
                {jars.filled > most ? <span className="soft small">{words.more(jars.filled, most)}</span> : null}
              </div>
              <div className="field">
                <label htmlFor={`${id}paper`}>{words.paper}</label>
                <select id={`${id}paper`} value={paper} onChange={(event) => setPaper(papers.find((one) => one === event.target.value) ?? 'letter')}>
                  {papers.map((one) => (
                    <option key={one} value={one}>
                      {words.papers[one]}
                    </option>
                  ))}
                </select>
              </div>
              <div className="field wide">
                <label htmlFor={`${id}who`}>{words.who}</label>
                <input id={`${id}who`} type="text" autoComplete="off" maxLength={80} value={who} aria-describedby={`${id}who-says`} onChange={(event) => { setWho(event.target.value); draft.keep(event.target.value); }} />
                <span id={`${id}who-says`} className="soft small">
                  {words.whoHelp}
                </span>
              </div>
            </div>
            {count === null ? null : <p>{words.line(count, sheets, perSheet)}</p>}
            {jars.bestBefore === null ? <p>{words.noBest}</p> : null}
            <p className="soft">{`${words.holds(jarText(data.line.code))} ${words.law}`}</p>
          </>
        ) : null}
      </div>
      {data && jars && count !== null
        ? Array.from({ length: sheets }, (_, at) => (
            <section key={at} className="labels-sheet" aria-label={words.sheet(at + 1, sheets)}>
              {Array.from({ length: Math.min(perSheet, count - at * perSheet) }, (_one, place) => (
                <Label key={place} at={at * perSheet + place + 1} lot={data.line.code} jars={jars} who={who.trim()} />
              ))}
            </section>
          ))
        : null}
    </main>
  );
}

function Label({ at, lot, jars, who }: { readonly at: number; readonly lot: string; readonly jars: Jars; readonly who: string }) {
  const { size, path } = useMemo(() => tagCode(jarText(lot)), [lot]);
  return (
    <article className="jar-label" aria-label={words.label(at)}>
      <div className="label-words">
        <p className="label-honey">{words.heading}</p>
        <p>{`${words.weight} ${netWeight(jars.size)}`}</p>
        {who === '' ? null : <p className="label-who">{who}</p>}
        <p className={lot.length > 18 ? 'label-long' : undefined}>
          {`${words.lot} `}
          <bdi>{lot}</bdi>
        </p>
        {jars.bestBefore === null ? null : <p>{`${words.bestBefore} ${dayText(jars.bestBefore)}`}</p>}
      </div>
      <svg className="label-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={words.code(lot)} shapeRendering="crispEdges">
        <rect width={size} height={size} fill="#ffffff" />
        <path d={path} fill="#000000" />
      </svg>
      <p className="label-infants">{words.infants}</p>
    </article>
  );
}
