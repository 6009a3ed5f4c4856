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
export type LineGrouping = (typeof lineGroupings)[number];
/** Lanes, and rows of one record, that a window takes at a time: what it can take up and draw in well under a tenth of a second. */
export const lanesAtATime = 400;
export const rowsAtATime = 200;

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

/** Founding lines: the whole operation has thousands where thousands of colonies were bought. */
const families = z.array(z.object({ id: colonyId, name: z.string(), colonies: count, alive: count }));

export const linesPicture = z.object({
  asOf: dayValue,
  /** Every season of the record, each from its first day to the first day after it; the winter begins on `winter`. */
  seasons: z.array(z.object({ season: count, from: dayValue, winter: dayValue, until: dayValue })),
  yards: z.array(z.object({ id: yardId, code: z.string(), name: z.string() })),
  /** The founding lines, the largest first; of the first view only the largest, the asked one and those of its lanes. */
  families,
  /** Families together, a mother before her daughters; of the first view only the first of them. */
  lanes: z.array(familyLane),
  /** How many lanes were asked for, also where not all are here. */
  laneCount: count,
  /** Between the lanes that are here. */
  links: z.array(laneLink),
  /** What the picture says. */
  sentence: z.string(),
  /** By founding colony, by where the bees came from, by the source of the queen; of the whole operation. */
  lines: z.object({ family: z.array(lineRow), bees: z.array(lineRow), queen: z.array(lineRow), all: lineRow }),
  /** How many rows each of them has, also where the first view has only the first. */
  rowCounts: z.object({ family: count, bees: count, queen: count }),
});
export type LinesPicture = z.infer<typeof linesPicture>;

const lanesAsked = z.strictObject({ family: colonyId.optional(), yard: yardId.optional(), season: count.min(1).max(9998).optional() });
const from = count.min(0);

/** Lanes of a view from one on, the links that end there or lead back to lanes before, and the founding lines of these lanes. */
export const lanesPart = z.object({ lanes: z.array(familyLane), links: z.array(laneLink), families });
export type LanesPart = z.infer<typeof lanesPart>;

export const lineOperations = {
  /**
   * Lanes of one founding line, of colonies that ever stood in a yard, or that lived in a season; absent: all. `view:
   * first` leaves of long lists what a window shows first, `lines.lanes` and `lines.rows` answer the rest.
   */
  'lines.picture': read(lanesAsked.extend({ view: z.enum(['first', 'whole']).optional() }), linesPicture),
  'lines.lanes': read(lanesAsked.extend({ from, most: count.min(1).max(5000) }), lanesPart),
  'lines.rows': read(z.strictObject({ by: z.enum(lineGroupings), from, most: count.min(1).max(5000) }), z.object({ rows: z.array(lineRow) })),
} as const;
