import { z } from 'zod';
import { curvePoint, orderQuestion } from './decision.ts';
import { written } from './journal.ts';
import { read, write } from './operation.ts';
import { dayValue, entryId, nothing } from './values.ts';

const count = z.number().int();
const cents = z.number().int().min(0).max(100_000_000);

export const placedKinds = ['package', 'nuc', 'queen', 'colony', 'equipment'] as const;

/** An order that was placed: a purchase row without a place to go to, whose note begins with “Ordered”. */
export const placedOrder = z.object({
  entry: entryId,
  day: dayValue,
  seller: z.string().nullable(),
  kind: z.enum(placedKinds),
  item: z.string(),
  quantity: z.number(),
  /** Of all of it, in minor units; null if not written down. */
  price: z.number().nullable(),
  delivery: z.tuple([dayValue.nullable(), dayValue.nullable()]),
  /** Arrived by what is in the book since: rows of delivery, colonies hived, queens given, stock from a supplier. */
  arrived: z.number(),
  left: z.number(),
  /** Still on its way; one that is a month past its delivery is no longer counted on. */
  awaited: z.boolean(),
  /** The kept plan it was ordered from, if the book knows it. */
  plan: z.string().nullable(),
  sentence: z.string(),
});
export type PlacedOrder = z.infer<typeof placedOrder>;

/** `what` is the bees or the equipment alone: “12 packages”. */
export const orderDeadline = z.object({ seller: z.string(), orderBy: dayValue, days: count, what: z.string(), sentence: z.string() });
export type OrderDeadline = z.infer<typeof orderDeadline>;

export const placedOperations = {
  /** Newest first. */
  'orders.placed': read(nothing, z.object({ orders: z.array(placedOrder) })),
  /** What is still to be ordered by a seller's last day, soonest first. */
  'orders.deadlines': read(nothing, z.object({ lines: z.array(orderDeadline) })),
  /** Pieces or packs of offers, as the offers count them; `each` in minor units where another price was agreed. One act; nothing is entered if a line cannot be. */
  'orders.place': write(
    z.strictObject({ lines: z.array(z.strictObject({ offer: z.string(), quantity: count.min(1).max(100_000), each: cents.optional() })).min(1).max(60), plan: z.string().nullable() }),
    written, true,
  ),
  /** Bees and queens become a note of delivery, equipment a stock row from the supplier. `to` is the shed or a yard's code. */
  'orders.deliver': write(z.strictObject({ entry: entryId, quantity: z.number().gt(0).max(1_000_000), to: z.string().min(1).max(40).default('shed') }), written, true),
  /** One point of the cost curves, so that they can be drawn as they are worked out, and stopped. */
  'order.point': read(z.strictObject({ question: orderQuestion, target: count.min(0).max(20_000), confidence: z.number().min(0.5).max(0.99) }), curvePoint),
} as const;
