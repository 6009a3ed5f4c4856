import { z } from 'zod';
import { storyEntry } from './journal.ts';
import { read } from './operation.ts';
import { cells, colonyId, dayValue, entryId, kindValue } from './values.ts';

/** What striking or replacing an entry would do to one colony. */
export const colonyConsequence = z.object({
  id: colonyId,
  label: z.string(),
  /** False when nothing would bring the colony into being any more. */
  there: z.boolean(),
  /** The day it would have ended; null if alive or not there. */
  end: dayValue.nullable(),
  /** "Colony G53 is alive after 14 February 2025." Never empty. */
  sentences: z.array(z.string()),
  /** Later entries of it that would stand. */
  later: z.number().int(),
});
export type ColonyConsequence = z.infer<typeof colonyConsequence>;

export const consequence = z.object({
  /** Whether the book would take it; exactly when `refusal` is null. */
  allowed: z.boolean(),
  colonies: z.array(colonyConsequence),
  refusal: z
    .object({
      sentence: z.string(),
      mend: z.string().nullable(),
      /** What the cells themselves lack, by column; empty where the cells are sound. */
      cells: z.array(z.object({ column: z.string().nullable(), sentence: z.string() })),
      /** Standing entries that would contradict the record; nothing changes until each is struck or replaced. */
      contradictions: z.array(
        z.object({ entry: entryId, day: dayValue.nullable(), what: z.string().nullable(), sentence: z.string(), colonies: z.array(z.object({ id: colonyId, label: z.string() })) }),
      ),
    })
    .nullable(),
});
export type Consequence = z.infer<typeof consequence>;

export const mendingOperations = {
  /** What striking the entry would do or, with cells, putting these in its place. Changes nothing. */
  'journal.consequence': read(z.strictObject({ entry: entryId, cells: cells.optional() }), consequence),
  /** An entry's cells as the exchange form writes them, for mending it. */
  'journal.entry': read(z.strictObject({ entry: entryId }), z.object({ entry: storyEntry, kind: kindValue, cells })),
} as const;
