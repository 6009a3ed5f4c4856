import { useState } from 'react';
import { yieldGroupings, type YieldGrouping } from '#shared/contract/yields.ts';
import { useBook } from '../../desk/useBook.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { download } from '../../parts/download.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { YieldBehind, type OpenedGroup } from './YieldBehind.tsx';
import './yields.css';
import { YieldSeasons } from './YieldSeasons.tsx';
import { YieldTable } from './YieldTable.tsx';
import { enough, yieldsCsv } from './yieldText.ts';
import { yieldWords as words } from './yieldWords.ts';

/** What colonies gave by yard, line, age of queen, source and season, and each season beside the country’s figure. */
export function YieldSection() {
  const { book } = useBook();
  const [by, setBy] = useState<YieldGrouping>('yard');
  const [chosen, setChosen] = useState<number | null>(null);
  const [opened, setOpened] = useState<OpenedGroup | null>(null);
  const season = by === 'season' ? null : chosen;
  const { data, fault, stale } = useCalmRead('yields.table', { by, season }, { keep: true });
  if (book === undefined) return null;
  const unit = book.massUnit;
  const choose = (change: () => void) => {
    setOpened(null);
    change();
  };
  return (
    <section className="section yields-section" aria-label={words.title}>
      <h2>{words.title}</h2>
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? (
        <p className="soft" role="status">
          {words.reading}
        </p>
      ) : null}
      {data !== undefined && data.seasons.length === 0 ? <p>{words.empty}</p> : null}
      {data === undefined || data.seasons.length === 0 ? null : (
        <>
          <div className="choices no-print">
            <label className="inline-choice">
              {words.by}{' '}
              <select value={by} onChange={(event) => choose(() => setBy(yieldGroupings.find((one) => one === event.target.value) ?? 'yard'))}>
                {yieldGroupings.map((one) => (
                  <option key={one} value={one}>
                    {words.groupings[one]}
                  </option>
                ))}
              </select>
            </label>
            {by === 'season' ? null : (
              <label className="inline-choice">
                {words.season}{' '}
                <select value={chosen ?? ''} onChange={(event) => choose(() => setChosen(event.target.value === '' ? null : Number(event.target.value)))}>
                  <option value="">{words.allSeasons}</option>
                  {data.seasons.toReversed().map((one) => (
                    <option key={one.season} value={one.season}>
                      {one.season}
                    </option>
                  ))}
                </select>
              </label>
            )}
            {enough(data) ? (
              <button type="button" disabled={stale} onClick={() => download(words.csvName(data.by, data.season), yieldsCsv(data, unit))}>
                {words.csv}
              </button>
            ) : null}
          </div>
          <Awaited stale={stale}>
            <p className="sentence">{data.sentence}</p>
            {enough(data) ? (
              <YieldTable answer={data} unit={unit} opened={opened} onOpen={setOpened} />
            ) : data.all.n > 0 ? (
              <p>
                <button type="button" className="link no-print" onClick={() => setOpened({ group: null, title: words.weighedTitle })}>
                  {words.showWeighed}
                </button>
              </p>
            ) : null}
            {opened === null ? null : <YieldBehind key={opened.title} by={data.by} season={data.season} unit={unit} {...opened} onClose={() => setOpened(null)} />}
            {enough(data)
              ? data.remarks.map((remark) => (
                  <p key={remark} className="soft small">
                    {remark}
                  </p>
                ))
              : null}
            <YieldSeasons answer={data} unit={unit} />
          </Awaited>
        </>
      )}
      <MarginContent heading={words.marginHow}>
        {[...words.marginText, words.marginHours, words.marginPrinted].map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </MarginContent>
    </section>
  );
}
