import { z } from 'zod';
import { read } from './operation.ts';
import { colonyId, dayValue, interval } from './values.ts';

const count = z.number().int();

export const yieldGroupings = ['yard', 'line', 'queenAge', 'source', 'season'] as const;
export const yieldGrouping = z.enum(yieldGroupings);
export type YieldGrouping = z.infer<typeof yieldGrouping>;

/** Pounds a colony and season, of colonies that were harvested. */
export const yieldRow = z.object({
  key: z.string(), label: z.string(),
  /** Colony-seasons weighed. */
  n: count, colonies: count, seasons: count,
  /** As weighed, with 95 % limits from two values on; null where nothing was. */
  mean: z.number().nullable(), meanInterval: interval.nullable(),
  /** Years evened out and pulled towards the whole where that can be done, else as weighed; 95 % limits, never below nought. */
  estimate: z.number().nullable(), interval: interval.nullable(), pooled: z.boolean(), evened: z.boolean(),
  /** 0: left where it was, 1: pulled all the way to the whole. */
  shrinkage: z.number().nullable(),
  /** Yards weighed together: all of it, and how many colonies gave it; no spread is known. */
  together: z.object({ lb: z.number(), colonySeasons: count }).nullable(),
});
export type YieldRow = z.infer<typeof yieldRow>;

export const seasonCrop = z.object({
  season: count, lb: z.number(), colonies: count, perColony: z.number().nullable(),
  /** Visits of the season, those with hours written down, and the person-hours of these. */
  visits: count, written: count, hours: z.number(),
  /** Pounds for each person-hour of all visits, those without hours as long as the others; null where too few have hours. */
  perHour: z.object({ lb: z.number(), range: interval }).nullable(),
  /** What USDA NASS printed for that year; null where no figure was read. */
  nass: z.object({ perColony: z.number(), colonies: z.number(), production: z.number().nullable(), source: z.string() }).nullable(),
});
export type SeasonCrop = z.infer<typeof seasonCrop>;

export const yieldAnswer = z.object({
  asOf: dayValue, by: yieldGrouping, season: count.nullable(), rows: z.array(yieldRow),
  all: z.object({ n: count, mean: z.number().nullable(), interval: interval.nullable() }),
  /** Colony-seasons that could not be compared with the others. */
  apart: count,
  test: z.object({ F: z.number(), df1: z.number(), df2: z.number(), p: z.number() }).nullable(),
  /** Standard deviation between groups and between colonies of one, pounds. */
  between: z.number().nullable(), within: z.number().nullable(),
  few: count, sentence: z.string(), remarks: z.array(z.string()), seasons: z.array(seasonCrop), seasonSentence: z.string(), hourSentence: z.string(), printedSentence: z.string(),
});
export type YieldAnswer = z.infer<typeof yieldAnswer>;

const behind = z.object({ colony: colonyId, label: z.string(), season: count, yard: z.string(), lb: z.number().nullable(), days: z.array(dayValue), together: z.boolean() });

export const yieldOperations = {
  'yields.table': read(z.strictObject({ by: yieldGrouping, season: count.nullable().default(null) }), yieldAnswer),
  /** The colonies behind a figure, the highest first. */
  'yields.behind': read(z.strictObject({ by: yieldGrouping, key: z.string().max(200).nullable(), season: count.nullable().default(null), most: count.min(1).max(2000).default(300) }), z.object({ rows: z.array(behind), total: count })),
} as const;
