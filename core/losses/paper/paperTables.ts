import type { PaperCell, PaperColumn, PaperPart, PaperTable } from '#shared/contract/paper.ts';
import { rate } from '#shared/figures.ts';

export const text = (label: string): PaperColumn => ({ label, unit: 'text' });
export const count = (label: string): PaperColumn => ({ label, unit: 'count' });
/** Words made of numbers, for paper. */
export const figure = (label: string): PaperColumn => ({ label, unit: 'figure', only: 'paper' });
/** One number, for the file. */
export const inFile = (label: string, unit: PaperColumn['unit'] = 'number'): PaperColumn => ({ label, unit, only: 'file' });

/** A rate with its count and range: one cell on paper, five in the file. */
export function rateColumns(label: string, before = ''): PaperColumn[] {
  const named = (name: string) => (before === '' ? name : `${before} ${name.toLowerCase()}`);
  return [figure(label), inFile(named('At risk'), 'count'), inFile(named('Lost'), 'count'), inFile(named('Rate'), 'share'), inFile(named('95 % range from'), 'share'), inFile(named('95 % range to'), 'share')];
}

export function rateCells({ atRisk, lost, rate: share, range }: { readonly atRisk: number; readonly lost: number; readonly rate: number | null; readonly range: readonly [number, number] | null }): PaperCell[] {
  return [rate(lost, atRisk, range), atRisk, atRisk === 0 ? null : lost, share, range?.[0] ?? null, range?.[1] ?? null];
}

/** A part with only what is given. */
export function part(key: string, title: string, { sentences = [], drawings = [], tables = [], notes = [] }: Partial<PaperPart>): PaperPart {
  return { key, title, sentences, drawings, tables, notes };
}

export function table(key: string, title: string, given: Pick<PaperTable, 'columns' | 'rows'> & Partial<PaperTable>): PaperTable {
  return { key, title, totals: false, onPaper: true, ...given };
}
