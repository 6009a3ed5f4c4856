import { z } from 'zod';
import { written } from './journal.ts';
import { read, write } from './operation.ts';
import { colonyId, dayValue, entryId, nothing, yardId } from './values.ts';

const count = z.number().int();
/** The most signs that a reason and a note may have. */
export const lotMost = { why: 200, note: 400 } as const;
/** Grams; up to a thousand tons, more than any form lets pass. */
const heaviest = 1_000_000_000;
const mass = z.number().gt(0).max(heaviest);
const water = z.number().min(10).max(40);
const few = z.string().trim().min(1).max(lotMost.why);

/** As long as an entry's text may be: a harvest may name its lot in any words. */
export const lotCode = z.string().trim().min(1).max(4000);
/** Signs of a name that is given to a new lot, so that it fits on a label. */
export const longestNewLot = 40;

export const jarUnits = ['lb', 'oz', 'g', 'kg'] as const;
/** What one jar holds, as it is written on it. */
export const jarSize = z.strictObject({ amount: z.number().gt(0).max(1000), unit: z.enum(jarUnits) });
export type JarSize = z.infer<typeof jarSize>;

/** What happened to a lot on a day; masses in grams, water in per cent. */
export const lotAct = z.discriminatedUnion('what', [
  /** Put together from harvests that no lot has yet, by their entries. */
  z.strictObject({ what: z.literal('made'), harvests: z.array(entryId).min(1).max(2000) }),
  /** Water found; with the refractive index and degrees Celsius where it was read so. */
  z.strictObject({ what: z.literal('water'), water, reading: z.number().nullable(), celsius: z.number().nullable() }),
  /** The whole of it in tanks and pails, on the scale. */
  z.strictObject({ what: z.literal('weighed'), gross: mass, tare: z.number().min(0).max(heaviest) }),
  z.strictObject({ what: z.literal('dried'), to: water }),
  /** Honey of another lot poured into this one. */
  z.strictObject({ what: z.literal('poured'), from: lotCode, mass }),
  z.strictObject({ what: z.literal('filled'), size: jarSize, count: count.min(1).max(100_000), bestBefore: dayValue.nullable() }),
  z.strictObject({ what: z.literal('lost'), mass, why: few }),
]);
export type LotAct = z.infer<typeof lotAct>;

/** An act as the book keeps it. One taken back stays, with its reason, and no longer counts. */
export const lotStep = z.strictObject({ lot: lotCode, day: dayValue, at: z.string().max(40), act: lotAct, back: z.strictObject({ at: z.string().max(40), reason: few }).nullable() });
export type LotStep = z.infer<typeof lotStep>;

export const waterPlaces = ['usdaAB', 'usdaC', 'eu', 'euHeather', 'euBaker', 'euBakerHeather', 'codex', 'codexHeather', 'anz'] as const;
export const waterPlace = z.enum(waterPlaces);

const waterFrom = z.enum(['reading', 'harvests', 'blend', 'drying']).nullable();
const verdict = z.object({ place: waterPlace, label: z.string(), limit: z.number(), within: z.boolean().nullable(), source: z.string(), confidence: z.string() });

/**
 * Grams of everything that came into a lot and left it. Gross less tare of its harvests is what was harvested; that, what
 * was poured in and the difference, less the rest, is what is left over in bulk.
 */
export const lotAccount = z.object({
  gross: z.number(), tare: z.number(),
  harvested: z.number(), pouredIn: z.number(),
  /** What weighings found more (or less, below nought) than the account had. */
  difference: z.number(),
  /** What had come in when it was weighed last; nought where it never was. */
  weighedOf: z.number(),
  dried: z.number(), pouredOut: z.number(), filled: z.number(), lost: z.number(), soldBulk: z.number(), bulk: z.number(),
});
export type LotAccount = z.infer<typeof lotAccount>;

const jars = z.object({ size: jarSize, words: z.string(), filled: count, sold: z.number(), left: z.number(), bestBefore: dayValue.nullable() });

export const lotLine = z.object({
  code: z.string(), from: dayValue.nullable(), until: dayValue.nullable(),
  /** Of its first harvest, or of what came in first. */
  season: count.nullable(), yards: z.array(z.string()), harvests: count, measured: count,
  account: lotAccount, water: z.number().nullable(), waterFrom, within: z.boolean().nullable(), weighed: z.boolean(),
  jars: z.array(jars), troubles: z.array(z.string()),
});
export type LotLine = z.infer<typeof lotLine>;

export const harvestLine = z.object({
  entry: entryId, day: dayValue, yard: yardId.nullable(), yardName: z.string(), colony: colonyId.nullable(), label: z.string().nullable(), gross: z.number(), tare: z.number(), net: z.number(), moisture: z.number().nullable(), via: z.string().nullable(),
});
export type HarvestLine = z.infer<typeof harvestLine>;

