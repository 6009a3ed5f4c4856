import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import type { ColonyState, Look, Reign } from '#core/journal/colonyState.ts';
import { newColony } from '#core/journal/newColony.ts';

/** A colony made of what a test tells of it. */
export function colonyWith(told: Partial<ColonyState> = {}, id = 1): ColonyState {
  const entry = { id: id as EntryId, kind: 'install' as const, day: day('2024-05-01'), place: 1, body: null };
  return { ...newColony(entry, { id: id as ColonyId, label: `C${id}`, origin: 'nuc', yard: 1 as YardId, mother: null, supplier: null, price: null }), ...told };
}

export function look(on: string, seen: Partial<Omit<Look, 'day'>> = {}): Look {
  return { day: day(on), framesBees: null, framesBrood: null, framesStores: null, eggs: null, queenSeen: null, queenCells: null, temper: null, ...seen };
}

export function reign(year: number | null, since = '2024-05-01', ended: Partial<Reign> = {}): Reign {
  return { queen: 1 as EntryId, year, source: null, marked: false, since: day(since), until: null, ending: null, endEntry: null, ...ended };
}
