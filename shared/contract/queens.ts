import { z } from 'zod';
import { queenView } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, entryId, interval } from './values.ts';

const count = z.number().int();
const colonyName = z.object({ id: colonyId, label: z.string() });

/** A queen of the record with a colony she was in. */
export const queenLink = z.object({ queen: queenView, colony: colonyName });
export type QueenLink = z.infer<typeof queenLink>;

/** A figure with the number it rests on; null where that number is too small. */
export const queenFigure = z.object({ n: count, value: z.number().nullable(), interval: interval.nullable(), says: z.string() });
export type QueenFigure = z.infer<typeof queenFigure>;

const share = z.object({ count, of: count, interval: interval.nullable(), says: z.string() });
export type QueenShare = z.infer<typeof share>;

export const queenStory = z.object({
  queen: queenView,
  /** How she came into the book. */
  sentence: z.string(),
  /** Null where the record does not tell; `motherSays` then says why. */
  mother: queenLink.nullable(),
  motherSays: z.string(),
  daughters: z.array(queenLink.extend({ day: dayValue, how: z.enum(['walk-away split', 'split with a cell', 'superseded', 'swarmed']) })),
  reigns: z.array(
    z.object({
      colony: colonyName,
      /** The yards the colony stood in meanwhile. */
      yards: z.array(z.string()),
      from: dayValue,
      until: dayValue.nullable(),
      ending: z.string().nullable(),
      /** What became of the colony, where her time there ended with it. */
      colonyEnd: z.string().nullable(),
    }),
  ),
  /** Looks with brood; frames of brood. */
  brood: queenFigure,
  /** Washes; mites per 100 bees. */
  mites: queenFigure.extend({ mites: count, bees: count }),
  /** Looks with temper; 1 to 5. */
  temper: queenFigure,
  honey: z.array(z.object({ season: count, lb: z.number(), harvests: count })),
  swarming: share,
  winters: share,
});
export type QueenStory = z.infer<typeof queenStory>;

export const queenOperations = {
  /** By the entry that first brought her. */
  'queen.story': read(z.strictObject({ id: entryId }), queenStory),
} as const;
