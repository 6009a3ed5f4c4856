import { z } from 'zod';
import { read, write } from './operation.ts';
import { cells, colonyId, dayValue, entryId, gestureId, kindValue, nothing, yardId } from './values.ts';

/** What one act at the desk did: entered, struck or brought back entries, all at once. */
export const gestureRow = z.object({
  id: gestureId,
  /** When it was done, local time, `YYYY-MM-DD HH:MM`. */
  at: z.string(),
  /** "Round at Larch Bend, 14 colonies" */
  title: z.string(),
  kind: z.enum(['enter', 'import', 'strike', 'replace', 'undo', 'redo']),
  entries: z.number().int(),
  firstDay: dayValue.nullable(),
  lastDay: dayValue.nullable(),
  /** True when a later undo took it back. */
  undone: z.boolean(),
});
export type GestureRow = z.infer<typeof gestureRow>;

export const written = z.object({
  gesture: gestureId,
  /** One sentence for the message after saving. */
  sentence: z.string(),
  entered: z.number().int(),
  struck: z.number().int(),
  colonies: z.array(colonyId),
  position: z.number().int(),
});
export type Written = z.infer<typeof written>;

export const queenView = z.object({
  /** The entry that first brought her: she keeps it in every colony she comes to. */
  id: entryId,
  year: z.number().int().nullable(),
  /** White, yellow, red, green or blue by the international year code; null if the year is not known. */
  colour: z.enum(['white', 'yellow', 'red', 'green', 'blue']).nullable(),
  marked: z.boolean(),
  source: z.string().nullable(),
  since: dayValue,
});
export type QueenView = z.infer<typeof queenView>;

export const roundRow = z.object({
  colony: colonyId,
  label: z.string(),
  queen: queenView.nullable(),
  /** Last inspection before the day, in words; null if none. */
  lastLook: z.object({ day: dayValue, sentence: z.string() }).nullable(),
  lastMites: z.object({ day: dayValue, mites: z.number(), bees: z.number(), per100: z.number() }).nullable(),
  /** Entries already made for this colony on this day, in words. */
  already: z.array(z.string()),
});
export type RoundRow = z.infer<typeof roundRow>;

/**
 * Stands for the text that the caller last saw under the key (null: there was none). Where another window has kept
 * something else meanwhile the write is refused with `moved-on`; absent, it is made whatever is there.
 */
const draftStamp = z.string().max(64).nullable().optional();

export const journalOperations = {
  'journal.recent': read(
    z.strictObject({ limit: z.number().int().min(1).max(200) }),
    z.object({ gestures: z.array(gestureRow), canUndo: z.string().nullable(), canRedo: z.string().nullable() }),
  ),
  /** Rows in the exchange form, entered all together or, if any is refused, not at all (fault `refused` with `rows`). */
  'journal.enter': write(
    z.strictObject({ title: z.string().max(200).optional(), rows: z.array(cells).min(1).max(2000) }),
    written,
    true,
  ),
  /** Takes back the given act, or the last one that still stands. */
  'journal.undo': write(z.strictObject({ gesture: gestureId.optional() }), written, true),
  /** Brings back what was undone last. */
  'journal.redo': write(nothing, written, true),
  'journal.strike': write(z.strictObject({ entry: entryId, reason: z.string().trim().min(1).max(500) }), written, true),
  'journal.replace': write(
    z.strictObject({ entry: entryId, cells, reason: z.string().trim().min(1).max(500) }),
    written,
    true,
  ),
  'round.sheet': read(
    z.strictObject({ yard: yardId, day: dayValue }),
    z.object({
      yard: z.object({ id: yardId, code: z.string(), name: z.string() }),
      day: dayValue,
      rows: z.array(roundRow),
      lastRound: dayValue.nullable(),
    }),
  ),
  /** What was typed and not yet entered; kept in the book so that a crash or a closed window loses nothing. */
  'draft.keep': write(z.strictObject({ key: z.string().max(100), body: z.string().max(400_000), over: draftStamp }), z.object({ stamp: z.string() }), 'typing not yet entered'),
  'draft.fetch': read(z.strictObject({ key: z.string().max(100) }), z.object({ body: z.string().nullable(), stamp: z.string().nullable() })),
  'draft.drop': write(z.strictObject({ key: z.string().max(100), over: draftStamp }), nothing, 'typing not yet entered'),
} as const;

export const storyEntry = z.object({
  id: entryId,
  day: dayValue,
  kind: kindValue,
  sentence: z.string(),
  note: z.string().nullable(),
  struck: z.boolean(),
  struckReason: z.string().nullable(),
  /** What was put in its place, for one that was replaced. */
  replacedBy: z.object({ id: entryId, day: dayValue, sentence: z.string() }).nullable(),
});
export type StoryEntry = z.infer<typeof storyEntry>;
