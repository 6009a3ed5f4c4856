import { z } from 'zod';
import { read, write } from './operation.ts';
import { nothing } from './values.ts';

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

export const orderOperations = {
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

