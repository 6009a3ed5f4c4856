import type { ReactNode } from 'react';
import type { OpenBook } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import { entryForms, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import { DayField } from './DayField.tsx';
import { EntryField } from './EntryField.tsx';
import { entryWords } from './entryWords.ts';

interface EntryFieldsProps {
  /** Before the names of the fields: `ID-date`. */
  readonly id: string;
  readonly kind: Kind | null;
  readonly columns: readonly Column[];
  readonly cells: Cells;
  /** What is wrong with a cell, by its column. */
  readonly refused: ReadonlyMap<string, string>;
  /** What is asked about a day that is still to come. */
  readonly ahead: string | null;
  readonly book: OpenBook;
  readonly today: Day;
  readonly labels: readonly string[];
  readonly below?: (column: Exclude<Column, 'date' | 'entry'>) => ReactNode;
  onChange(column: Column, value: string): void;
}

/** The cells of one entry to be mended: its day, then the columns of its kind. */
export function EntryFields({ id, kind, columns, cells, refused, ahead, book, today, labels, below, onChange }: EntryFieldsProps) {
  return (
    <>
      <DayField label={entryWords.day} name={`${id}-date`} value={cells.date ?? ''} today={today} order={book.dateOrder} fault={refused.get('date') ?? ahead} onChange={(value) => onChange('date', value)} />
      {kind === null
        ? null
        : columns.map((column) =>
            column === 'date' || column === 'entry' ? null : (
              <EntryField
                key={column}
                one
                kind={kind}
                column={column}
                name={`${id}-${column}`}
                must={entryForms[kind].must.includes(column)}
                value={cells[column] ?? ''}
                fault={refused.get(column) ?? null}
                yards={book.yards}
                colonies={labels}
                onChange={(value) => onChange(column, value)}
                below={below?.(column)}
              />
            ),
          )}
    </>
  );
}
