import { z } from 'zod';
import { queenView } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, interval } from './values.ts';

const mark = z.object({ day: dayValue, sentence: z.string() });
export type StripMark = z.infer<typeof mark>;

/** All of a colony's life that has a place on a time axis, oldest first. */
export const colonyStrip = z.object({
  start: dayValue,
  /** The day it ended, or today. */
  until: dayValue,
  ended: z.boolean(),
  /** The seasons it lived in, each from its first day to the first day after it; the winter begins on `winter`. */
  seasons: z.array(z.object({ season: z.number().int(), from: dayValue, winter: dayValue, until: dayValue })),
  looks: z.array(z.object({ day: dayValue, bees: z.number().nullable(), brood: z.number().nullable(), stores: z.number().nullable() })),
  mites: z.array(z.object({ day: dayValue, mites: z.number(), bees: z.number(), per100: z.number(), range: interval })),
  /** How many supers were on it from that day. */
  supers: z.array(z.object({ day: dayValue, on: z.number().int() })),
  feeds: z.array(mark),
  /** `until`: the end written down; null where none was. Those of the whole yard while it stood there count. */
  treatments: z.array(mark.extend({ until: dayValue.nullable() })),
  honey: z.array(z.object({ day: dayValue, lb: z.number() })),
  /** What was written down of its queens; `queen`: the one in it that evening. */
  queens: z.array(mark.extend({ queen: queenView.nullable() })),
});
export type ColonyStrip = z.infer<typeof colonyStrip>;

export const stripOperations = {
  'colony.strip': read(z.strictObject({ id: colonyId }), colonyStrip),
} as const;
