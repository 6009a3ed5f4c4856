import { z } from 'zod';
import { sourceWords } from './order.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, entryId, yardId } from './values.ts';

const count = z.number().int();

/** The house's number behind a rule, with where its default comes from. */
const dueSource = z.object({ label: z.string(), value: z.number(), source: z.string(), confidence: z.enum(sourceWords) });

/**
 * coming: its first day is not here yet. due, overdue: between its days, past the last. missed: let go undone. overtaken: something
 * came before it. not told: the book has no entry for the act.
 */
const dueStatus = z.enum(['coming', 'due', 'overdue', 'missed', 'done', 'overtaken', 'not told']);

export const dueItem = z.object({
  rule: z.enum(['walkAwayLaying', 'newQueenLaying', 'queenlessLaying', 'swarmCellsLook', 'treatmentOff', 'miteRecount']),
  what: z.string(),
  /** The record it follows from, in words. */
  reason: z.string(),
  /** The entry that made it due. */
  cause: entryId,
  /** The day of that entry. */
  since: dayValue,
  earliest: dayValue,
  latest: dayValue,
  status: dueStatus,
  /** The entry that answers it; `late`: days after the last day. */
  done: z.object({ day: dayValue, entry: entryId, sentence: z.string(), late: count }).nullable(),
  /** Why it was overtaken, or what the book can say instead. */
  says: z.string().nullable(),
  sources: z.array(dueSource),
});
export type DueItem = z.infer<typeof dueItem>;

export const yardDue = dueItem.pick({ what: true, reason: true, earliest: true, latest: true, status: true, sources: true }).extend({
  rule: z.enum([...dueItem.shape.rule.options, 'renewal']),
  /** Empty where it is about the yard itself. */
  colonies: z.array(z.object({ id: colonyId, label: z.string() })),
});
export type YardDue = z.infer<typeof yardDue>;

export const dueOperations = {
  /** What is open first, then what is past, the newest first. */
  'colony.due': read(z.strictObject({ id: colonyId }), z.object({ today: dayValue, items: z.array(dueItem) })),
  /** What is open in the yard, the soonest first. */
  'yard.due': read(z.strictObject({ id: yardId }), z.object({ today: dayValue, items: z.array(yardDue) })),
} as const;
