import { z } from 'zod';
import { storyEntry } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, endingValue, entryId, yardId } from './values.ts';

const colonyName = z.object({ id: colonyId, label: z.string() });

const foundColony = z.object({
  id: colonyId,
  label: z.string(),
  yardName: z.string(),
  start: dayValue,
  end: dayValue.nullable(),
  how: endingValue,
});
const foundYard = z.object({ id: yardId, code: z.string(), name: z.string(), living: z.number().int() });
const foundQueen = z.object({
  id: entryId,
  colony: colonyName,
  year: z.number().int().nullable(),
  colour: z.string().nullable(),
  source: z.string().nullable(),
  since: dayValue,
  until: dayValue.nullable(),
});
const foundLot = z.object({
  code: z.string(),
  /** First and last day of its harvests; of what was poured into it first, and null, where it has none of its own. */
  from: dayValue,
  until: dayValue.nullable(),
  yards: z.array(z.string()),
  /** In bulk or in jars. */
  left: z.boolean(),
});
const foundEntry = storyEntry.omit({ struckReason: true, replacedBy: true }).extend({
  /** The colonies it names. */
  colonies: z.array(colonyName),
});

/** The best of a group, and how many fit in all. */
const group = <Row extends z.ZodType>(row: Row) => z.object({ rows: z.array(row), total: z.number().int() });

export const findings = z.object({
  colonies: group(foundColony),
  yards: group(foundYard),
  queens: group(foundQueen),
  lots: group(foundLot),
  /** By their sentence and note, the newest first; struck ones too. */
  entries: group(foundEntry),
});
export type Findings = z.infer<typeof findings>;
export type FoundColony = z.infer<typeof foundColony>;
export type FoundQueen = z.infer<typeof foundQueen>;
export type FoundLot = z.infer<typeof foundLot>;
export type FoundEntry = z.infer<typeof foundEntry>;

export const findOperations = {
  /** Every word typed must be there; case and accents make no difference. `limit` holds for each group. */
  'find.all': read(z.strictObject({ text: z.string().max(200), limit: z.number().int().min(1).max(50).default(8) }), findings),
  /** One entry with the colonies and the yard it names. */
  'find.entry': read(z.strictObject({ id: entryId }), z.object({ entry: storyEntry, colonies: z.array(colonyName), yardName: z.string().nullable() })),
} as const;
