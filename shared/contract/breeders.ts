import { z } from 'zod';
import { queenView } from './journal.ts';
import { needRecord, needSource } from './needs.ts';
import { read, write } from './operation.ts';
import { colonyId, dayValue, nothing, yardId } from './values.ts';

const count = z.number().int();

/** What may be counted from: a graft, a ripe cell, a split left to raise its queen, a mated queen in a cage. */
export const calendarStarts = ['graft', 'cell', 'walk-away', 'caged'] as const;
export type CalendarStart = (typeof calendarStarts)[number];

const weight = z.number().int().min(0).max(3);
/** How much each trait counts; 0 leaves it out. */
export const breederWeights = z.strictObject({ winter: weight, honey: weight, mites: weight, temper: weight, swarming: weight });
export type BreederWeightsView = z.infer<typeof breederWeights>;

const reason = z.object({ because: z.string(), detail: z.string(), records: z.array(needRecord) });
export const candidate = z.object({ id: colonyId, label: z.string(), queen: queenView.nullable(), reasons: z.array(reason) });
export type Candidate = z.infer<typeof candidate>;

export const candidates = z.object({
  asOf: dayValue,
  living: count,
  /** The days of the year on which queens are replaced, by the house rules. */
  season: z.object({ from: dayValue, until: dayValue }),
  /** By yard in the order of the book, the colonies in the order they stand. */
  yards: z.array(z.object({ id: yardId, code: z.string(), name: z.string(), standing: count, colonies: z.array(candidate) })),
  sources: z.array(needSource),
});
export type Candidates = z.infer<typeof candidates>;

export const calendarStep = z.object({ step: z.string(), from: dayValue, until: dayValue, sources: z.array(needSource) });
export type CalendarStep = z.infer<typeof calendarStep>;

/** In standard deviations of single colonies about the middle of the breeders. */
const score = z.object({ n: count, score: z.number(), limits: z.tuple([z.number(), z.number()]), shrinkage: z.number() });
const trait = <Own extends z.ZodType>(own: Own) => z.object({ winter: own, honey: own, mites: own, temper: own, swarming: own });

export const breeder = z.object({
  queen: queenView,
  colony: z.object({ id: colonyId, label: z.string() }),
  /** Her daughters that headed colonies in the record. */
  daughters: count,
  traits: trait(score.nullable()),
  sum: z.number(),
  limits: z.tuple([z.number(), z.number()]),
  /** Whether she can be told apart from the first. */
  apart: z.boolean(),
});
export type Breeder = z.infer<typeof breeder>;

export const breeders = z.object({
  asOf: dayValue,
  weights: breederWeights,
  /** How many values of each trait are compared, and why none are; empty where some are. */
  traits: trait(z.object({ says: z.string(), compared: count })),
  ranked: z.array(breeder),
});
export type BreedersView = z.infer<typeof breeders>;

export const breederOperations = {
  'queens.candidates': read(nothing, candidates),
  'queens.calendar': read(z.strictObject({ start: z.enum(calendarStarts), on: dayValue }), z.object({ steps: z.array(calendarStep) })),
  'queens.breeders': read(nothing, breeders),
  'queens.weigh': write(breederWeights, z.object({ before: breederWeights }), 'weigh as before'),
} as const;
