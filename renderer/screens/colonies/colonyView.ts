import type { ColonyRow } from '#shared/contract/colonies.ts';
import { fold } from '#shared/fold.ts';
import { byLabel, matches } from '../../parts/searchText.ts';
import type { ColonyColumn, Which } from './colonyColumns.tsx';
import { words } from './words.ts';

/** What the person chose to see; it stays while they look at a colony's page and come back. */
export interface ColonyView {
  readonly which: Which;
  /** Code of a yard; empty for all. */
  readonly yard: string;
  readonly typed: string;
  readonly sortBy: string;
  readonly down: boolean;
}

export const firstView: ColonyView = { which: 'living', yard: '', typed: '', sortBy: 'label', down: false };

/** Rows that fit the yard and the typed words, sorted; what is not known stands last in either direction. */
export function rowsOf(rows: readonly ColonyRow[], view: ColonyView, columns: readonly ColonyColumn[]): ColonyRow[] {
  const sort = columns.find((column) => column.key === view.sortBy) ?? columns[0];
  const fitting = rows.filter(
    (row) => (view.yard === '' || row.yard === view.yard) && (view.typed.trim() === '' || matches(haystack(row), view.typed)),
  );
  if (!sort) return fitting;
  const turn = view.down ? -1 : 1;
  return fitting.sort((a, b) => compare(sort.by(a), sort.by(b), turn) || byLabel(a.label, b.label) || a.id - b.id);
}

function compare(a: string | number | null, b: string | number | null, turn: number): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return turn * (typeof a === 'number' && typeof b === 'number' ? a - b : byLabel(String(a), String(b)));
}

const haystacks = new WeakMap<ColonyRow, string>();

function haystack(row: ColonyRow): string {
  let text = haystacks.get(row);
  if (text === undefined) {
    const { queen } = row;
    const parts = [
      row.label, row.yard, row.yardName, words.origins[row.origin], words.endings[row.how], ...row.causes,
      queen?.colour ?? '', String(queen?.year ?? ''), queen?.source ?? '',
    ];
    text = fold(parts.join(' '));
    haystacks.set(row, text);
  }
  return text;
}
