import { useState } from 'react';
import type { ImportReport } from '#shared/contract/book.ts';
import { download } from '../../parts/download.ts';
import { missing, number } from '../../parts/format.ts';
import { words } from './words.ts';

const page = 200;

/** Rows that were not taken, each with its line, column, value and the sentence that mends it. */
export function SortOutList({ file, items }: { readonly file: string; readonly items: ImportReport['toSortOut'] }) {
  const [shown, setShown] = useState(page);
  const more = Math.min(page, items.length - shown);
  return (
    <section className="section" aria-label={words.sortHeading}>
      <h3>
        {words.sortHeading}: {number(items.length)}
      </h3>
      <p className="soft">{words.sortLine}</p>
      <div className="scroll sort-out" tabIndex={0} role="group" aria-label={words.sortHeading}>
        <table className="tight">
          <thead>
            <tr>
              <th scope="col" className="number">
                {words.lineNumber}
              </th>
              <th scope="col">{words.column}</th>
              <th scope="col">{words.value}</th>
              <th scope="col">{words.sentence}</th>
            </tr>
          </thead>
          <tbody>
            {items.slice(0, shown).map((item) => (
              <tr key={`${item.line}-${item.column ?? ''}-${item.sentence}`}>
                <th scope="row" className="number">
                  {number(item.line)}
                </th>
                <td>{item.column ?? missing}</td>
                <td className="value">{item.value === '' ? missing : clipped(item.value)}</td>
                <td>{item.sentence}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="acts">
        {more > 0 ? (
          <button type="button" onClick={() => setShown(shown + page)}>
            {words.sortMore(number(more))}
          </button>
        ) : null}
        <button type="button" onClick={() => download(`${file.replace(/\.csv$/i, '')} to sort out.csv`, listAsCsv(items))}>
          {words.sortSave}
        </button>
      </div>
    </section>
  );
}

function clipped(value: string): string {
  return value.length > 160 ? `${value.slice(0, 160)}…` : value;
}

/** The list as a file to work through; a value that a spreadsheet would run as a formula is made plain text. */
export function listAsCsv(items: ImportReport['toSortOut']): string {
  const cell = (text: string) => {
    const plain = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
    return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
  };
  const rows = items.map((item) => [String(item.line), item.column ?? '', item.value, item.sentence].map(cell).join(','));
  return ['line,column,value,sentence', ...rows, ''].join('\r\n');
}
