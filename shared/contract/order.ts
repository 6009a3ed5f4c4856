import { z } from 'zod';
import { read, write } from './operation.ts';
import { dayValue, nothing, unitedValue } from './values.ts';

const count = z.number().int();

export const sourceWords = ['read', 'read-weak', 'from memory', 'common practice, no source', 'arithmetic'] as const;

/** A number or short text the person may change, with its published default. */
export const houseRule = z.object({
  key: z.string(),
  label: z.string(),
  room: z.string(),
  unit: z.string(),
  type: z.enum(['number', 'month-day', 'text']),
  value: z.union([z.number(), z.string()]),
  default: z.union([z.number(), z.string()]),
  range: z.tuple([z.number(), z.number()]).nullable(),
  /** The words a text may be, where not every one will do. */
  choices: z.array(z.string()).optional(),
  source: z.string(),
  confidence: z.enum(sourceWords),
});
export type HouseRule = z.infer<typeof houseRule>;

export const orderPlan = z.object({
  asOf: dayValue,
  /** The 1 April that the plan is for. */
  spring: dayValue,
  /** Colonies alive on the as-of day. */
  living: count,
  target: count,
  confidence: z.number(),
  source: z.enum(['package', 'nuc']),
  hiveFrames: z.union([z.literal(8), z.literal(10)]),
  united: unitedValue,
  past: z.array(z.object({ season: count, from: dayValue, until: dayValue, atRisk: count, lost: count })),
  prior: z.object({ rate: z.number(), alpha: z.number(), beta: z.number(), rule: z.string(), seasons: count }),
  /** Survivors of the living: mean and 80 % range. */
  survivors: z.object({ mean: z.number(), low: count, high: count, chances: z.array(z.object({ survivors: count, chance: z.number() })) }),
  buy: count,
  /** Chance of being short of the target with that many bought, and with none. */
  chanceShort: z.number(),
  chanceShortBuyingNone: z.number(),
  /** How many to buy at other confidences, for the small table. */
  ladder: z.array(z.object({ confidence: z.number(), buy: count })),
  orders: z.array(
    z.object({
      what: z.string(),
      quantity: count,
      seller: z.string().nullable(),
      orderBy: dayValue,
      /** True when that day is past on the as-of day. */
      late: z.boolean(),
      delivery: z.string(),
      /** Minor units each, from the last recorded price; null if none was recorded. */
      priceEach: count.nullable(),
      priceFrom: z.string().nullable(),
      reason: z.string(),
    }),
  ),
  equipment: z.array(
    z.object({
      item: z.string(),
      perColony: z.number(),
      need: count,
      onHives: count,
      fromDeadOuts: count,
      shed: count,
      have: count,
      order: count,
      reason: z.string(),
    }),
  ),
  sentences: z.array(z.string()),
  cautions: z.array(z.string()),
  rules: z.array(houseRule),
});
export type OrderPlan = z.infer<typeof orderPlan>;

export const shedCount = z.object({
  places: z.array(z.string()),
  items: z.array(
    z.object({
      item: z.string(),
      counts: z.array(z.object({ place: z.string(), count: z.number() })),
      total: z.number(),
    }),
  ),
  movements: z.array(
    z.object({ day: dayValue, item: z.string(), quantity: z.number(), from: z.string(), to: z.string(), note: z.string().nullable() }),
  ),
});
export type ShedCount = z.infer<typeof shedCount>;

export const orderOperations = {
  /** Absent target: as many as were wintered last; absent confidence: the house rule. */
  'order.plan': read(
    z.strictObject({
      target: count.min(0).max(100_000).optional(),
      confidence: z.number().min(0.5).max(0.999).optional(),
      source: z.enum(['package', 'nuc']),
      hiveFrames: z.union([z.literal(8), z.literal(10)]),
      united: unitedValue,
    }),
    orderPlan,
  ),
  'stock.shed': read(nothing, shedCount),
  'rules.list': read(nothing, z.object({ rules: z.array(houseRule) })),
  'rules.set': write(
    z.strictObject({ key: z.string(), value: z.union([z.number(), z.string()]).nullable() }),
    z.object({ rules: z.array(houseRule) }),
    'set it back in the same place',
  ),
  /** The last target, confidence and choices, kept with the book. */
  'order.keep': write(
    z.strictObject({ target: count.min(0).nullable(), confidence: z.number().min(0.5).max(0.999), source: z.enum(['package', 'nuc']), hiveFrames: z.union([z.literal(8), z.literal(10)]) }),
    nothing,
    'choose again',
  ),
  'order.kept': read(
    nothing,
    z.object({ target: count.nullable(), confidence: z.number(), source: z.enum(['package', 'nuc']), hiveFrames: z.union([z.literal(8), z.literal(10)]) }),
  ),
} as const;

