import { Fragment } from 'react';
import type { PaperCell, PaperColumn, PaperPart, PaperSection, PaperTable } from '#shared/contract/paper.ts';
import { dayFromIso } from '#shared/days.ts';
import { paperLayout } from '#shared/paperLayout.ts';
import { dayText, missing, number, percent } from '../../parts/format.ts';
import { Drawing } from './Drawing.tsx';

/** The review's numbered sections on paper, part by part: sentences, picture, table with a head that repeats, how it was counted. */
export function PaperSections({ sections }: { readonly sections: readonly PaperSection[] }) {
  return sections.map((section) => (
    <section key={section.key} className={`paper-${section.key}`} aria-label={section.title}>
      {section.parts.map((part, at) => (
        <Part key={part.key} part={part} section={at === 0 ? section : null} />
      ))}
    </section>
  ));
}

/** A part; the first one keeps the head of its section with it. */
function Part({ part, section }: { readonly part: PaperPart; readonly section: PaperSection | null }) {
  return (
    <>
      <div className="paper-head">
        {section && (
          <h2>
            <span className="paper-number">{section.number}</span> {section.title}
          </h2>
        )}
        {part.title !== '' && <h3>{part.title}</h3>}
        {part.sentences.map((sentence, at) => (
          // What one wrote may say the same twice.
          <p key={at} className="paper-sentence">
            {sentence}
          </p>
        ))}
        {part.drawings.map((drawing) => (
          <Drawing key={drawing.name} drawing={drawing} />
        ))}
      </div>
      {part.tables.map((table) => (table.onPaper ? <Table key={table.key} table={table} /> : null))}
      {part.notes.map((note) => (
        <p key={note} className="small">
          {note}
        </p>
      ))}
    </>
  );
}

function Table({ table }: { readonly table: PaperTable }) {
  const { columns, lines, looks } = paperLayout(table);
  return (
    <table className={looks.join(' ')}>
      <caption className="visually-hidden">{table.title}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.label} scope="col" className={isNumber(column) ? 'number' : undefined}>
              {column.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map(({ group, cells, total }, place) => (
          // Rows of a finished table: their place is what they are.
          <Fragment key={place}>
            {group !== null ? (
              <tr className="paper-group">
                <th scope="rowgroup" colSpan={columns.length}>
                  {group}
                </th>
              </tr>
            ) : (
              <tr className={total ? 'paper-total' : undefined}>
                {columns.map((column, at) => (
                  <td key={column.label} className={column.unit === 'figure' ? 'number paper-figure' : isNumber(column) ? 'number' : undefined}>
                    {cellText(cells[at] ?? null, column)}
                  </td>
                ))}
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function isNumber({ unit }: PaperColumn): boolean {
  return unit !== 'text' && unit !== 'day';
}

function cellText(cell: PaperCell, { unit }: PaperColumn): string {
  if (cell === null) return missing;
  if (typeof cell === 'string') return unit === 'day' ? dayText(dayFromIso(cell)) : cell;
  return unit === 'share' ? percent(cell) : number(cell, 2);
}
