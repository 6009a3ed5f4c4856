import { columns, type Cells } from '#shared/entryForms.ts';

/** The journal as a file: header, then one row an entry, comma and LF (RFC 4180 quoting), all columns always. */
export function writeCsv(rows: Iterable<Cells>): string {
  const lines = [columns.join(',')];
  for (const row of rows) lines.push(columns.map((column) => quote(row[column] ?? '')).join(','));
  return `${lines.join('\n')}\n`;
}

export function quote(cell: string): string {
  return /[",\n\r]/.test(cell) || cell !== cell.trim() ? `"${cell.replaceAll('"', '""')}"` : cell;
}
