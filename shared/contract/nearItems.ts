import { z } from 'zod';
import { read } from './operation.ts';

/** An item that the book does not know and that reads almost like ones it knows. */
export const nearItem = z.object({
  /** The new item as it would be called. */
  item: z.string(),
  /** Known items, the nearest first, each with what would stand in place of what was typed. */
  nearest: z.array(z.object({ item: z.string(), instead: z.string() })).min(1),
  sentence: z.string(),
});
export type NearItem = z.infer<typeof nearItem>;

/** What is meant by new items in a file, by their names: a known item, or the new one itself. */
export const meantItems = z.record(z.string().max(4000), z.string().max(200));

/** A new item in a file, with the rows that name it. */
export const newItem = nearItem.extend({
  lines: z.array(z.number().int()),
  rows: z.number().int(),
  /** What was said to be meant; null while nobody has said. */
  meant: z.string().nullable(),
});
export type NewItem = z.infer<typeof newItem>;

export const nearItemOperations = {
  /** Whether a typed item may be another one misspelt; null where it is known, or like none that is. */
  'stock.nearItem': read(z.strictObject({ item: z.string().max(4000) }), z.object({ found: nearItem.nullable() })),
} as const;
