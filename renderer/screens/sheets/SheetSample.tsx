import { useId } from 'react';
import type { SheetLook } from '#shared/contract/sheets.ts';
import { columns, entryForms, type Kind } from '#shared/entryForms.ts';
import { missing, number } from '../../parts/format.ts';
import { columnName } from './targets.ts';
import { words } from './words.ts';

/** The first rows in the book's own columns; a row that cannot be read says why instead. */
export function SheetSample({ sample }: { readonly sample: SheetLook['sample'] }) {
  const id = useId();
  const used = columns.filter((column) => sample.some(({ cells }) => cells[column] !== undefined));
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.sample}</h2>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.sample}>
        <table className="tight sheet-sample" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col" className="number">
                {words.rowLine}
              </th>
              {used.length === 0 ? <th scope="col">{words.wrong}</th> : null}
              {used.map((column) => (
                <th key={column} scope="col">
                  {columnName(column)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sample.map(({ line, cells, trouble }) => (
              <tr key={line}>
                <th scope="row" className="number">
                  {number(line)}
                </th>
                {trouble !== null ? (
                  <td colSpan={Math.max(1, used.length)} className="needs">
                    {words.wrong}: {trouble.sentence}
                  </td>
                ) : (
                  used.map((column) => <td key={column}>{cells[column] === undefined ? missing : column === 'entry' ? entryForms[cells[column] as Kind].label : cells[column]}</td>)
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
