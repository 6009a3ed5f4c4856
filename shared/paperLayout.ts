import type { PaperCell, PaperColumn, PaperTable } from './contract/paper.ts';

export interface PaperLine {
  /** A head above the rows that share it; null on a row of cells. */
  readonly group: string | null;
  readonly cells: readonly PaperCell[];
  readonly total: boolean;
}

/** Longer tables may go on over the page, with their head repeated. */
const short = 18;
const wide = 9;

/** A table as it stands on paper: the columns and cells that are printed, heads of groups among the rows, and its looks. */
export function paperLayout({ columns, rows, totals, grouped }: PaperTable): { columns: PaperColumn[]; lines: PaperLine[]; looks: string[] } {
  const own = columns.flatMap(({ only }, at) => (only === 'file' || (grouped === true && at === 0) ? [] : [at]));
  const lines = rows.flatMap((row, place): PaperLine[] => {
    const line: PaperLine = { group: null, cells: own.map((at) => row[at] ?? null), total: totals && place === rows.length - 1 };
    const head = row[0];
    return grouped === true && typeof head === 'string' && head !== rows[place - 1]?.[0] ? [{ group: head, cells: [], total: false }, line] : [line];
  });
  return {
    columns: own.flatMap((at) => columns[at] ?? []), lines,
    looks: [...(lines.length <= short ? ['paper-short'] : []), ...(own.length > wide ? ['paper-wide'] : [])],
  };
}

/** A line that stands at the head of every page of a print, as the content of a style; each sign is written by its number, so that a name cannot end it. */
export function runningLine(line: string): string {
  return `"${[...line].map((sign) => `\\${(sign.codePointAt(0) ?? 32).toString(16)} `).join('')}"`;
}
