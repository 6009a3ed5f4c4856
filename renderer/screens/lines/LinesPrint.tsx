import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import type { LinesPicture } from '#shared/contract/lines.ts';
import '../../charts/charts.css';
import '../../charts/family.css';
import { FamilySheet } from '../../charts/FamilyChart.tsx';
import { familyGeometry } from '../../charts/familyGeometry.ts';
import { useBook } from '../../desk/useBook.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import './lines.css';
import { useLines, useLinesView, viewInWords } from './useLines.ts';
import { words } from './words.ts';

/** What a landscape sheet of Letter or A4 has room for, below a heading. */
const lanesPerSheet = 17;
const sheetWidth = 920;

/** The picture as it was shown, on sheets that each have the axis and a heading. */
export function LinesPrint() {
  const { book } = useBook();
  const [view] = useLinesView(book?.path ?? '');
  const { fault, whole } = useLines(view);
  const [data, setData] = useState<LinesPicture>();
  useEffect(() => {
    let here = true;
    void whole().then((all) => {
      if (here) setData(all);
    });
    return () => {
      here = false;
    };
  }, [whole]);
  const title = words.printTitle(data === undefined ? '' : viewInWords(data, view));
  useEffect(() => {
    document.title = title;
  }, [title]);
  const drawn = data === undefined ? null : familyGeometry(data, view.season, sheetWidth);
  const sheets = drawn === null ? 0 : Math.ceil(drawn.lanes.length / lanesPerSheet);
  return (
    <main className="lines-paper">
      <p className="lines-paper-acts no-print">
        {sheets === 0 ? null : (
          <button type="button" className="main" onClick={() => window.print()}>
            {words.printButton}
          </button>
        )}
        <Link href="/lines">{words.printBack}</Link>
      </p>
      <FaultNote fault={fault} />
      <h1>{title}</h1>
      {data === undefined || drawn === null ? null : <p className="lines-sentence">{data.sentence}</p>}
      {data === undefined || drawn === null || book === undefined
        ? null
        : Array.from({ length: sheets }, (_, at) => (
            <section key={at} className="lines-sheet" aria-label={words.printLine(book.name, dayText(data.asOf), at + 1, sheets)}>
              <FamilySheet picture={drawn} first={at * lanesPerSheet} last={Math.min(drawn.lanes.length, (at + 1) * lanesPerSheet) - 1} />
              <p className="lines-running">{words.printLine(book.name, dayText(data.asOf), at + 1, sheets)}</p>
            </section>
          ))}
      <p className="lines-legend">{words.legend.join('; ')}.</p>
    </main>
  );
}
