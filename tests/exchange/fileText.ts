import { columns, type Cells, type Column } from '#shared/entryForms.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';

/** A file of the given rows with every column. */
export function fileText(rows: readonly Cells[]): string {
  return writeCsv(rows);
}

/** A row from `column=value` words parted by `|`, first day and kind: `2025-04-19 install | yard=OO | colony=G1`. */
export function row(text: string): Cells {
  const [head = '', ...parts] = text.split('|').map((part) => part.trim());
  const cells: Cells = { date: head.slice(0, head.indexOf(' ')), entry: head.slice(head.indexOf(' ') + 1) };
  for (const part of parts) {
    const column = part.slice(0, part.indexOf('='));
    if (!(columns as readonly string[]).includes(column)) throw new Error(`no column ${column}`);
    cells[column as Column] = part.slice(part.indexOf('=') + 1);
  }
  return cells;
}

export const rows = (...texts: string[]): Cells[] => texts.map(row);
