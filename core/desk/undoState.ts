import type { EntryId, GestureId } from '#shared/brands.ts';
import type { Gesture, Store, StoredEntry } from '#core/book/store.ts';

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

/**
 * The entries that an act made or struck and whose standing changes when the acts given are undone: an entry stands
 * when the act that made it does, and no act that does has struck it. Acts may be undone in any order.
 */
export async function changedStanding(store: Store, gestures: readonly Gesture[], about: GestureId, undone: ReadonlySet<GestureId>): Promise<{ strike: StoredEntry[]; lift: StoredEntry[] }> {
  const strikes = gestures.filter(({ kind }) => kind === 'strike' || kind === 'replace');
  const marked = strikes.some(({ id }) => id === about) ? await struckIn(store, about) : [];
  const entries = [...(await store.entries({ gesture: about })), ...(await store.entries({ ids: marked }))];
  const struck = new Set<EntryId>();
  for (const { id } of strikes) if (!undone.has(id)) for (const entry of await struckIn(store, id)) struck.add(entry);
  const stands = ({ entry, gesture }: StoredEntry) => !undone.has(gesture) && !struck.has(entry.id);
  return { strike: entries.filter((one) => one.struck === null && !stands(one)), lift: entries.filter((one) => one.struck !== null && stands(one)) };
}

async function struckIn(store: Store, gesture: GestureId): Promise<EntryId[]> {
  return (await store.marksOf(gesture)).map(({ entry }) => entry);
}
