import { z } from 'zod';
import { read } from './operation.ts';
import { dayValue, interval, nothing, yardId } from './values.ts';

const count = z.number().int();

/** Person-hours: hours by the clock times people. */
const hoursDone = {
  /** Visits: a yard on a day of which something was entered; for work at home, days. */
  visits: count,
  /** Of them, those with hours written down. */
  written: count,
  hours: z.number(),
  /** With the visits without hours as long as the others; null where too few have hours. */
  estimate: z.object({ hours: z.number(), range: interval }).nullable(),
  miles: z.number().nullable(),
};

export const workedRow = z.object({
  /** Null: work at home, or of no yard. */
  yard: z.object({ id: yardId, code: z.string(), name: z.string() }).nullable(),
  ...hoursDone,
  /** Colonies alive there, as a mean over the days of the season up to today. */
  colonies: z.number().nullable(),
  perColony: z.number().nullable(),
  /** Honey taken, in grams. */
  honey: z.number().nullable(),
});
export type WorkedRow = z.infer<typeof workedRow>;

export const workedSeason = z.object({
  season: count,
  rows: z.array(workedRow),
  total: workedRow.omit({ yard: true }),
  /** The weeks with most hours written down, Monday first; at most five. */
  busiest: z.array(z.object({ monday: dayValue, hours: z.number(), visits: count, without: count })),
});
export type WorkedSeason = z.infer<typeof workedSeason>;

export const plannedWorked = z.object({
  day: dayValue,
  yard: z.object({ id: yardId, code: z.string(), name: z.string() }),
  /** Working minutes of all people by the plan that held then. */
  planned: z.number(),
  /** Null where no hours are written down. */
  worked: z.number().nullable(),
  /** Whether anything was entered of that yard on that day. */
  went: z.boolean(),
});
export type PlannedWorked = z.infer<typeof plannedWorked>;

export const monthAhead = z.object({
  /** `2027-04` */
  month: z.string(),
  /** Person-hours that so many colonies would take, by past seasons; null where no season tells. `range`: 95 % for one more season; null from one season. */
  need: z.object({ hours: z.number(), range: interval.nullable(), seasons: count }).nullable(),
  driving: z.number(),
  /** Person-hours that there are by the weekly pattern, exceptions and daylight. */
  have: z.number(),
  fits: z.enum(['fits', 'open', 'short', 'unknown']),
});
export type MonthAhead = z.infer<typeof monthAhead>;

export const workedOperations = {
  /** The seasons in which something was entered, the newest first. */
  'worked.seasons': read(nothing, z.object({ today: dayValue, massUnit: z.enum(['lb', 'kg']), seasons: z.array(workedSeason) })),
  /** Visits of kept plans that are past, and those of today of which something is entered; the newest first. */
  'worked.planned': read(nothing, z.object({ rows: z.array(plannedWorked), both: z.object({ visits: count, planned: z.number(), worked: z.number() }) })),
  /** The hours of the season to come with so many colonies, month by month. */
  'worked.ahead': read(
    z.strictObject({ colonies: count.min(1).max(20_000).optional() }),
    z.object({ season: count, colonies: count, living: count, own: z.boolean(), months: z.array(monthAhead), seasons: z.array(count) }),
  ),
} as const;
