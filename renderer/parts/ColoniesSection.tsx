import { useId, useState, type ReactNode } from 'react';
import { useFirstRows } from './useFirstRows.tsx';

interface ColoniesSectionProps<Row> {
  readonly title: string;
  /** What the box says that leaves out those that want nothing. */
  readonly only: string;
  readonly none: string;
  readonly rowsOf: (only: boolean) => readonly Row[];
  readonly head: ReactNode;
  readonly row: (one: Row) => ReactNode;
}

/** A table of colonies: at first only those that want something, all of them when asked. */
export function ColoniesSection<Row>({ title, only: onlyWords, none, rowsOf, head, row }: ColoniesSectionProps<Row>) {
  const [only, setOnly] = useState(true);
  const heading = useId();
  const rows = rowsOf(only);
  const { shown, more } = useFirstRows(rows, title);
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{title}</h2>
      <div className="choices">
        <label className="inline-choice">
          <input type="checkbox" checked={only} onChange={(event) => setOnly(event.target.checked)} /> {onlyWords}
        </label>
      </div>
      {rows.length === 0 ? (
        <p>{none}</p>
      ) : (
        <div className="scroll" tabIndex={0} role="group" aria-labelledby={heading}>
          <table className="tight" aria-labelledby={heading}>
            <thead>
              <tr>{head}</tr>
            </thead>
            <tbody>{shown.map(row)}</tbody>
          </table>
        </div>
      )}
      {more}
    </section>
  );
}
