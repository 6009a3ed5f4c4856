import { useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { NeedLine } from '#shared/contract/needs.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { NeedRow, type NeedRowProps } from './NeedRow.tsx';
import './needs.css';
import { PutOffList } from './PutOffList.tsx';
import { words } from './words.ts';

const mostLines = 7;

/** What needs doing in the whole operation or in one yard, the most urgent first. */
export function NeedsScreen() {
  const { book } = useBook();
  const [yard, setYard] = useState<YardId | null>(null);
  const { data, fault, stale } = useRead('needs.list', { yard }, { keep: true });
  const lines = data?.lines ?? [];
  const now = lines.filter(({ status, optional }) => status !== 'coming' && !optional);
  const optional = lines.filter((line) => line.status !== 'coming' && line.optional);
  const coming = lines.filter(({ status }) => status === 'coming');
  const row = data === undefined || book === undefined ? null : { yard, today: data.today, most: data.putOffMost, order: book.dateOrder };
  return (
    <Page title={words.title} line={words.line} asOf={data?.today}>
      <NeedsNav />
      <FaultNote fault={fault} />
      {data && book && data.yards.length === 0 ? <Empty sentence={words.nothingYet} action={<Link href="/tonight">{words.nothingYetNext}</Link>} /> : null}
      {data === undefined || row === null || data.yards.length === 0 ? null : (
        <>
          <div className="choices">
            <label className="inline-choice">
              {words.yard}{' '}
              <select value={yard ?? ''} onChange={(event) => setYard(data.yards.find(({ id }) => String(id) === event.target.value)?.id ?? null)}>
                <option value="">{words.allYards}</option>
                {data.yards.map(({ id, name, lines: count }) => (
                  <option key={id} value={id}>
                    {words.yardLines(name, count)}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <Awaited stale={stale}>
            <section aria-label={words.list}>
              <p className="sentence">{now.length === 0 ? words.nothing : words.sentence(now.length, now.filter(({ status }) => status === 'overdue').length, words.hours(now.reduce((sum, { minutes }) => sum + minutes, 0)))}</p>
              <Lines key={`now ${yard ?? 'all'}`} lines={now} row={row} />
              {optional.length === 0 ? null : (
                <>
                  <h2>{words.optional}</h2>
                  <Lines key={`optional ${yard ?? 'all'}`} lines={optional} row={row} />
                </>
              )}
              {coming.length === 0 ? null : <h2>{words.coming}</h2>}
              <Lines key={`coming ${yard ?? 'all'}`} lines={coming} row={row} />
            </section>
          </Awaited>
          <PutOffList items={data.putOff} />
          <MarginContent heading={words.how}>
            <p>{words.howText}</p>
            <p>{words.howMore}</p>
            <RulesLink room="attention" />
          </MarginContent>
        </>
      )}
    </Page>
  );
}

/** The first few; the rest when asked. */
function Lines({ lines, row }: { readonly lines: readonly NeedLine[]; readonly row: Omit<NeedRowProps, 'line'> }) {
  const [all, setAll] = useState(false);
  const shown = all || lines.length <= mostLines + 1 ? lines : lines.slice(0, mostLines);
  return (
    <>
      <ol className="needs-lines">
        {shown.map((line) => (
          <NeedRow key={line.key} line={line} {...row} />
        ))}
      </ol>
      {shown.length < lines.length ? (
        <button type="button" className="link" onClick={() => setAll(true)}>
          {words.more(lines.length - shown.length)}
        </button>
      ) : null}
    </>
  );
}
