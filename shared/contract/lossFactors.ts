import { z } from 'zod';
import { read, write } from './operation.ts';
import { colonyId, dayValue } from './values.ts';

const count = z.number().int();
const pair = z.tuple([z.number(), z.number()]);

const rate = { atRisk: count, lost: count, rate: z.number().nullable(), wilson: pair.nullable() };

/** A group of colonies against all others that have the same on record. */
export const riskGroup = z.object({
  key: z.string(),
  name: z.string(),
  ...rate,
  /** Why it is not compared, in words; null where it is. */
  why: z.string().nullable(),
  restAtRisk: count,
  restLost: count,
  /** Relative risk; `half`: half a colony was put into each cell because one was empty. */
  ratio: z.object({ value: z.number(), range: pair, half: z.boolean() }).nullable(),
  /** Difference of the rates, in shares. */
  difference: z.object({ value: z.number(), range: pair }).nullable(),
  differenceWords: z.string().nullable(),
  p: z.number().nullable(),
  /** True if p comes from chi-square, as there are too many colonies for the exact test. */
  approximate: z.boolean(),
  /** Adjusted after Holm over the whole table. */
  pHolm: z.number().nullable(),
  /** Conditional odds ratio with exact limits, one winter only; null in it: without end. */
  odds: z.object({ value: z.number().nullable(), range: z.tuple([z.number(), z.number().nullable()]) }).nullable(),
});
export type RiskGroup = z.infer<typeof riskGroup>;

export const riskFactor = z.object({
  key: z.string(),
  name: z.string(),
  groups: z.array(riskGroup),
  /** Colonies without this on record; counted, never compared. */
  unknown: z.object({ name: z.string(), ...rate }).nullable(),
});
export type RiskFactor = z.infer<typeof riskFactor>;

export const pooledYard = z.object({ yard: z.string(), name: z.string(), ...rate, pooled: z.number(), range: pair, ratio: z.number() });
export type PooledYard = z.infer<typeof pooledYard>;

export const together = z.object({
  /** Which colonies it is about. */
  heading: z.string(),
  /** One sentence for each thing that was held beside the others. */
  sentences: z.array(z.string()),
  terms: z.array(z.object({ name: z.string(), ratio: z.number().nullable(), range: pair.nullable(), p: z.number().nullable() })),
  colonies: count,
  losses: count,
  /** Colonies left out because something was not recorded. */
  missing: count,
  /** What was left out and why, and how far it can be trusted. */
  notes: z.array(z.string()),
});
export type Together = z.infer<typeof together>;

export const causeShare = z.object({ cause: z.string(), count, of: count, share: z.number(), range: pair });

export const lossFactors = z.object({
  season: count,
  scope: z.enum(['season', 'all']),
  /** The winters that are in the comparison. */
  winters: z.array(z.object({ season: count, name: z.string(), atRisk: count, lost: count })),
  /** Sold, given away or united during the winters, in no count. */
  leftOut: count,
  /** Colonies that went to another yard during a winter; they count where the winter found them. */
  moved: count,
  complete: z.boolean(),
  sentences: z.array(z.string()),
  factors: z.array(riskFactor),
  tests: count,
  yards: z.object({ sentence: z.string(), rows: z.array(pooledYard) }),
  together: z.array(together),
  causes: z.object({
    lost: count,
    sentence: z.string(),
    shares: z.array(causeShare),
    /** Cause by yard, each colony once. */
    byYard: z.object({ causes: z.array(z.string()), rows: z.array(z.object({ yard: z.string(), name: z.string(), counts: z.array(count) })), sentence: z.string(), p: z.number().nullable() }),
  }),
  say: z.array(z.string()),
});
export type LossFactors = z.infer<typeof lossFactors>;

const scope = z.enum(['season', 'all']);

export const lossFactorOperations = {
  /** Without a season: the last one whose winter has begun. */
  'losses.factors': read(z.strictObject({ season: count.optional(), scope }), lossFactors),
  /**
   * The colonies behind a figure: of one group of one factor (`group` null: those without it on record), of one
   * recorded cause (`cause`), or of a class of the causes by yard (`causeByYard`, with its yard).
   */
  'losses.factorGroup': read(
    z.strictObject({ season: count.optional(), scope, factor: z.string().max(40), group: z.string().max(200).nullable(), yard: z.string().max(40).optional() }),
    z.object({ name: z.string(), colonies: z.array(z.object({ id: colonyId, label: z.string(), yard: z.string(), season: count, lost: z.boolean(), day: dayValue.nullable(), causes: z.array(z.string()) })) }),
  ),
  'losses.notes': read(z.strictObject({ season: count }), z.object({ text: z.string(), kept: z.string().nullable(), before: z.object({ season: count, name: z.string(), text: z.string() }).nullable() })),
  'losses.keepNotes': write(z.strictObject({ season: count, text: z.string().max(20_000) }), z.object({ kept: z.string() }), 'a note to oneself is written over as it is typed, and stands beside the journal'),
} as const;
