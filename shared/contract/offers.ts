import { z } from 'zod';
import { read, write } from './operation.ts';
import { dayValue, nothing } from './values.ts';

const count = z.number().int();
const cents = z.number().int().min(0);
const words = z.string().trim().min(1).max(120);

/** What a seller offers. A pack of size 0 and a price of 0 are understood here, so that the room can say what is wrong with them. */
export const offered = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('package'), pounds: z.number().min(0).max(20) }),
  z.strictObject({ kind: z.literal('nuc'), frames: count.min(0).max(12) }),
  z.strictObject({ kind: z.literal('queen') }),
  z.strictObject({ kind: z.literal('colony') }),
  z.strictObject({ kind: z.literal('equipment'), item: words, packSize: count.min(0).max(100_000) }),
]);
export type Offered = z.infer<typeof offered>;

export const offerBody = z.strictObject({
  seller: words,
  what: offered,
  /** Price each (of a pack, for equipment) from so many on; money in minor units. */
  steps: z.array(z.strictObject({ from: count.min(1).max(100_000), each: cents })).min(1).max(10),
  orderBy: dayValue,
  deliveryFrom: dayValue.nullable(),
  deliveryUntil: dayValue.nullable(),
  least: count.min(1).max(100_000),
  /** No more than these are to be had; null where the seller names no limit. */
  most: count.min(1).max(100_000).nullable(),
  /** Paid when ordering, for each; minor units. */
  deposit: cents.nullable(),
  note: z.string().max(400).nullable(),
});
export type OfferBody = z.infer<typeof offerBody>;

export const offer = offerBody.extend({ key: z.string().min(1).max(60) });
export type Offer = z.infer<typeof offer>;

/** An offer as a screen lists it. */
export const listedOffer = offer.extend({
  /** “3 lb packages”, “nucs of 4 frames”, “deep boxes, 5 to a pack”. */
  words: z.string(),
  late: z.boolean(),
  /** What should be known of it: an order day past, bees that come after the target day. */
  remarks: z.array(z.string()),
});
export type ListedOffer = z.infer<typeof listedOffer>;

/** What was paid before, newest first; `each` in minor units. */
export const paidPrice = z.object({
  day: dayValue,
  kind: z.enum(['package', 'nuc', 'queen', 'colony', 'equipment']),
  item: z.string(),
  seller: z.string().nullable(),
  quantity: z.number(),
  each: z.number(),
});
export type PaidPrice = z.infer<typeof paidPrice>;

export const offerOperations = {
  'offers.list': read(nothing, z.object({ offers: z.array(listedOffer), paid: z.array(paidPrice) })),
  /** Without a key a new one is made. A price of nothing is asked about: `free` says that it is meant. */
  'offers.keep': write(
    z.strictObject({ key: z.string().min(1).max(60).nullable(), offer: offerBody, free: z.boolean().default(false) }),
    z.object({ offer: listedOffer }),
    'keep it again as it was, or drop it',
  ),
  'offers.drop': write(z.strictObject({ key: z.string() }), nothing, 'enter the offer again'),
} as const;
