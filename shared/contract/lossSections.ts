import { z } from 'zod';
import { curve, ledgerRow, lossRow } from './losses.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, endingValue, interval, originValue, unitedValue } from './values.ts';

const count = z.number().int();
const season = count.min(1).max(9998);
const period = z.enum(['winter', 'summer', 'year']);

/** What all sections of the season-end review stand on; without a season, the last one whose winter has begun. */
export const lossFrame = z.object({
  asOf: dayValue,
  seasons: z.array(z.object({ season: count, name: z.string(), complete: z.boolean() })),
  season: count,
  yards: z.array(z.object({ code: z.string(), name: z.string() })),
  /** True while the book holds no colony that could have been lost. */
  empty: z.boolean(),
  /** First day of the season's winter, and the first day after it. */
  winter: z.object({ from: dayValue, until: dayValue }),
});
export type LossFrame = z.infer<typeof lossFrame>;

export const lossLedger = z.object({
  season: count,
  running: z.boolean(),
  yards: z.array(z.object({ code: z.string(), name: z.string() })),
  /** The season's yards, then "all". */
  ledger: z.array(ledgerRow),
  balances: z.boolean(),
});
export type LossLedger = z.infer<typeof lossLedger>;

/** A share with its base; `range` is the 95 % interval to show and `method` says which it is. */
export const countedRate = z.object({
  atRisk: count,
  lost: count,
  rate: z.number().nullable(),
  range: interval.nullable(),
  method: z.enum(['none', 'wilson', 'clopper-pearson', 'quasi-binomial']),
  why: z.string(),
});
export type CountedRate = z.infer<typeof countedRate>;

export const meanRate = z.object({ units: count, mean: z.number(), range: interval.nullable(), median: z.number(), smallest: z.number(), largest: z.number() });

/** The wintered colonies followed one by one. Dead, queen and disaster add up to lost. */
export const cohortLoss = z.object({
  total: countedRate,
  average: meanRate.nullable(),
  parts: z.array(z.object({ part: z.enum(['dead', 'queen', 'disaster']), rate: countedRate })),
  /** Left the book alive during the winter; they stay in the base and count as not lost. */
  sold: count,
  given: count,
  united: count,
  /** Colonies that came during the winter and are in no part of this. */
  came: count,
});
export type CohortLoss = z.infer<typeof cohortLoss>;

export const lossRates = z.object({
  season: count,
  united: unitedValue,
  yards: z.array(z.object({ code: z.string(), name: z.string() })),
  /** By the turnover rule: the season's yards and all together, of the other seasons all together only. */
  rates: z.array(lossRow),
  /** The wintered cohort of every season, newest first; absent before its winter began. */
  cohorts: z.array(z.object({ season: count, complete: z.boolean(), loss: cohortLoss })),
  sentences: z.array(z.string()),
  /** Colonies that went to another yard during the season’s winter; the turnover rule counts them where they ended. */
  moved: count,
  /** This season's winter less each earlier one: difference of the rates with Newcombe's interval. */
  differences: z.array(z.object({ season: count, period, value: z.number(), range: interval })),
  published: z.array(
    z.object({
      survey: z.enum(['us', 'coloss', 'other']), place: z.string(), season: count, period, what: z.enum(['total', 'average']),
      rate: z.number(), range: interval.nullable(), rangeIs: z.enum(['interval', 'countries']).nullable(), source: z.string(),
    }),
  ),
});
export type LossRates = z.infer<typeof lossRates>;

export const groupings = ['none', 'yard', 'source', 'queenAge', 'line', 'treated', 'mites', 'stores'] as const;
export const groupingValue = z.enum(groupings);
export type Grouping = z.infer<typeof groupingValue>;

/** A number of days with its 95 % interval. */
const daysWithRange = z.object({ value: z.number(), low: z.number().nullable(), high: z.number().nullable() });

export const survivalGroup = z.object({
  key: z.string(),
  label: z.string(),
  /** Place in the order of series: 0 is all together. */
  place: count,
  /** Null where too few were watched to draw one; `why` then says so. */
  curve: curve.nullable(),
  why: z.string().nullable(),
  colonies: count,
  losses: count,
  /** First time by which half were lost; null while more than half lived on. */
  median: daysWithRange.nullable(),
  /** Mean days alive up to `tau`, which all groups share; null without a curve. */
  mean: daysWithRange.nullable(),
  /** That mean less the reference group's. */
  difference: daysWithRange.nullable(),
});
export type SurvivalGroup = z.infer<typeof survivalGroup>;

