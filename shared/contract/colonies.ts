import { z } from 'zod';
import { queenView, storyEntry } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, endingValue, interval, originValue, yardId } from './values.ts';

export const colonyRow = z.object({
  id: colonyId,
  label: z.string(),
  /** Where it stands, or last stood. */
  yard: z.string(),
  yardName: z.string(),
  origin: originValue,
  start: dayValue,
  end: dayValue.nullable(),
  how: endingValue,
  queen: queenView.nullable(),
  lastLook: dayValue.nullable(),
  framesBees: z.number().nullable(),
  framesBrood: z.number().nullable(),
  framesStores: z.number().nullable(),
  mitesDay: dayValue.nullable(),
  mites: z.number().nullable(),
  bees: z.number().nullable(),
  /** Supers on it now. */
  supers: z.number().int(),
  /** Honey of the season of the as-of day, pounds; null where none was weighed by colony. */
  honeyLb: z.number().nullable(),
  causes: z.array(z.string()),
});
export type ColonyRow = z.infer<typeof colonyRow>;

const link = z.object({ id: colonyId, label: z.string(), day: dayValue, how: endingValue });
export type ColonyLink = z.infer<typeof link>;

export const colonyStory = z.object({
  colony: colonyRow,
  /** In words: "Package from Sandel Road Bees, hived 24 April 2024 at Larch Bend." */
  sentence: z.string(),
  queens: z.array(queenView.extend({ until: dayValue.nullable(), ending: z.string().nullable() })),
  stays: z.array(z.object({ yard: z.string(), yardName: z.string(), from: dayValue, until: dayValue.nullable() })),
  mother: link.nullable(),
  /** All the way up, the mother first. */
  ancestors: z.array(link),
  daughters: z.array(link),
  unitedFrom: z.array(link),
  unitedInto: link.nullable(),
  honey: z.array(z.object({ season: z.number().int(), lb: z.number(), harvests: z.number().int() })),
  miteCounts: z.array(z.object({ day: dayValue, mites: z.number(), bees: z.number(), per100: z.number(), range: interval })),
  /** All entries that name the colony, struck ones too, oldest first. */
  entries: z.array(storyEntry),
});
export type ColonyStory = z.infer<typeof colonyStory>;

export const colonyOperations = {
  'colonies.list': read(
    z.strictObject({
      which: z.enum(['living', 'ended', 'all']),
      yard: yardId.optional(),
    }),
    z.object({ asOf: dayValue, rows: z.array(colonyRow), yards: z.array(z.object({ id: yardId, code: z.string(), name: z.string() })) }),
  ),
  'colony.story': read(z.strictObject({ id: colonyId }), colonyStory),
} as const;
