import { z } from 'zod';
import { yardRow } from './book.ts';
import { colonyRow } from './colonies.ts';
import { read, write } from './operation.ts';
import { colonyId, dayValue, kindValue, nothing, yardId } from './values.ts';

/** What is written down of a yard that is no part of the journal; null where nothing is. */
const writtenDetails = {
  /** How to get in, and who to ask. */
  access: z.string().trim().max(4000).nullable(),
  notes: z.string().trim().max(4000).nullable(),
  registration: z.string().trim().max(80).nullable(),
  /** The day by which the registration has to be renewed. */
  renewal: dayValue.nullable(),
};
export const yardDetails = z.object(writtenDetails);
export type YardDetails = z.infer<typeof yardDetails>;

export const yardListRow = yardRow.extend({
  /** The last day on which something was entered for a colony there, or for the yard as a whole. */
  lastVisit: dayValue.nullable(),
  renewal: dayValue.nullable(),
});
export type YardListRow = z.infer<typeof yardListRow>;

export const yardVisit = z.object({
  day: dayValue,
  /** The day's entries that say the same of several colonies are one act. */
  acts: z.array(z.object({ sentence: z.string(), colonies: z.array(z.object({ id: colonyId, label: z.string() })) })),
  /** The day's entries by kind, the most frequent first. */
  kinds: z.array(z.object({ kind: kindValue, entries: z.number().int() })),
});
export type YardVisit = z.infer<typeof yardVisit>;

export const yardPage = z.object({
  yard: yardRow,
  details: yardDetails,
  today: dayValue,
  /** The colonies alive there, in the order they stand in. */
  colonies: z.array(colonyRow),
  /** The newest first. */
  visits: z.array(yardVisit),
  /** Equipment counted there, by the shed account. */
  equipment: z.array(z.object({ item: z.string(), count: z.number() })),
});
export type YardPage = z.infer<typeof yardPage>;

export const yardOperations = {
  'yards.list': read(nothing, z.object({ today: dayValue, yards: z.array(yardListRow) })),
  'yard.page': read(z.strictObject({ id: yardId }), yardPage),
  'yard.details': write(z.strictObject({ id: yardId, ...writtenDetails }), yardDetails, 'change it back in the same place'),
  /** All colonies alive in the yard, in the order they stand in; refused with `moved-on` where one is missing or too many. */
  'yard.stand': write(
    z.strictObject({ yard: yardId, colonies: z.array(colonyId).min(1).max(5000) }),
    z.object({ colonies: z.array(colonyId) }),
    'move it back in the same place',
  ),
} as const;
