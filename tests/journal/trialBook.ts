import { createHash } from 'node:crypto';
import type { EntryId, GestureId } from '#shared/brands.ts';
import type { DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, type Fault } from '#shared/faults.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Store } from '#core/book/store.ts';
import { writeRow } from '#core/journal/writeRow.ts';
import type { YardId } from '#shared/brands.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { importBytes, type FileImport } from '#core/desk/importFile.ts';
import { enterImport } from '#core/desk/importReport.ts';
import { namesOf } from '#core/desk/names.ts';
import { enterRows } from '#core/desk/enterRows.ts';
import { redo, replaceEntry, strikeEntry, undo } from '#core/desk/strikeAndUndo.ts';
import { enterAllReady, enterWaiting, keepAside } from '#core/desk/sortOut.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';

export const yardCodes = ['OO', 'LB', 'NS'] as const;
const stamp = '2026-11-25 21:00';

/** A scratch book with three yards. */
export async function trialBook(store: Store = memoryStore()): Promise<Store> {
  for (const [at, code] of yardCodes.entries()) await store.keepYard({ id: (at + 1) as YardId, code, name: `Yard ${code}`, room: null, minutes: null });
  return store;
}

/** Does an act and answers its fault; anything but an expected fault is thrown on. */
export async function faultOf(act: () => Promise<unknown>): Promise<Fault | null> {
  try {
    await act();
    return null;
  } catch (error) {
    if (error instanceof FaultError) return error.fault;
    throw error;
  }
}

export const acts = {
  enter: (store: Store, rows: readonly Cells[]) => enterRows(store, rows, undefined, 'month-first', stamp),
  strike: (store: Store, id: EntryId) => strikeEntry(store, id, 'written twice', stamp),
  replace: (store: Store, id: EntryId, cells: Cells) => replaceEntry(store, id, cells, 'misread', 'month-first', stamp),
  undo: (store: Store, id?: GestureId) => undo(store, id, stamp),
  redo: (store: Store) => redo(store, stamp),
  mend: (store: Store, key: string, cells: Cells) => enterWaiting(store, key, cells, 'month-first', stamp),
  enterReady: (store: Store) => enterAllReady(store, stamp),
  setAside: (store: Store, key: string) => keepAside(store, key, { reason: 'unclear', at: stamp }),
};

export async function standingEntries(store: Store): Promise<Entry[]> {
  return (await store.entries({})).filter(({ struck }) => struck === null).map(({ entry }) => entry);
}

export async function exported(store: Store): Promise<string> {
  const names = await namesOf(store);
  return writeCsv((await standingEntries(store)).map((entry) => writeRow(entry, names)));
}

/** Previews a file without entering it. */
export function previewed(store: Store, text: string, order: DateOrder = 'month-first'): Promise<FileImport> {
  return importBytes(store, Buffer.from(text, 'utf8'), 'journal.csv', order);
}

/** Reads a file and enters what can be entered. */
export async function imported(store: Store, text: string, order: DateOrder = 'month-first'): Promise<FileImport> {
  const found = await previewed(store, text, order);
  if (found.entries.length === 0 && found.toKeep === 0) return found;
  await enterImport(store, found, 'journal.csv', stamp);
  return found;
}

/** A colony's state by its label and without ids or places, for comparing books in which the same was entered in another order. */
export async function statesWithoutIds(store: Store): Promise<string> {
  const names = await namesOf(store);
  const states = await store.states();
  const born = new Map(states.map((state) => [state.id, `${state.label} of ${state.start}`]));
  const plain = (state: ColonyState) => ({
    ...state, id: 0, startPlace: 0, startEntry: 0, endPlace: 0, endEntry: 0,
    mother: state.mother === null ? null : born.get(state.mother), into: state.into === null ? null : born.get(state.into),
    daughters: state.daughters.map((id) => born.get(id)), unitedFrom: state.unitedFrom.map((id) => born.get(id)),
    stays: state.stays.map((stay) => ({ yard: names.yard(stay.yard).code, from: stay.from, until: stay.until })),
    harvests: state.harvests.map((harvest) => ({ ...harvest, yard: names.yard(harvest.yard).code })),
    reigns: state.reigns.map((reign) => ({ ...reign, queen: 0, endEntry: 0 })),
  });
  return states.map((state) => JSON.stringify(plain(state))).toSorted().join('\n');
}

export function sha256(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}
