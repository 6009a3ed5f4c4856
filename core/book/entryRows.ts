import type { EntryId, GestureId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { currentYard } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { GestureKind, StoredEntry } from './store.ts';
import type { Tables } from './tables.ts';

type EntryRow = Tables['entry'];

export function entryFromRow(row: Pick<EntryRow, 'id' | 'day' | 'place' | 'kind' | 'body'>): Entry {
  // The body was checked against its kind's shape when it was written, and the table only grows.
  return { id: row.id as EntryId, place: row.place, day: row.day as Day, kind: row.kind, body: JSON.parse(row.body) as unknown } as Entry;
}

export function entryToRow(entry: Entry, gesture: number, replaces: EntryId | null): EntryRow {
  return { id: entry.id, gesture_id: gesture, day: entry.day, place: entry.place, kind: entry.kind, body: JSON.stringify(entry.body), replaces };
}

export function storedFromRow(row: EntryRow & { reason: string | null; by: string | null }): StoredEntry {
  return {
    entry: entryFromRow(row),
    gesture: row.gesture_id as GestureId,
    struck: row.reason === null || row.by === null ? null : { reason: row.reason, by: row.by as GestureKind },
    replaces: row.replaces === null ? null : (row.replaces as EntryId),
  };
}

export function colonyToRow(state: ColonyState): Tables['colony'] {
  return {
    id: state.id, label: state.label, yard_id: currentYard(state), origin: state.origin, start_day: state.start, end_day: state.end, how: state.how,
    state: JSON.stringify(state),
  };
}

export function colonyFromRow(row: Pick<Tables['colony'], 'state'>): ColonyState {
  return JSON.parse(row.state) as ColonyState;
}
