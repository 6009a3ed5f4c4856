import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { lanesAtATime } from '#shared/contract/lines.ts';
import '../../charts/charts.css';
import '../../charts/family.css';
import { useBook } from '../../desk/useBook.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { download } from '../../parts/download.ts';
import { picturePng } from '../../charts/picturePng.ts';
import { familySvg } from '../../charts/familySvg.tsx';
import { LanePicture } from './LanePicture.tsx';
import { LaneTable } from './LaneTable.tsx';
import { LineChoices } from './LineChoices.tsx';
import { LineTable } from './LineTable.tsx';
import './lines.css';
import { useLines, useLinesView, viewInWords } from './useLines.ts';
import { words } from './words.ts';

export function LinesScreen() {
  const { book } = useBook();
  const [view, change] = useLinesView(book?.path ?? '');
  const { data, fault, more, whole } = useLines(view);
  const [asTable, setAsTable] = useState(false);
  const [tooLarge, setTooLarge] = useState(false);
  const [, navigate] = useLocation();
  if (!book) return null;
  const saveAs = async (ending: 'svg' | 'png') => {
    const all = await whole();
    if (all === undefined) return;
    const name = words.fileName(book.name, viewInWords(all, view), ending);
    const svg = familySvg(all, view.season);
    if (ending === 'svg') {
      download(name, svg, 'image/svg+xml;charset=utf-8');
      return;
    }
    const picture = await picturePng(svg);
    setTooLarge(picture === null);
    if (picture !== null) download(name, picture);
  };
  const empty = data !== undefined && data.families.length === 0;
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {empty ? <Empty sentence={words.none} action={<Link href="/colonies">{words.noneFirst}</Link>} /> : null}
      {data === undefined || empty ? null : (
        <>
          <LineChoices picture={data} view={view} onChange={change}>
            <button type="button" className="link" onClick={() => setAsTable(!asTable)}>
              {asTable ? words.asPicture : words.asTable}
            </button>
            {data.lanes.length === 0 ? null : (
              <>
                <button type="button" className="link" onClick={() => void saveAs('svg')}>
                  {words.save}
                </button>
                <button type="button" className="link" onClick={() => void saveAs('png')}>
                  {words.savePng}
                </button>
                <Link href="/print/lines">{words.print}</Link>
              </>
            )}
          </LineChoices>
          {tooLarge ? <p role="alert">{words.pngTooLarge}</p> : null}
          {data.lanes.length === 0 ? (
            <Empty
              sentence={words.noneFits}
              action={
                <button type="button" onClick={() => change({ family: null, yard: null, season: null })}>
                  {words.clear}
                </button>
              }
            />
          ) : (
            <>
              <p className="lines-sentence">{data.sentence}</p>
              {asTable ? (
                <LaneTable picture={data} />
              ) : (
                <LanePicture
                  key={`${view.family} ${view.yard} ${view.season}`}
                  picture={data}
                  season={view.season}
                  onOpen={(id) => navigate(`/colonies/${id}`)}
                  onFamily={view.family === null ? (family) => change({ family }) : null}
                />
              )}
              {data.lanes.length < data.laneCount ? (
                <p className="lines-more">
                  {words.firstLanes(number(data.lanes.length), number(data.laneCount))}{' '}
                  <button type="button" className="link" disabled={more === null} onClick={more ?? undefined}>
                    {words.moreLanes(number(Math.min(lanesAtATime, data.laneCount - data.lanes.length)))}
                  </button>
                </p>
              ) : null}
            </>
          )}
          <LineTable picture={data} unit={book.massUnit} />
          {/* Comes anew with the picture, so that it stays below what is said of the lane. */}
          <MarginContent key={`${view.family} ${view.yard} ${view.season} ${asTable}`} heading={words.howCounted}>
            {words.howCountedText.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </MarginContent>
        </>
      )}
    </Page>
  );
}
