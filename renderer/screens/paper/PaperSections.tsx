import type { PaperCell, PaperColumn, PaperSection, PaperTable } from '#shared/contract/paper.ts';
import { dayFromIso } from '#shared/days.ts';
import { dayText, missing, number, percent } from '../../parts/format.ts';
import { Drawing } from './Drawing.tsx';

/** The review's parts on paper: sentence, picture, table with a head that repeats, how it was counted. */
export function PaperSections({ sections, line }: { readonly sections: readonly PaperSection[]; readonly line: string }) {
  return sections.map((section) => (
    <section key={section.key} aria-label={section.title}>
      <div className="paper-head">
        <h2>{section.title}</h2>
        {section.sentences.map((sentence) => (
          <p key={sentence} className="paper-sentence">
            {sentence}
          </p>
        ))}
        {section.drawings.map((drawing) => (
          <Drawing key={drawing.name} drawing={drawing} />
        ))}
      </div>
      {section.tables.map((table) => (table.onPaper ? <Table key={table.key} table={table} line={line} /> : null))}
      {section.notes.map((note) => (
        <p key={note} className="small">
          {note}
        </p>
      ))}
    </section>
  ));
}

function Table({ table, line }: { readonly table: PaperTable; readonly line: string }) {
  const { columns, rows, totals } = table;
  return (
    <table className={columns.length > 9 ? 'paper-wide' : undefined}>
      <caption className="visually-hidden">{table.title}</caption>
      <thead>
        <tr className="paper-running">
          <td colSpan={columns.length}>{line}</td>
        </tr>
        <tr>
          {columns.map((column) => (
            <th key={column.label} scope="col" className={isNumber(column) ? 'number' : undefined}>
              {column.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, place) => (
          // Rows of a finished table: their place is what they are.
          <tr key={place} className={totals && place === rows.length - 1 ? 'paper-total' : undefined}>
            {columns.map((column, at) => (
              <td key={column.label} className={isNumber(column) ? 'number' : undefined}>
                {cellText(row[at] ?? null, column)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function isNumber({ unit }: PaperColumn): boolean {
  return unit !== 'text' && unit !== 'day';
}

function cellText(cell: PaperCell, { unit }: PaperColumn): string {
  if (cell === null || cell === '') return missing;
  if (typeof cell === 'string') return unit === 'day' ? dayText(dayFromIso(cell)) : cell;
  return unit === 'share' ? percent(cell) : number(cell, 2);
}
