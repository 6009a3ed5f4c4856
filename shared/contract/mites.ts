import { z } from 'zod';
import { read } from './operation.ts';
import { colonyId, dayValue, entryId, nothing, yardId } from './values.ts';

const count = z.number().int();
/** Mites in 100 bees with the 95 % limits. */
const per100 = z.object({ per100: z.number(), limits: z.tuple([z.number(), z.number()]) });
const named = z.object({ id: colonyId, label: z.string() });
export const broodWords = ['yes', 'no', 'not known'] as const;
const brood = z.enum(broodWords);
const given = z.object({ ingredient: z.string(), from: dayValue, until: dayValue, entry: entryId });

export const mitesYard = z.object({
  id: yardId,
  code: z.string(),
  name: z.string(),
  living: count,
  /** Living colonies that were ever counted. */
  counted: count,
  brood,
  watch: z.number(),
  treat: z.number(),
  phase: z.string(),
  /** House rule that the threshold comes from. */
  rule: z.string(),
  speaks: z.enum(['now', 'old', 'treated', 'never']),
  round: z.tuple([dayValue, dayValue]).nullable(),
  treatedSince: given.nullable(),
  /** Colonies in the figure. */
  washed: count,
  rate: per100.nullable(),
  basis: z.enum(['colonies', 'one colony', 'no mite', 'none']),
  few: z.boolean(),
  above: z.number().nullable(),
  verdict: z.enum(['above', 'below', 'open', 'none']),
  more: count,
  hot: z.array(named.extend({ above: z.number(), rate: per100 })),
  projection: z.object({ reached: z.boolean(), expected: dayValue.nullable(), earliest: dayValue.nullable(), latest: dayValue.nullable() }).nullable(),
});
export type MitesYard = z.infer<typeof mitesYard>;

export const mitesColony = named.extend({ day: dayValue, mites: count, bees: count, rate: per100, above: z.number(), inRound: z.boolean(), treatedSince: given.nullable() });
export type MitesColony = z.infer<typeof mitesColony>;

export const mitesDetail = z.object({
  asOf: dayValue,
  season: z.object({ from: dayValue, until: dayValue, name: z.string() }),
  /** The last count of each colony alive there, the highest first. */
  colonies: z.array(mitesColony),
  /** Alive there and never counted. */
  uncounted: z.array(named),
  /** Every count of the season of a colony that then stood there. */
  counts: z.array(named.extend({ day: dayValue, mites: count, bees: count, rate: per100 })),
  treatments: z.array(z.object({ ingredient: z.string(), from: dayValue, until: dayValue, colonies: count, whole: z.boolean() })),
  /** The threshold from each day of the season on. */
  thresholds: z.array(z.object({ from: dayValue, until: dayValue, treat: z.number() })),
});
export type MitesDetail = z.infer<typeof mitesDetail>;

export const fitValue = z.enum(['fits', 'does not fit', 'not known']);
export const treatmentFit = z.object({
  form: z.string(),
  name: z.string(),
  ingredient: z.string(),
  fits: fitValue,
  cells: z.array(z.object({ about: z.enum(['temperature', 'supers', 'brood', 'flow', 'rotation']), fits: fitValue, reason: z.string() })),
});
export type TreatmentFitView = z.infer<typeof treatmentFit>;

export const mitesFits = z.object({
  asOf: dayValue,
  /** What is so, and whether the record says it or the person. */
  setting: z.object({
    high: z.number(),
    usualHigh: z.number(),
    withSupers: count.nullable(),
    recordSupers: count,
    brood,
    recordBrood: brood,
    nextFlow: dayValue,
    lastUsed: z.object({ ingredient: z.string(), day: dayValue }).nullable(),
  }),
  fits: z.array(treatmentFit),
  cautions: z.array(z.string()),
});
export type MitesFits = z.infer<typeof mitesFits>;

/** Shares of the mites: 1 is all of them; the lower limit is null where nothing holds it. */
const fall = z.object({
  colonies: count,
  before: z.number().nullable(),
  after: z.number().nullable(),
  fall: z.number().nullable(),
  limits: z.tuple([z.number().nullable(), z.number()]).nullable(),
  basis: z.enum(['none', 'no mite before', 'counts', 'colonies', 'corrected']),
  controls: count,
  few: z.boolean(),
});
export type FallView = z.infer<typeof fall>;

export const treatmentRow = z.object({
  entries: z.array(entryId),
  yard: z.string(),
  ingredient: z.string(),
  season: count,
  from: dayValue,
  until: dayValue,
  ended: z.boolean(),
  whole: z.boolean(),
  treated: count,
  /** By name where single colonies were treated. */
  labels: z.array(z.string()),
  /** Treated colonies that had honey supers on that day. */
  withSupers: count,
  during: z.boolean(),
  result: fall,
  notes: z.array(z.string()),
});
export type TreatmentRow = z.infer<typeof treatmentRow>;

export const treatmentLog = z.object({
  asOf: dayValue,
  season: count,
  seasonName: z.string(),
  seasons: z.array(z.object({ season: count, name: z.string() })),
  rows: z.array(treatmentRow),
  /** Mites counted in the season, by yard: colonies and counts. */
  counted: z.array(z.object({ yard: z.string(), colonies: count, counts: count })),
});
export type TreatmentLog = z.infer<typeof treatmentLog>;

export const treatmentResults = z.object({
  asOf: dayValue,
  /** Newest first; those of the last seasons. */
  rows: z.array(treatmentRow),
  /** By active ingredient over all seasons, from counts after the treatments' last days. */
  ingredients: z.array(z.object({ ingredient: z.string(), treatments: count, judged: count, result: fall, seasons: z.array(z.object({ season: count, name: z.string(), result: fall })) })),
});
export type TreatmentResults = z.infer<typeof treatmentResults>;

export const miteOperations = {
  'mites.page': read(nothing, z.object({ asOf: dayValue, yards: z.array(mitesYard) })),
  'mites.yard': read(z.strictObject({ id: yardId }), mitesDetail),
  /** What fits in a yard now; what is left null is taken from the record and the house rules. Temperature in °F. */
  'mites.fits': read(
    z.strictObject({ yard: yardId, high: z.number().min(-60).max(130).nullable(), supers: z.enum(['on', 'off']).nullable(), brood: brood.nullable() }),
    mitesFits,
  ),
  'mites.results': read(nothing, treatmentResults),
  /** A season's treatments as an inspector asks for them; without a season, that of the day. */
  'mites.log': read(z.strictObject({ season: count.min(1900).max(9998).optional() }), treatmentLog),
} as const;
