import { CsvError, parse } from 'csv-parse/sync';
import { refuse, type Answer } from '#shared/faults.ts';
import { decode, firstLine } from '../readCsv.ts';
import type { RawSheet, SheetRow } from './sheet.ts';

const separators = [',', ';', '\t'] as const;
type Separator = (typeof separators)[number];
const tried = 60;

interface ParsedRecord {
  readonly record: string[];
  readonly info: { readonly lines: number };
}

/** Reads a text table with commas, semicolons or tabs between its cells, as it stands; a first line `sep=;` settles which. */
export function readDelimited(bytes: Uint8Array, fileName: string): Answer<RawSheet> {
  const decoded = decode(bytes, fileName);
  if (!decoded.ok) return decoded;
  const text = decoded.value.replace(/\r\n?/g, '\n');
  const said = /^sep=([,;\t])\n/i.exec(text)?.[1];
  const body = said === undefined ? text : text.slice(text.indexOf('\n') + 1);
  const separator = separators.find((one) => one === said) ?? separatorOf(body);
  let records: ParsedRecord[];
  try {
    records = parseTable(body, separator);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? ` near line ${error['lines']}` : '';
    return refuse('file-unreadable', `${fileName} cannot be read as a table${line}.`, {
      mend: error.code === 'CSV_QUOTE_NOT_CLOSED' ? 'A quotation mark is opened and never closed. Close it, or write it twice where it belongs to the text.' : 'Save the sheet as CSV UTF-8 again.',
    });
  }
  const before = said === undefined ? 0 : 1;
  const rows: SheetRow[] = [];
  for (const { record, info } of records) {
    const cells = record.map((cell) => (cell.trim() === '' ? null : ({ type: 'text', text: cell.trim() } as const)));
    if (cells.some((cell) => cell !== null)) rows.push({ line: firstLine(record, info.lines) + before, cells });
  }
  return { ok: true, value: { name: fileName, rows } };
}

/** The separator that cuts the first lines into most cells in the same way line after line. */
function separatorOf(text: string): Separator {
  const start = text.split('\n', tried).join('\n');
  let best: { separator: Separator; score: number } = { separator: ',', score: 0 };
  for (const separator of separators) {
    const widths = new Map<number, number>();
    for (const { record } of parseStart(start, separator)) if (record.length > 1) widths.set(record.length, (widths.get(record.length) ?? 0) + 1);
    // Lines alike first, their width next: a decimal comma in a sheet with semicolons makes uneven lines.
    const score = Math.max(0, ...[...widths].map(([width, lines]) => lines * 1000 + width));
    if (score > best.score) best = { separator, score };
  }
  return best.separator;
}

function parseStart(text: string, separator: Separator): ParsedRecord[] {
  try {
    return parseTable(text, separator);
  } catch (error) {
    // A quoted cell that begins in the first lines and ends below them.
    if (error instanceof CsvError) return text.split('\n').map((line, at) => ({ record: line.split(separator), info: { lines: at + 1 } }));
    throw error;
  }
}

function parseTable(text: string, separator: Separator): ParsedRecord[] {
  return parse(text, { info: true, delimiter: separator, relax_column_count: true, relax_quotes: true, skip_empty_lines: true, record_delimiter: '\n' }) as unknown as ParsedRecord[];
}
