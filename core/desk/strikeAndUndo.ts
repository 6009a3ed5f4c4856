import type { ColonyId, EntryId, GestureId } from '#shared/brands.ts';
import type { Written } from '#shared/contract/journal.ts';
import { dayInWords, type DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { readRow } from '#core/journal/readRow.ts';
import { resolveRow } from '#core/journal/resolveRow.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import { rowKey, writeRow } from '#core/journal/writeRow.ts';
import type { Gesture, Store, StoredEntry } from '#core/book/store.ts';
import { changeStanding, type StandingChange } from './changeStanding.ts';
import { countWords, refusedRows } from './enterRows.ts';
import { namesOf } from './names.ts';
import { changedStanding, undoState } from './undoState.ts';

export async function strikeEntry(store: Store, id: EntryId, reason: string, at: string): Promise<Written> {
  const change = await strikePlan(store, id, reason);
  return changeStanding(store, change, `${change.title}.`, at);
}

export async function replaceEntry(store: Store, id: EntryId, cells: Cells, reason: string, order: DateOrder, at: string): Promise<Written> {
  const change = await replacePlan(store, id, cells, reason, order);
  return changeStanding(store, change, `${change.title}.`, at);
}

export async function strikePlan(store: Store, id: EntryId, reason: string): Promise<StandingChange> {
  const { entry } = await standingEntry(store, id);
  return { kind: 'strike', title: `Struck: ${entry.kind} of ${dayInWords(entry.day)}`, undoes: null, strike: [{ entry, reason }], lift: [], add: [] };
}

/** The entry struck and a corrected one in its place; a colony it brought into being stays the same colony. */
export async function replacePlan(store: Store, id: EntryId, cells: Cells, reason: string, order: DateOrder): Promise<StandingChange> {
  const { entry: old } = await standingEntry(store, id);
  const reading = readRow(cells, order);
  if (!reading.ok) throw refusedRows([{ line: 0, ...reading.trouble }]);
  const { row } = reading;
  const yards = new YardBook(await store.yards());
  const next = await store.nextIds();
  const place = row.day === old.day ? old.place : next.entry;
  const carriers = await store.statesByLabel([row.values.colony, row.values.into].filter((label) => typeof label === 'string'));
  const named = new Set(rulesOf(old.kind).touches(old.body).map(({ colony }) => colony));
  const resolved = resolveRow(row, { day: row.day, place }, {
    yard: (name) => yards.find(name)?.id ?? null,
    newColony: () => createdBy(old) ?? (next.colony as ColonyId),
    colony: (label) => {
      const called = carriers.filter((state) => state.label === label);
      const found = called.find((state) => named.has(state.id) && covers(state.endEntry === old.id ? { ...state, end: null } : state, row.day)) ?? called.find((state) => covers(state, row.day));
      return found === undefined ? { sentence: `No colony called “${label}” is alive on ${dayInWords(row.day)}. Correct the label or the day.` } : { id: found.id };
    },
  });
  if (!resolved.ok) throw refusedRows([{ line: 0, value: '', ...resolved.refusal }]);
  const entry = { id: next.entry as EntryId, place, day: row.day, kind: row.kind, body: resolved.body } as Entry;
  if (entry.kind === 'split' && entry.body.colony === entry.body.child) {
    throw refusedRows([{ line: 0, column: 'colony', value: cells.colony ?? '', sentence: `This entry is how ${cells.colony ?? 'the colony'} began, so it cannot have been split from itself. Name the colony it was split from.` }]);
  }
  await refuseTwins(store, [entry], [old]);
  return { kind: 'replace', title: `Replaced: ${old.kind} of ${dayInWords(old.day)}`, undoes: null, strike: [{ entry: old, reason }], lift: [], add: [{ entry, replaces: old.id }] };
}

/** From its first day to its last; an end that the replaced entry recorded is none. */
function covers(state: { start: string; end: string | null }, day: string): boolean {
  return state.start <= day && (state.end === null || state.end >= day);
}

function createdBy(entry: Entry): ColonyId | null {
  if (entry.kind === 'install') return entry.body.colony;
  return entry.kind === 'split' ? entry.body.child : null;
}

/** What undo of the given act, or of the last one that still stands, would change. Refused where there is nothing to take back. */
export async function undoPlan(store: Store, id: GestureId | undefined): Promise<{ about: Gesture; change: StandingChange }> {
  const gestures = await store.gestures();
  const state = undoState(gestures);
  const named = gestures.find((gesture) => gesture.id === id) ?? null;
  // Undoing that something was brought back is undoing the thing itself again.
  const about = id === undefined ? state.next : named?.kind === 'redo' ? (gestures.find((gesture) => gesture.id === named.undoes) ?? null) : named;
  if (about === null) throw new FaultError(refuse('nothing-to-enter', 'There is nothing to undo.'));
  if (about.kind === 'undo') throw new FaultError(refuse('refused', 'An undo is taken back with Redo.'));
  if (state.undone.has(about.id)) throw new FaultError(refuse('refused', `“${about.title}” was undone already.`));
  return { about, change: await standingChange(store, gestures, about, 'undo', new Set([...state.undone, about.id])) };
}

export async function undo(store: Store, id: GestureId | undefined, at: string): Promise<Written> {
  const { about, change } = await undoPlan(store, id);
  return changeStanding(store, change, `Undone: ${about.title}${countOf(about)}.`, at);
}

export async function redo(store: Store, at: string): Promise<Written> {
  const gestures = await store.gestures();
  const { redo: about, undone } = undoState(gestures);
  if (about === null) throw new FaultError(refuse('nothing-to-enter', 'There is nothing to redo.'));
  const change = await standingChange(store, gestures, about, 'redo', new Set([...undone].filter((id) => id !== about.id)));
  return changeStanding(store, change, `Brought back: ${about.title}${countOf(about)}.`, at);
}

async function standingChange(store: Store, gestures: readonly Gesture[], about: Gesture, kind: 'undo' | 'redo', undone: ReadonlySet<GestureId>): Promise<StandingChange> {
  const { strike, lift } = await changedStanding(store, gestures, about.id, undone);
  await refuseTwins(store, lift.map(({ entry }) => entry), strike.map(({ entry }) => entry));
  const reason = kind === 'undo' ? 'undone' : 'brought back';
  const title = `${kind === 'undo' ? 'Undone' : 'Brought back'}: ${about.title}`;
  return { kind, title, undoes: about.id, strike: strike.map(({ entry }) => ({ entry, reason })), lift: lift.map(({ entry }) => ({ entry, reason })), add: [] };
}

/** A strike made no entries of its own to count. */
function countOf({ entries }: Gesture): string {
  return entries === 0 ? '' : ` (${countWords(entries, 'entry', 'entries')})`;
}

/** No two standing entries are equal in every cell; else an export would lose one of them on its way back in. */
async function refuseTwins(store: Store, arriving: readonly Entry[], leaving: readonly Entry[]): Promise<void> {
  const names = await namesOf(store);
  const apart = new Set(leaving.map((entry) => entry.id));
  for (const day of new Set(arriving.map((entry) => entry.day))) {
    const standing = (await store.entries({ from: day, until: day })).filter(({ entry, struck }) => struck === null && !apart.has(entry.id));
    const keys = new Set(standing.map(({ entry }) => rowKey(writeRow(entry, names))));
    const twin = arriving.find((entry) => entry.day === day && keys.has(rowKey(writeRow(entry, names))));
    if (twin !== undefined) throw new FaultError(refuse('refused', `The same entry of kind “${twin.kind}” of ${dayInWords(day)} was entered again meanwhile.`, { mend: 'Nothing was changed; strike one of the two first.' }));
  }
}

async function standingEntry(store: Store, id: EntryId): Promise<StoredEntry> {
  const [stored] = await store.entries({ ids: [id] });
  if (stored === undefined) throw new FaultError(refuse('unknown', `There is no entry ${id} in this book.`));
  if (stored.struck !== null) throw new FaultError(refuse('refused', `That entry of ${dayInWords(stored.entry.day)} is struck already.`));
  return stored;
}
