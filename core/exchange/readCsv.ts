import { CsvError, parse } from 'csv-parse/sync';
import { columns, type Cells, type Column } from '#shared/entryForms.ts';
import { refuse, type Answer } from '#shared/faults.ts';

/** One record of the file with the line it begins on; `stray` holds what stands outside the known columns: the first such cell, all of them as one text, and each. */
export interface CsvRow {
  readonly line: number;
  readonly cells: Cells;
  readonly stray: { readonly column: string; readonly value: string; readonly all: string; readonly each: readonly { readonly column: string; readonly value: string }[] } | null;
}

const byteOrderMark = '\uFEFF';
export const largestFile = 64 * 1024 * 1024;

/**
 * Reads a journal file: UTF-8, comma, RFC 4180 quoting, header row, LF or CRLF, with or without byte-order mark.
 * A file that cannot be read as a whole answers a fault; a single odd row is left to the row reader.
 */
export function readCsv(bytes: Uint8Array, fileName: string): Answer<CsvRow[]> {
  if (bytes.length > largestFile) return unreadable(`${fileName} is larger than 64 MiB.`, 'Cut it into several files, each with the header row.');
  if (bytes.length === 0) return unreadable(`${fileName} is empty.`, 'Choose a file with a header row and one row for each entry.');
  const decoded = decode(bytes, fileName);
  if (!decoded.ok) return decoded;
  // One kind of line end, so that lines are counted alike inside and outside quotation marks.
  const text = decoded.value.replace(/\r\n?/g, '\n');
  if (text.trim() === '') return unreadable(`${fileName} holds nothing but blank lines.`, 'Choose a file with a header row and one row for each entry.');
  let parsed: { record: string[]; info: { lines: number } }[];
  try {
    parsed = parse(text, { info: true, relax_column_count: true, relax_quotes: true, skip_empty_lines: true, record_delimiter: '\n' }) as unknown as typeof parsed;
  } catch (error) {
    if (error instanceof CsvError) {
      const line = typeof error['lines'] === 'number' ? error['lines'] : null;
      return unreadable(
        `${fileName} is not a table of comma-separated values${line === null ? '' : `: it cannot be read near line ${line}`}.`,
        error.code === 'CSV_QUOTE_NOT_CLOSED' ? 'A quotation mark is opened and never closed. Close it, or write it twice where it belongs to the text.' : 'Save the sheet as CSV (UTF-8, comma separated).',
      );
    }
    throw error;
  }
  const [header, ...records] = parsed;
  if (header === undefined) return unreadable(`${fileName} holds no rows.`, 'Choose a file with a header row.');
  const heads = readHeader(header.record, fileName);
  if (!heads.ok) return heads;
  const rows: CsvRow[] = [];
  for (const { record, info } of records) {
    if (record.every((cell) => cell.trim() === '')) continue;
    rows.push(readRecord(record, heads.value, firstLine(record, info.lines)));
  }
  return { ok: true, value: rows };
}

/** The text of a file in UTF-8, without its byte-order mark; anything else is refused, so that no name is changed. */
export function decode(bytes: Uint8Array, fileName: string): Answer<string> {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return unreadable(`${fileName} is written in UTF-16, which the journal's form is not.`, 'Save it again as CSV UTF-8.');
  }
  if (bytes.includes(0)) return unreadable(`${fileName} is not a text file.`, 'Save the sheet as CSV (UTF-8, comma separated) and choose that file.');
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return { ok: true, value: text.startsWith(byteOrderMark) ? text.slice(1) : text };
  } catch {
    return unreadable(`${fileName} is not in UTF-8: some letters cannot be read (it may be Latin-1).`, 'Save it again as CSV UTF-8, so that no name is changed.');
  }
}

function readHeader(record: readonly string[], fileName: string): Answer<string[]> {
  const heads = record.map((cell) => cell.trim().toLowerCase());
  if (!heads.includes('date') || !heads.includes('entry')) {
    const semicolons = record.length === 1 && (record[0] ?? '').split(';').length > 2;
    return unreadable(
      semicolons ? `${fileName} separates its columns with semicolons.` : `${fileName} has no header row with the columns date and entry.`,
      semicolons ? 'Save it with commas between the columns.' : `Give the first line the names of the columns: ${columns.slice(0, 5).join(', ')}, …`,
    );
  }
  const twice = heads.find((head, at) => head !== '' && heads.indexOf(head) !== at);
  if (twice !== undefined) return unreadable(`${fileName} has the column “${twice}” twice.`, 'Keep one of them.');
  return { ok: true, value: heads };
}

const known: ReadonlySet<string> = new Set(columns);

function readRecord(record: readonly string[], heads: readonly string[], line: number): CsvRow {
  const cells: Cells = {};
  let stray: CsvRow['stray'] = null;
  record.forEach((raw, at) => {
    const value = raw.trim();
    if (value === '') return;
    const head = heads[at];
    if (head !== undefined && known.has(head)) cells[head as Column] = value;
    else stray = { column: stray?.column ?? head ?? '', value: stray?.value ?? value, all: `${stray?.all ?? ''}\u001f${at}\u001f${value}`, each: [...(stray?.each ?? []), { column: head ?? '', value }] };
  });
  return { line, cells, stray };
}

/** The reader tells the line a record ends on; quoted cells may hold line breaks. */
export function firstLine(record: readonly string[], lastLine: number): number {
  let breaks = 0;
  for (const cell of record) if (cell.includes('\n')) breaks += cell.split('\n').length - 1;
  return lastLine - breaks;
}

function unreadable(sentence: string, mend: string): Answer<never> {
  return refuse('file-unreadable', sentence, { mend });
}
