import { entryForms } from '#shared/entryForms.ts';
import type { ImportReport } from '#shared/contract/book.ts';
import { counted, dayText, number } from '../../parts/format.ts';
import { ImportResult } from './ImportResult.tsx';
import { NewItems } from './NewItems.tsx';
import { SortOutList } from './SortOutList.tsx';
import { words } from './words.ts';

export interface ImportPreviewProps {
  readonly report: ImportReport;
  /** True once it is in the book; what remains is the list to sort out. */
  readonly entered: boolean;
  /** What was said to be meant by new items so far. */
  readonly items: Readonly<Record<string, string>>;
  readonly busy: boolean;
  readonly onEnter: () => void;
  /** What is meant by a new item that reads almost like a known one; the preview is made again with it. */
  readonly onMeant: (item: string, meant: string) => void;
  readonly onPutAside: () => void;
  readonly onTakenBack: () => void;
}

/** What a file holds, counted so that it adds up, before or after it is entered. */
export function ImportPreview({ report, entered, items, busy, onMeant, onEnter, onPutAside, onTakenBack }: ImportPreviewProps) {
  return (
    <div className="preview">
      {entered ? null : <h3>{words.found(report.file)}</h3>}
      {entered ? (
        <ImportResult report={report} onTakenBack={onTakenBack} />
      ) : (
        <div className="pair">
          <div className="stack">
            <Counts report={report} />
            <dl className="facts">
              <dt>{words.days}</dt>
              <dd>{report.firstDay ? words.daysFrom(dayText(report.firstDay), dayText(report.lastDay)) : number(null)}</dd>
              <dt>{words.newYards}</dt>
              <dd>{report.newYards.length > 0 ? report.newYards.join(', ') : words.newYardsNone}</dd>
              <dt>{words.livingAfter}</dt>
              <dd>{number(report.living)}</dd>
              {report.ahead.rows > 0 ? (
                <>
                  <dt>{words.aheadAt}</dt>
                  <dd className="needs">
                    {words.aheadRows(counted(report.ahead.rows, 'row', 'rows'), lineList(report.ahead.lines, report.ahead.rows))}
                  </dd>
                </>
              ) : null}
              {report.strange.rows > 0 ? (
                <>
                  <dt>{words.strangeAt}</dt>
                  <dd className="needs">
                    {words.strangeRows(counted(report.strange.rows, 'row', 'rows'))}
                    <ul className="plain-list">
                      {report.strange.figures.slice(0, shownFigures).map(({ line, sentence }) => (
                        <li key={`${line} ${sentence}`}>{words.strangeLine(number(line), sentence)}</li>
                      ))}
                    </ul>
                    {report.strange.figures.length > shownFigures ? words.more(number(report.strange.figures.length - shownFigures)) : null}
                  </dd>
                </>
              ) : null}
              {report.repeatLines.length > 0 ? (
                <>
                  <dt>{words.repeatsAt}</dt>
                  <dd>{lineList(report.repeatLines, report.repeats)}</dd>
                </>
              ) : null}
            </dl>
          </div>
          <Kinds report={report} />
        </div>
      )}
      {entered || report.newItems.length === 0 ? null : <NewItems items={report.newItems} said={items} busy={busy} onMeant={onMeant} />}
      <div className="acts">
        {entered ? null : report.entered > 0 ? (
          <button type="button" className="main" disabled={busy || report.newItems.some(({ meant }) => meant === null)} onClick={onEnter}>
            {words.enter(counted(report.entered, words.record, words.records))}
          </button>
        ) : report.toKeep > 0 ? (
          <button type="button" className="main" disabled={busy} onClick={onEnter}>
            {words.keep(counted(report.toKeep, 'row', 'rows'))}
          </button>
        ) : (
          <p>{report.toSortOut.length > 0 ? words.waitingAlready : words.nothingNew}</p>
        )}
        <button type="button" disabled={busy} onClick={onPutAside}>
          {entered ? words.doneWith : words.putAside}
        </button>
      </div>
      {report.toSortOut.length > 0 ? <SortOutList file={report.file} items={report.toSortOut} /> : null}
    </div>
  );
}

function Counts({ report }: { readonly report: ImportReport }) {
  return (
    <table className="tight">
      <caption className="soft">{words.countsCaption}</caption>
      <tbody>
        <tr>
          <th scope="row">{words.rowsNew}</th>
          <td className="number">{number(report.entered)}</td>
        </tr>
        <tr>
          <th scope="row">{words.rowsRepeat}</th>
          <td className="number">{number(report.repeats)}</td>
        </tr>
        <tr>
          <th scope="row">{words.rowsSort}</th>
          <td className={report.toSortOut.length > 0 ? 'number needs' : 'number'}>{number(report.toSortOut.length)}</td>
        </tr>
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.rowsRead}</th>
          <td className="number">{number(report.read)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

function Kinds({ report }: { readonly report: ImportReport }) {
  if (report.kinds.length === 0) return null;
  return (
    <table className="tight">
      <caption className="soft">{words.kindsCaption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.kind}</th>
          <th scope="col" className="number">
            {words.rows}
          </th>
        </tr>
      </thead>
      <tbody>
        {report.kinds.map(({ kind, rows }) => (
          <tr key={kind}>
            <th scope="row">{entryForms[kind].label}</th>
            <td className="number">{number(rows)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.rowsNew}</th>
          <td className="number">{number(report.kinds.reduce((sum, { rows }) => sum + rows, 0))}</td>
        </tr>
      </tfoot>
    </table>
  );
}

const shownLines = 30;
const shownFigures = 8;

function lineList(lines: readonly number[], all: number): string {
  const shown = lines.slice(0, shownLines).map((line) => number(line)).join(', ');
  const more = all - Math.min(shownLines, lines.length);
  return more > 0 ? `${shown} ${words.more(number(more))}` : shown;
}
