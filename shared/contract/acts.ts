import { z } from 'zod';
import { gestureRow, storyEntry } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, gestureId } from './values.ts';

/** What an act did to one entry. */
export const actLine = z.object({
  what: z.enum(['entered', 'struck', 'brought back']),
  entry: storyEntry,
  colonies: z.array(z.object({ id: colonyId, label: z.string() })),
});
export type ActLine = z.infer<typeof actLine>;

export const actPage = z.object({
  act: gestureRow,
  /** The act that an undo or redo was about. */
  about: z.object({ id: gestureId, title: z.string() }).nullable(),
  /** True when redo would bring this act back now. */
  canRedo: z.boolean(),
  total: z.number().int(),
  /** From the place asked for, in the journal's order. */
  lines: z.array(actLine),
  /** Rows of an import that waited to be sorted out when it was entered. */
  unsorted: z.number().int(),
});
export type ActPage = z.infer<typeof actPage>;

/** What taking an act back would do. */
export const actConsequence = z.object({
  allowed: z.boolean(),
  /** Entries that would no longer count, and struck ones that would count again. */
  struck: z.number().int(),
  lifted: z.number().int(),
  /** Colonies that nothing would bring into being any more, and those that would be otherwise. */
  gone: z.number().int(),
  changed: z.number().int(),
  /** Labels of some of the colonies that would be gone. */
  goneLabels: z.array(z.string()),
  /** Rows to sort out that would go along. */
  unsorted: z.number().int(),
  refusal: z.object({ sentence: z.string(), mend: z.string().nullable() }).nullable(),
});
export type ActConsequence = z.infer<typeof actConsequence>;

export const actOperations = {
  'act.page': read(z.strictObject({ id: gestureId, from: z.number().int().min(0), limit: z.number().int().min(1).max(200) }), actPage),
  'act.consequence': read(z.strictObject({ id: gestureId }), actConsequence),
} as const;
