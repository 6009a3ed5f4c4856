import type { YardId } from '#shared/brands.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { readRow } from '#core/journal/readRow.ts';
import { WorkingSet } from '#core/journal/workingSet.ts';
import { YardBook, type Yard } from '#core/journal/yardBook.ts';

export const yards: Yard[] = ['QY', 'LB', 'OO'].map((code, at) => ({ id: (at + 1) as YardId, code, name: `${code} yard`, room: null, minutes: null }));

/** Rows in date order, entered as at a desk; a refused one fails the test. */
export function recorded(rows: readonly Cells[]): { states: ColonyState[]; entries: Entry[] } {
  const working = new WorkingSet({ yards: new YardBook(yards), colonies: [], nextEntry: 1, nextColony: 1 });
  for (const cells of rows) {
    const reading = readRow(cells, 'month-first');
    if (!reading.ok) throw new Error(reading.trouble.sentence);
    const added = working.add(reading.row);
    if (!added.ok) throw new Error(added.refusal.sentence);
  }
  return { states: working.states().toSorted((a, b) => a.id - b.id), entries: working.added };
}

export const hived = (date: string, colony: string, yard = 'QY', more: Cells = {}): Cells => ({ date, entry: 'install', yard, colony, origin: 'package', ...more });
export const lost = (date: string, colony: string): Cells => ({ date, entry: 'loss', colony });
