import { refuse, type Answer } from '#shared/faults.ts';
import { isNumberLike } from './readNumbers.ts';
import { isDayLike } from './readDays.ts';

/** One cell: a number's text has a point; a day's text is ISO, with a time of day behind it where the sheet has one. */
export interface SheetCell {
  readonly type: 'text' | 'number' | 'day';
  readonly text: string;
}

export interface SheetRow {
  /** The file's own number of the row. */
  readonly line: number;
  readonly cells: readonly (SheetCell | null)[];
}

/** A sheet as it stands in the file. */
export interface RawSheet {
  readonly name: string;
  readonly rows: readonly SheetRow[];
}

/** A sheet with its header found. Every column that holds anything has a header, and no two are alike. */
export interface Sheet {
  readonly name: string;
  readonly headers: readonly string[];
  readonly headerLine: number;
  /** Texts above the header, a title as a rule. */
  readonly above: readonly string[];
  readonly rows: readonly SheetRow[];
}

export const mostRows = 100_000;
const longestHeader = 200;
const searched = 30;

/**
 * Finds the row that names the columns: the first one made of words that is at least half as wide as the widest row.
 * Names in two rows, a merged one above its parts, are joined. Columns without a name get their letter.
 */
export function findHeader(raw: RawSheet, called: string): Answer<Sheet> {
  const rows = raw.rows.filter((row) => row.cells.some((cell) => cell !== null));
  if (rows.length === 0) return refuse('file-unreadable', `${called} is empty.`, { mend: 'Choose a sheet with a row of names and one row for each record.' });
  if (rows.length > mostRows) {
    return refuse('file-unreadable', `${called} has ${rows.length} rows; at most ${mostRows} can be read at once.`, { mend: 'Cut it into several sheets, each with the row of names.' });
  }
  const head = rows.slice(0, searched);
  const widest = Math.max(...head.map(filled));
  const isHeader = (row: SheetRow) => filled(row) >= 2 && filled(row) >= widest / 2 && row.cells.every((cell) => cell === null || isWord(cell));
  const at = head.findIndex(isHeader);
  const top = rows[at];
  if (top === undefined) {
    return refuse('file-unreadable', `${called} has no row that names its columns.`, { mend: 'Write the names of the columns (Date, Hive, …) into the first row, and choose the file again.' });
  }
  const below = rows[at + 1];
  const two = below !== undefined && isSecondHeader(top, below, rows.slice(at + 2, at + 22));
  const data = rows.slice(at + (two ? 2 : 1));
  if (data.length === 0) return refuse('file-unreadable', `${called} has names of columns and no row below them.`, { mend: 'Choose a sheet that holds records.' });
  const width = data.reduce((most, row) => Math.max(most, row.cells.length), Math.max(top.cells.length, two ? below.cells.length : 0));
  const used = Array.from({ length: width }, (_, column) => top.cells[column] != null || data.some((row) => row.cells[column] != null));
  const kept = used.flatMap((is, column) => (is ? [column] : []));
  return {
    ok: true,
    value: {
      name: raw.name,
      headers: unlike(kept.map((column) => headerOf(top, two ? below : null, column))),
      headerLine: two ? below.line : top.line,
      above: rows.slice(0, at).map((row) => row.cells.flatMap((cell) => (cell === null ? [] : [cell.text])).join(' ')),
      rows: data.map((row) => ({ line: row.line, cells: kept.map((column) => row.cells[column] ?? null) })),
    },
  };
}

function filled(row: SheetRow): number {
  return row.cells.reduce((sum, cell) => sum + (cell === null ? 0 : 1), 0);
}

function isWord(cell: SheetCell): boolean {
  return cell.type === 'text' && !isNumberLike(cell.text) && !isDayLike(cell.text) && /\p{L}|#/u.test(cell.text);
}

/** A second row of names: words only, some of them below a gap, and figures or days further down in those same columns. */
function isSecondHeader(top: SheetRow, below: SheetRow, data: readonly SheetRow[]): boolean {
  if (!below.cells.every((cell) => cell === null || isWord(cell))) return false;
  const gaps = below.cells.flatMap((cell, column) => (cell !== null && top.cells[column] == null ? [column] : []));
  return gaps.some((column) => data.some((row) => row.cells[column] != null && !isWord(row.cells[column])));
}

function headerOf(top: SheetRow, below: SheetRow | null, column: number): string {
  const own = top.cells[column]?.text ?? '';
  const part = below?.cells[column]?.text ?? '';
  // A merged name stands in the first of its cells only.
  const group = own !== '' || part === '' ? own : (top.cells.slice(0, column).findLast((cell) => cell !== null)?.text ?? '');
  const joined = `${group} ${part}`.replace(/\s+/g, ' ').trim();
  return joined === '' ? `Column ${letterOf(column)}` : joined.slice(0, longestHeader);
}

function letterOf(column: number): string {
  const rest = column % 26;
  const before = column < 26 ? '' : letterOf(Math.floor(column / 26) - 1);
  return before + String.fromCharCode(65 + rest);
}

function unlike(headers: readonly string[]): string[] {
  const taken = new Set<string>();
  return headers.map((header) => {
    let name = header;
    for (let count = 2; taken.has(name); count += 1) name = `${header} (${count})`;
    taken.add(name);
    return name;
  });
}
