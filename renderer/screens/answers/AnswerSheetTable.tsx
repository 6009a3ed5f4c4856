import type { AnswerRow, AnswerSheet } from '#shared/contract/answers.ts';
import { missing } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { bareText, sheetText } from './answerText.ts';
import { words } from './words.ts';

export interface AnswerSheetTableProps {
  readonly sheet: AnswerSheet;
  readonly onCopy: (text: string, what: string) => void;
}

/** One survey's counts: what is counted with its meaning, the answers, a button for each. */
export function AnswerSheetTable({ sheet, onCopy }: AnswerSheetTableProps) {
  const note = useMarginNote();
  return (
    <section className="section answer-sheet" aria-label={sheet.title}>
      <div className="answer-head">
        <h2>{sheet.title}</h2>
        <button type="button" className="link no-print" aria-label={words.copySheetOf(sheet.title)} onClick={() => onCopy(sheetText(sheet), sheet.title)}>
          {words.copySheet}
        </button>
      </div>
      <p className="soft">{sheet.when}</p>
      <div className="scroll" tabIndex={0} role="group" aria-label={sheet.title}>
        <table>
          <caption className="visually-hidden">{sheet.title}</caption>
          <thead>
            <tr>
              <th scope="col">{words.question}</th>
              {sheet.columns.map((column) => (
                <th key={column} scope="col" className="number">
                  {column}
                </th>
              ))}
              <td className="no-print" />
            </tr>
          </thead>
          <tbody>
            {sheet.rows.map((row) => (
              <tr key={row.key} {...note(<AnswerNote sheet={sheet} row={row} />)}>
                <th scope="row">
                  {row.label}
                  {row.definition === '' ? null : <span className="answer-means">{row.definition}</span>}
                </th>
                {row.cells.map((cell, at) => (
                  <td key={sheet.columns[at]} className={cell.value === null && cell.why === null ? 'number answer-rate' : 'number'}>
                    {cell.why === null ? cell.text : missing}
                  </td>
                ))}
                <td className="no-print">
                  <button type="button" className="link" aria-label={words.copyOf(row.label, sheet.title)} onClick={() => onCopy(bareText(row), row.label)}>
                    {words.copy}
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {notKnownIn(sheet).map((sentence) => (
        <p key={sentence} className="needs">
          {sentence}
        </p>
      ))}
      <ul className="answer-remarks">
        {sheet.remarks.map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
      </ul>
      <p className="soft small">{sheet.source}</p>
    </section>
  );
}

/** Each dash with its reason, once a column and reason. */
function notKnownIn(sheet: AnswerSheet): string[] {
  const said = sheet.columns.flatMap((column, at) => {
    const whys = new Set(sheet.rows.flatMap(({ cells }) => cells[at]?.why ?? []));
    return [...whys].map((why) => (sheet.columns.length === 1 ? `${words.why}: ${why}` : `${words.why}, ${column}: ${why}`));
  });
  return [...new Set(said)];
}

function AnswerNote({ sheet, row }: { readonly sheet: AnswerSheet; readonly row: AnswerRow }) {
  const whys = new Set(row.cells.flatMap(({ why }) => why ?? []));
  return (
    <>
      <MarginPart heading={row.label}>
        {row.definition === '' ? null : <p>{row.definition}</p>}
        {[...whys].map((why) => (
          <p key={why}>
            {words.why}: {why}
          </p>
        ))}
      </MarginPart>
      <MarginPart heading={words.marginFrom}>
        <p>{sheet.source}</p>
      </MarginPart>
    </>
  );
}
