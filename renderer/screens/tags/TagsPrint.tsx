import { useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { tagCode, tagText } from './tagCode.ts';
import './tags.css';
import { words } from './words.ts';

const papers = ['letter', 'A4'] as const;
const perSheet = 10;
/** More would keep the window busy for seconds, and nobody prints them at once. */
const most = 600;

/** No yard has this number: what stood in the address is none. */
const none = 0;

/** A tag for every living colony, or those of one yard, ten to a sheet of Letter or A4. */
export function TagsPrint({ yard: first }: { readonly yard: string | undefined }) {
  const [yard, setYard] = useState(first === undefined ? null : /^\d{1,9}$/.test(first) ? Number(first) : none);
  const [paper, setPaper] = useState<(typeof papers)[number]>('letter');
  const asOf = useAsOf();
  const { data, fault } = useRead('colonies.list', { which: 'living', ...(yard === null || yard === none ? {} : { yard }) });
  const unknown = data !== undefined && yard !== null && !data.yards.some(({ id }) => id === yard);
  const rows = data === undefined || unknown ? [] : data.rows;
  const place = data?.yards.find(({ id }) => id === yard)?.name;
  const title = place === undefined ? words.title : words.titleOf(place);
  useEffect(() => {
    document.title = title;
  }, [title]);
  const tooMany = rows.length > most;
  const sheets = tooMany ? [] : Array.from({ length: Math.ceil(rows.length / perSheet) }, (_, at) => rows.slice(at * perSheet, (at + 1) * perSheet));
  return (
    <main className="tags-page">
      {/* The size of the sheet is chosen here and cannot be a class of its own. */}
      <style>{`@page tags { size: ${paper}; margin: 10mm; }`}</style>
      <div className="no-print">
        <p className="tags-acts">
          {rows.length === 0 ? null : (
            <button type="button" className="main" disabled={tooMany} onClick={() => window.print()}>
              {words.print}
            </button>
          )}
          <Link href="/colonies">{words.back}</Link>
        </p>
        <h1>{title}</h1>
        <p className="choices">
          <label className="inline-choice">
            {words.yard}{' '}
            <select value={unknown ? 'unknown' : (yard ?? '')} onChange={(event) => setYard(event.target.value === '' ? null : Number(event.target.value))}>
              {unknown ? <option value="unknown">{words.choose}</option> : null}
              <option value="">{words.allYards}</option>
              {data?.yards.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label className="inline-choice">
            {words.paper}{' '}
            <select value={paper} onChange={(event) => setPaper(papers.find((one) => one === event.target.value) ?? 'letter')}>
              {papers.map((one) => (
                <option key={one} value={one}>
                  {words.papers[one]}
                </option>
              ))}
            </select>
          </label>
        </p>
        <FaultNote fault={fault} />
        {rows[0] === undefined ? null : (
          <>
            <p>{tooMany ? words.many(most) : words.line(rows.length, sheets.length)}</p>
            <p className="soft">{words.holds(tagText(rows[0]), asOf === null ? null : dayText(asOf))}</p>
          </>
        )}
        {data !== undefined && rows.length === 0 ? <p className="soft">{unknown ? words.noYard : words.none}</p> : null}
      </div>
      {sheets.map((sheet, at) => (
        <section key={at} className="tags-sheet" aria-label={words.sheet(at + 1, sheets.length)}>
          {sheet.map((row) => (
            <Tag key={row.id} row={row} />
          ))}
        </section>
      ))}
    </main>
  );
}

function Tag({ row }: { readonly row: ColonyRow }) {
  const text = tagText(row);
  const { size, path } = useMemo(() => tagCode(text), [text]);
  const { queen } = row;
  const letters = [...row.label].length;
  return (
    <article className="tag" aria-label={row.label}>
      <div className="tag-words">
        <p className={`tag-label ${letters > 28 ? 'tag-long' : letters > 9 ? 'tag-medium' : ''}`}>
          <bdi>{row.label}</bdi>
        </p>
        <p>
          <bdi>{row.yardName}</bdi>
        </p>
        <p className="tag-queen">{queen === null || queen.colour === null || queen.year === null ? words.queenUnknown : words.queen(`${queen.colour} ${queen.year}`)}</p>
      </div>
      <svg className="tag-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={words.code(row.label)} shapeRendering="crispEdges">
        <rect width={size} height={size} fill="#ffffff" />
        <path d={path} fill="#000000" />
      </svg>
    </article>
  );
}
