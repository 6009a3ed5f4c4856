import { z } from 'zod';
import { queenView } from './journal.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, endingValue, interval, originValue, yardId } from './values.ts';

const count = z.number().int();

/** A colony's life as one lane of the picture. */
export const familyLane = z.object({
  id: colonyId,
  label: z.string(),
  /** The colony its line goes back to: itself where no mother is known. */
  family: colonyId,
  mother: colonyId.nullable(),
  motherLabel: z.string().nullable(),
  /** Splits between it and the founder of its line. */
  depth: count,
  origin: originValue,
  start: dayValue,
  /** The day it ended, or today. */
  until: dayValue,
  how: endingValue,
  causes: z.array(z.string()),
  into: colonyId.nullable(),
  intoLabel: z.string().nullable(),
  /** How it came to be and how it ended, in words. */
  sentence: z.string(),
  /** Code of the yard it stood in first. */
  yard: z.string(),
  /** Its queens by the day each was in it from. */
  queens: z.array(z.object({ day: dayValue, queen: queenView })),
  moves: z.array(z.object({ day: dayValue, to: z.string(), toName: z.string() })),
});
export type FamilyLane = z.infer<typeof familyLane>;

/** A split leads from the mother's lane to the daughter's, a combine from the lane that ended to the one that lives on. */
export const laneLink = z.object({ kind: z.enum(['split', 'combine']), from: colonyId, to: colonyId, day: dayValue });
export type LaneLink = z.infer<typeof laneLink>;

export const lineGroupings = ['family', 'bees', 'queen'] as const;

/** How the colonies of one line did; winters that are over, each colony once a winter. */
export const lineRow = z.object({
  name: z.string(),
  colonies: count,
  alive: count,
  wintered: count,
  lost: count,
  /** Lost of wintered; null where none wintered. */
  rate: z.number().nullable(),
  wilson: interval.nullable(),
  /** What the numbers allow, in words. */
  says: z.string(),
  /**
   * Honey weighed by colony, pounds per colony and season, the years evened out; n: seasons of colonies. `pooled`: pulled
   * towards the other lines, by as much as the counts are few. Null where nothing was weighed or nothing is to be compared with.
   */
  yield: z.object({ n: count, lb: z.number().nullable(), interval: interval.nullable(), pooled: z.boolean() }),
  /** 1 (gentle) to 5 (fierce); n: colonies of which it was written down. */
  temper: z.object({ n: count, mean: z.number().nullable(), interval: interval.nullable() }),
  /** Of the seasons of colonies, those in which a swarm was written down. */
  swarming: z.object({ count, of: count, interval: interval.nullable() }),
});
export type LineRow = z.infer<typeof lineRow>;

export const linesPicture = z.object({
  asOf: dayValue,
  /** Every season of the record, each from its first day to the first day after it; the winter begins on `winter`. */
  seasons: z.array(z.object({ season: count, from: dayValue, winter: dayValue, until: dayValue })),
  yards: z.array(z.object({ id: yardId, code: z.string(), name: z.string() })),
  /** The founding lines, the largest first. */
  families: z.array(z.object({ id: colonyId, name: z.string(), colonies: count, alive: count })),
  /** Families together, a mother before her daughters. */
  lanes: z.array(familyLane),
  /** Between the lanes that are here. */
  links: z.array(laneLink),
  /** What the picture says. */
  sentence: z.string(),
  /** By founding colony, by where the bees came from, by the source of the queen; of the whole operation. */
  lines: z.object({ family: z.array(lineRow), bees: z.array(lineRow), queen: z.array(lineRow), all: lineRow }),
});
export type LinesPicture = z.infer<typeof linesPicture>;

export const lineOperations = {
  /** Lanes of one founding line, of colonies that ever stood in a yard, or that lived in a season; absent: all. */
  'lines.picture': read(z.strictObject({ family: colonyId.optional(), yard: yardId.optional(), season: count.min(1).max(9998).optional() }), linesPicture),
} as const;