export const survivalTest = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('made'), chiSquare: z.number(), df: count, p: z.number(), strata: count, groups: z.array(z.string()), sentence: z.string() }),
  z.object({ kind: z.literal('refused'), sentence: z.string() }),
]);
export type SurvivalTest = z.infer<typeof survivalTest>;

export const fates = ['lost', 'sold', 'united'] as const;
export type Fate = (typeof fates)[number];

export const incidence = z.object({
  /** Ascending days; all lists run along them. */
  times: z.array(z.number()),
  atRisk: z.array(count),
  alive: z.array(z.number()),
  fates: z.array(z.object({ fate: z.enum(fates), colonies: count, share: z.array(z.number()), low: z.array(z.number().nullable()), high: z.array(z.number().nullable()) })),
  sentence: z.string(),
});
export type Incidence = z.infer<typeof incidence>;

const survivalAsked = z.strictObject({
  /** Null: every winter that was begun, taken together. Without meaning for the axis since the colony's start. */
  season: season.nullable(),
  axis: z.enum(['winter', 'start']),
  by: groupingValue,
  /** United colonies count as lost, or leave alive on that day. */
  united: z.enum(['lost', 'alive']),
});

export const lossSurvival = z.object({
  asked: survivalAsked,
  /** Day 0 of the axis; null where each colony or each season has its own. */
  origin: dayValue.nullable(),
  last: z.number(),
  complete: z.boolean(),
  all: survivalGroup,
  groups: z.array(survivalGroup),
  /** The group that the others' means are taken from. */
  reference: z.string().nullable(),
  tau: z.number().nullable(),
  test: survivalTest.nullable(),
  /** How many groups may be compared pair by pair now; 0 where that is not to be done. */
  pairs: count,
  sentence: z.string(),
  /** What else has to be said: records that stop, late starts of curves, groups left out. */
  notes: z.array(z.string()),
  incidence: incidence.nullable(),
});
export type LossSurvival = z.infer<typeof lossSurvival>;

export const lossPairs = z.object({
  pairs: z.array(z.object({ a: z.string(), b: z.string(), chiSquare: z.number().nullable(), p: z.number().nullable(), pHolm: z.number().nullable() })),
  sentence: z.string(),
});

/** Which colonies a figure of the review counted. */
export const behindSelector = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('ledger'), season, yard: z.string(),
    column: z.enum(['opening', 'packages', 'nucs', 'swarms', 'splits', 'boughtColonies', 'movedIn', 'movedOut', 'sold', 'given', 'combined', 'absconded', 'lostSummer', 'lostWinter', 'closing', 'aliveOn1October']),
  }),
  z.strictObject({ kind: z.literal('rate'), season, yard: z.string(), period, united: unitedValue, part: z.enum(['atRisk', 'lost']) }),
  z.strictObject({ kind: z.literal('cohort'), season, part: z.enum(['wintered', 'lost', 'dead', 'queen', 'disaster', 'left']) }),
  z.strictObject({ kind: z.literal('survival'), asked: survivalAsked, group: z.string(), part: z.enum(['all', 'lost']) }),
  z.strictObject({ kind: z.literal('colonies'), ids: z.array(colonyId).max(20_000) }),
]);
export type BehindSelector = z.infer<typeof behindSelector>;

/** The colonies behind a figure: at most `most` of them, with how many there are. */
export const lossBehind = z.object({
  total: count,
  colonies: z.array(
    z.object({ id: colonyId, label: z.string(), yard: z.string(), origin: originValue, start: dayValue, end: dayValue.nullable(), how: endingValue, causes: z.array(z.string()) }),
  ),
  /** Said where one colony is counted more than once. */
  note: z.string().nullable(),
});
export type LossBehind = z.infer<typeof lossBehind>;

export const lossEnded = z.object({
  yards: z.array(z.object({ code: z.string(), name: z.string() })),
  ended: z.array(z.object({ id: colonyId, label: z.string(), yard: z.string(), day: dayValue, how: endingValue, causes: z.array(z.string()) })),
});
export type LossEnded = z.infer<typeof lossEnded>;

export const lossSectionOperations = {
  'losses.frame': read(z.strictObject({ season: season.optional() }), lossFrame),
  'losses.ledger': read(z.strictObject({ season }), lossLedger),
  /** The colonies that ended in the season, by day. */
  'losses.ended': read(z.strictObject({ season }), lossEnded),
  'losses.rates': read(z.strictObject({ season, united: unitedValue }), lossRates),
  'losses.survival': read(survivalAsked, lossSurvival),
  /** Each pair of groups by itself, with p-values adjusted after Holm. */
  'losses.pairs': read(survivalAsked, lossPairs),
  'losses.behind': read(z.strictObject({ selector: behindSelector, most: count.min(1).max(2000).default(200) }), lossBehind),
} as const;
