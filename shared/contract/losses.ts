import { z } from 'zod';
import { read } from './operation.ts';
import { colonyId, dayValue, endingValue, interval, unitedValue } from './values.ts';

const count = z.number().int();

/** A yard's account for a season; `yard` is "all" in the totals row. Everything balances to `closing`. */
export const ledgerRow = z.object({
  season: count,
  yard: z.string(),
  opening: count,
  packages: count,
  nucs: count,
  swarms: count,
  splits: count,
  boughtColonies: count,
  movedIn: count,
  movedOut: count,
  sold: count,
  given: count,
  combined: count,
  absconded: count,
  lostSummer: count,
  lostWinter: count,
  closing: count,
  aliveOn1October: count,
});
export type LedgerRow = z.infer<typeof ledgerRow>;

/** Interval that allows for yards sharing their fate (quasi-binomial, t, dispersion at least 1). */
export const quasi = z.object({
  lower: z.number(),
  upper: z.number(),
  dispersion: z.number(),
  units: count,
  df: count,
});

export const lossRow = z.object({
  season: count,
  period: z.enum(['winter', 'summer', 'year']),
  /** "all" or the code of a yard. */
  group: z.string(),
  united: unitedValue,
  atRisk: count,
  lost: count,
  /** Null when nothing was at risk. */
  rate: z.number().nullable(),
  wilson: interval.nullable(),
  clopperPearson: interval.nullable(),
  quasi: quasi.nullable(),
  /** Why `quasi` is null, in words; null where it is given. */
  quasiWhy: z.string().nullable(),
  /** Mean of the yards' own rates, for group "all" with at least one yard at risk. */
  average: z.object({ units: count, mean: z.number(), ci: interval.nullable(), median: z.number() }).nullable(),
  /** False while the period is still running on the as-of day. */
  complete: z.boolean(),
});
export type LossRow = z.infer<typeof lossRow>;

/** A Kaplan-Meier curve: one item per day with a loss; the band is the log-log one, null where undefined. */
export const curve = z.object({
  colonies: count,
  losses: count,
  times: z.array(z.number()),
  atRisk: z.array(count),
  lost: z.array(count),
  survival: z.array(z.number()),
  low: z.array(z.number().nullable()),
  high: z.array(z.number().nullable()),
  /** Days at which a colony left alive (sold, given, united, moved away, still alive). */
  censored: z.array(z.number()),
  /** Number at risk just before evenly spaced days, for the strip below the picture. */
  strip: z.array(z.object({ time: z.number(), atRisk: count })),
  /** First day of the curve where it is not that of the axis: survival is then given alive on that day. */
  from: z.number().optional(),
  /** Last day on the axis. */
  last: z.number(),
  /** A sentence when the curve needs a caution; null otherwise. */
  warning: z.string().nullable(),
});
export type Curve = z.infer<typeof curve>;

export const curveSet = z.object({
  /** The axis in words: "days since 1 October 2025" or "days since the colony's start". */
  axis: z.string(),
  all: curve,
  byYard: z.array(z.object({ yard: z.string(), yardName: z.string(), curve })),
  /** What the picture says, made from the data. */
  sentence: z.string(),
});
export type CurveSet = z.infer<typeof curveSet>;

export const lossReview = z.object({
  asOf: dayValue,
  seasons: z.array(z.object({ season: count, name: z.string(), complete: z.boolean() })),
  season: count,
  united: unitedValue,
  yards: z.array(z.object({ code: z.string(), name: z.string() })),
  /** The season's yards, then "all". */
  ledger: z.array(ledgerRow),
  balances: z.boolean(),
  /** All seasons, periods and groups under the chosen treatment of united colonies. */
  rates: z.array(lossRow),
  /** Two or three sentences: what was lost, how it compares, what small numbers allow. */
  sentences: z.array(z.string()),
  sinceOctober: curveSet,
  sinceStart: curveSet,
  ended: z.array(
    z.object({ id: colonyId, label: z.string(), yard: z.string(), day: dayValue, how: endingValue, causes: z.array(z.string()) }),
  ),
});
export type LossReview = z.infer<typeof lossReview>;

export const lossOperations = {
  /** Without a season: the last one whose winter has begun. */
  'losses.review': read(z.strictObject({ season: count.optional(), united: unitedValue }), lossReview),
} as const;