const treatmentLine = z.object({
  entry: entryId, day: dayValue, until: dayValue.nullable(), ingredient: z.string(), yard: z.string(),
  whole: z.boolean(), colonies: z.array(z.object({ id: colonyId, label: z.string(), supers: z.string() })),
  /** True if any of them had supers on during it. */
  supersOn: z.boolean(), afterHarvest: z.boolean(),
  /** The first harvest of these colonies on or after its day, and the days from its end (its day where no end is written) to it; below nought while it was still on. */
  harvest: dayValue.nullable(), daysBefore: count.nullable(), sentence: z.string(),
});
export type TreatmentLine = z.infer<typeof treatmentLine>;

const saleLine = z.object({ entry: entryId, day: dayValue, item: z.string(), quantity: z.number().nullable(), price: z.number().nullable() });

const lotEvent = z.object({
  /** Of the step; null for what the journal has. */
  key: z.string().nullable(), entry: entryId.nullable(), day: dayValue, what: z.string(), sentence: z.string(),
  change: z.number(), bulk: z.number(), back: z.string().nullable(),
});

export const lotPage = z.object({
  asOf: dayValue, line: lotLine,
  /** The bulk as it would weigh at the water by which crops are compared; null where its water is not known. */
  atStandard: z.number().nullable(), standard: z.number(), grade: z.string().nullable(), keeps: z.boolean().nullable(), keepsBelow: z.number(), place: waterPlace, limits: z.array(verdict),
  waterSentence: z.string(), limitSentence: z.string(), balanceSentence: z.string(), saleSentence: z.string(),
  events: z.array(lotEvent), harvests: z.array(harvestLine), /** `name` is the label, with what tells apart those of one label. */
  colonies: z.array(z.object({ id: colonyId, label: z.string(), name: z.string(), yard: z.string(), together: z.boolean() })),
  treatments: z.array(treatmentLine), treatmentSentence: z.string(), wentTo: z.array(z.object({ code: z.string(), day: dayValue, mass: z.number() })), cameFrom: z.array(z.object({ code: z.string(), day: dayValue, mass: z.number() })),
  sales: z.array(saleLine), others: z.array(z.string()),
  /** From the day jars are filled to the best before that is proposed. */
  bestBeforeMonths: z.number(),
});
export type LotPage = z.infer<typeof lotPage>;

export const traceFrom = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('colony'), colony: colonyId }),
  z.strictObject({ by: z.literal('yard'), yard: yardId, season: count.nullable() }),
  z.strictObject({ by: z.literal('day'), from: dayValue, until: dayValue }),
  z.strictObject({ by: z.literal('treatment'), entry: entryId }),
]);
export type TraceFrom = z.infer<typeof traceFrom>;

const tracedLot = z.object({
  code: z.string(), via: z.string().nullable(), harvests: z.array(harvestLine), net: z.number(),
  jars: z.array(jars), sales: z.array(saleLine), bulk: z.number(),
});
export type TracedLot = z.infer<typeof tracedLot>;

const kept = z.object({ key: z.string(), sentence: z.string() });

export const lotOperations = {
  /** Every lot, newest first, and the harvests that are in none. */
  'lots.list': read(nothing, z.object({
    asOf: dayValue, lots: z.array(lotLine), seasons: z.array(count), loose: z.array(harvestLine), place: waterPlace, limits: z.array(verdict), limit: z.number(), placeLabel: z.string(), salesWithout: count, sentence: z.string(), nextCode: z.string(),
  })),
  'lots.page': read(z.strictObject({ lot: lotCode }), lotPage),
  /** From a colony, yard, days or a treatment forward to lots, jars and sales. */
  'lots.trace': read(z.strictObject({ from: traceFrom }), z.object({ sentence: z.string(), harvests: count, lots: z.array(tracedLot), loose: z.array(harvestLine) })),
  /** Colonies and treatments to trace from. */
  'lots.traceable': read(nothing, z.object({ colonies: z.array(z.object({ id: colonyId, label: z.string(), name: z.string() })), treatments: z.array(z.object({ entry: entryId, words: z.string() })), seasons: z.array(count) })),
  /** Per cent water of a refractometer's reading. */
  'lots.water': read(z.strictObject({ reading: z.number(), celsius: z.number() }), z.object({ water: z.number(), sentence: z.string() })),
  /** How much of a drier lot brings this one to a target, by the Pearson square. */
  'lots.blend': read(z.strictObject({ lot: lotCode, dry: lotCode, target: water }), z.object({ mass, enough: z.boolean(), sentence: z.string() })),
  'lots.keep': write(z.strictObject({ lot: lotCode, day: dayValue, act: lotAct }), kept, 'Taken back on the lot’s own page, with a reason; what was kept stays to be seen.'),
  'lots.takeBack': write(z.strictObject({ key: z.string().min(1).max(60), reason: few }), kept, 'What was taken back can be kept anew.'),
  'lots.sell': write(z.strictObject({ lot: lotCode, day: dayValue, size: jarSize.nullable(), quantity: z.number().gt(0).max(1_000_000), price: z.number().int().min(0).nullable(), note: z.string().trim().max(lotMost.note) }), written, true),
  /** Whose limit is asked first. */
  'lots.choosePlace': write(z.strictObject({ place: waterPlace }), kept, 'Another place can be chosen.'),
} as const;
