import { z } from 'zod';
import { dayFromIso, type Day } from '../days.ts';
import { columns, kinds, origins } from '../entryForms.ts';
import type { ColonyId, EntryId, GestureId, YardId } from '../brands.ts';

/** A day on the wire: checked to be a real one. */
export const dayValue = z
  .string()
  .refine((text) => dayFromIso(text) !== null, 'not a day')
  .transform((text) => text as Day);

export const colonyId = z.number().int().positive().transform((id) => id as ColonyId);
export const entryId = z.number().int().positive().transform((id) => id as EntryId);
export const gestureId = z.number().int().positive().transform((id) => id as GestureId);
export const yardId = z.number().int().positive().transform((id) => id as YardId);

/** A row as typed: only known columns, text values of at most 4,000 characters. */
export const cells = z.partialRecord(z.enum(columns), z.string().max(4000));

export const kindValue = z.enum(kinds);
export const originValue = z.enum([...origins, 'split']);
export const endings = ['alive', 'lost', 'sold', 'given', 'combined', 'absconded'] as const;
export const endingValue = z.enum(endings);
export type Ending = z.infer<typeof endingValue>;

/** united: a colony united into another counts as `lost` (survey rule) or is `takenOut` of the base. */
export const unitedValue = z.enum(['lost', 'takenOut']);
export type United = z.infer<typeof unitedValue>;

/** Bounds of a 95 % interval. */
export const interval = z.tuple([z.number(), z.number()]);

export const nothing = z.strictObject({});
