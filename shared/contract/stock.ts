import { z } from 'zod';
import { written } from './journal.ts';
import { read, write } from './operation.ts';
import { houseRule } from './order.ts';
import { colonyId, dayValue, entryId, kindValue, nothing } from './values.ts';

const pieces = z.number();
const asked = z.number().min(0).max(1_000_000);

/** What is there of an item: on hives, free (sound), and what cannot be used as it is. */
const held = z.object({ onHives: pieces, free: pieces, toCheck: pieces, toMend: pieces, wornOut: pieces });

export const stockItem = held.extend({
  item: z.string(),
  /** Drawn comb, foundation and frames of which neither is known; null for what is no frame. */
  comb: z.object({ drawn: pieces, foundation: pieces, unknown: pieces, drawnFree: pieces }).nullable(),
  /** Brood comb that is due for rotation, by the years that are known. */
  due: pieces.nullable(),
  /** Years of the comb, oldest first; a null year is not known. */
  years: z.array(z.object({ year: z.number().int().nullable(), count: pieces })),
  places: z.array(held.extend({ place: z.string(), total: pieces })),
  /** On hives, free and the rest together. */
  total: pieces,
  /** Came from suppliers or was there before the account began; went to scrap; went away with bees. */
  cameIn: pieces,
  scrapped: pieces,
  sold: pieces,
  /** What came in, less what went out, is what is there. */
  balances: z.boolean(),
  /** The day of the first stock row that names it; null: the shed's account of it is not kept, only what hives carry. */
  keptFrom: dayValue.nullable(),
});
export type StockItemView = z.infer<typeof stockItem>;

export const deadOutView = z.object({
  colony: colonyId,
  label: z.string(),
  yard: z.string(),
  day: dayValue,
  how: z.enum(['lost', 'absconded']),
  causes: z.array(z.string()),
  /** Disease was written down: the bee inspector is asked before anything is used again. */
  inspector: z.boolean(),
  parts: z.array(z.object({ item: z.string(), count: pieces })),
});
export type DeadOutView = z.infer<typeof deadOutView>;

export const stockTable = z.object({
  asOf: dayValue,
  /** The day of the first stock row; null: none is in the book yet. */
  keptFrom: dayValue.nullable(),
  items: z.array(stockItem),
  /** Oldest first, 200 at most; `deadOutCount` counts them all. */
  deadOuts: z.array(deadOutView),
  deadOutCount: z.number().int(),
  /** Newest first; the parts that one entry moved on one way stand together. */
  movements: z.array(z.object({ entry: entryId, day: dayValue, kind: kindValue, from: z.string(), to: z.string(), parts: z.array(z.object({ item: z.string(), count: pieces })) })),
  shortages: z.array(
    z.object({ place: z.string(), item: z.string(), count: pieces, day: dayValue, entry: entryId, kind: kindValue, colony: colonyId.nullable(), what: z.string(), sentence: z.string(), mend: z.string() }),
  ),
  /** Newest first. `difference`: counted less what the book had. */
  counts: z.array(z.object({ day: dayValue, place: z.string(), item: z.string(), counted: pieces, had: pieces, difference: pieces })),
  assumptions: z.array(z.string()),
  caution: z.string(),
  rules: z.array(houseRule),
});
export type StockTable = z.infer<typeof stockTable>;

const counting = z.strictObject({ place: z.string().trim().min(1).max(200), item: z.string().trim().min(1).max(200), counted: asked, day: dayValue });

export const stockOperations = {
  'stock.table': read(nothing, stockTable),
  /** What the book has of an item in the shed or free in a yard at the end of that day, against what was counted. Changes nothing. */
  'stock.counted': read(counting, z.object({ had: pieces, difference: pieces, sentence: z.string() })),
  /** Enters the count: the difference goes to scrap or comes in, and the note says that it was a count. */
  'stock.count': write(counting.extend({ note: z.string().trim().max(500) }), written, true),
  /** A dead-out's hive looked over: what is to mend and what is scrap; the rest is sound. */
  'stock.check': write(
    z.strictObject({
      colony: colonyId,
      day: dayValue,
      /** The shed, or the yard where it stands. */
      to: z.enum(['shed', 'yard']),
      parts: z.array(z.strictObject({ item: z.string().min(1).max(200), toMend: asked, scrap: asked })).max(50),
      /** Whether the bee inspector has seen it; asked for where disease was written down. */
      inspectorSeen: z.boolean(),
      note: z.string().trim().max(500),
    }),
    written,
    true,
  ),
} as const;
