import type { ColonyId, EntryId, GestureId } from '#shared/brands.ts';
import type { Written } from '#shared/contract/journal.ts';
import { dayInWords, type DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { readRow } from '#core/journal/readRow.ts';
import { resolveRow } from '#core/journal/resolveRow.ts';
import { YardBook } from '#core/journal/yardBook.ts';
import { rowKey, writeRow } from '#core/journal/writeRow.ts';
import type { Gesture, Store, StoredEntry } from '#core/book/store.ts';
import { changeStanding, type StandingChange } from './changeStanding.ts';
import { countWords, refusedRows } from './enterRows.ts';
import { namesOf } from './names.ts';

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
  const resolved = resolveRow(row, { day: row.day, place }, {
    yard: (name) => yards.find(name)?.id ?? null,
    newColony: () => createdBy(old) ?? (next.colony as ColonyId),
    colony: (label) => {
      const found = carriers.find((state) => state.label === label && covers(state, row.day));
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

/** A label may be carried on a day by a colony whose end the replaced entry recorded. */
function covers(state: { start: string; end: string | null }, day: string): boolean {
  return state.start <= day && (state.end === null || state.end >= day);
}

function createdBy(entry: Entry): ColonyId | null {
  if (entry.kind === 'install') return entry.body.colony;
  return entry.kind === 'split' ? entry.body.child : null;
}

export interface UndoState {
  readonly undone: ReadonlySet<GestureId>;
  readonly next: Gesture | null;
  readonly redo: Gesture | null;
}

/** Which acts stand, which was undone last: read from the journal itself, so it survives a restart. */
export function undoState(gestures: readonly Gesture[]): UndoState {
  const undoStack: Gesture[] = [];
  let redoStack: Gesture[] = [];
  const undone = new Set<GestureId>();
  const byId = new Map(gestures.map((gesture) => [gesture.id, gesture]));
  for (const gesture of gestures) {
    const about = gesture.undoes === null ? undefined : byId.get(gesture.undoes);
    if (gesture.kind === 'undo' && about !== undefined) {
      undone.add(about.id);
      const at = undoStack.findLastIndex((one) => one.id === about.id);
      if (at >= 0) undoStack.splice(at, 1);
      redoStack.push(about);
    } else if (gesture.kind === 'redo' && about !== undefined) {
      undone.delete(about.id);
      redoStack = redoStack.filter((one) => one.id !== about.id);
      undoStack.push(about);
    } else {
      undoStack.push(gesture);
      redoStack = [];
    }
  }
  return { undone, next: undoStack.at(-1) ?? null, redo: redoStack.at(-1) ?? null };
}

export async function undo(store: Store, id: GestureId | undefined, at: string): Promise<Written> {
  const gestures = await store.gestures();
  const state = undoState(gestures);
  const about = id === undefined ? state.next : (gestures.find((gesture) => gesture.id === id) ?? null);
  if (about === null) throw new FaultError(refuse('nothing-to-enter', 'There is nothing to undo.'));
  if (about.kind === 'undo' || about.kind === 'redo') throw new FaultError(refuse('refused', 'An undo is taken back with Redo.'));
  if (state.undone.has(about.id)) throw new FaultError(refuse('refused', `“${about.title}” was undone already.`));
  const own = await store.entries({ gesture: about.id });
  const marked = await markedEntries(store, about.id);
  const strike = [...own.filter(({ struck }) => struck === null), ...marked.filter(({ what, struck }) => what === 'lift' && struck === null)].map(({ entry }) => ({ entry, reason: 'undone' }));
  const lift = marked.filter(({ what, struck }) => what === 'strike' && struck !== null).map(({ entry }) => ({ entry, reason: 'undone' }));
  await refuseTwins(store, lift.map(({ entry }) => entry), strike.map(({ entry }) => entry));
  return changeStanding(
    store,
    { kind: 'undo', title: `Undone: ${about.title}`, undoes: about.id, strike, lift, add: [] },
    `Undone: ${about.title}${countOf(about)}.`,
    at,
  );
}

export async function redo(store: Store, at: string): Promise<Written> {
  const gestures = await store.gestures();
  const about = undoState(gestures).redo;
  if (about === null) throw new FaultError(refuse('nothing-to-enter', 'There is nothing to redo.'));
  const last = gestures.findLast((gesture) => gesture.kind === 'undo' && gesture.undoes === about.id);
  if (last === undefined) throw new Error(`gesture ${about.id} was never undone`);
  const marked = await markedEntries(store, last.id);
  const lift = marked.filter(({ what, struck }) => what === 'strike' && struck !== null).map(({ entry }) => ({ entry, reason: 'brought back' }));
  const strike = marked.filter(({ what, struck }) => what === 'lift' && struck === null).map(({ entry }) => ({ entry, reason: 'brought back' }));
  await refuseTwins(store, lift.map(({ entry }) => entry), strike.map(({ entry }) => entry));
  return changeStanding(
    store,
    { kind: 'redo', title: `Brought back: ${about.title}`, undoes: about.id, strike, lift, add: [] },
    `Brought back: ${about.title}${countOf(about)}.`,
    at,
  );
}

/** A strike made no entries of its own to count. */
function countOf({ entries }: Gesture): string {
  return entries === 0 ? '' : ` (${countWords(entries, 'entry', 'entries')})`;
}

async function markedEntries(store: Store, gesture: GestureId): Promise<(StoredEntry & { what: 'strike' | 'lift' })[]> {
  const marks = await store.marksOf(gesture);
  const found = new Map((await store.entries({ ids: marks.map((mark) => mark.entry) })).map((stored) => [stored.entry.id, stored]));
  return marks.flatMap((mark) => {
    const stored = found.get(mark.entry);
    return stored === undefined ? [] : [{ ...stored, what: mark.what }];
  });
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
