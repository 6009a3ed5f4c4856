import { z } from 'zod';
import { paidPrice } from './offers.ts';
import { read, write } from './operation.ts';
import { dayValue, nothing, unitedValue, yardId } from './values.ts';

const count = z.number().int();
const money = z.number();
const share = z.number().min(0).max(1);

/** The person's own expectation of the loss, for all or for one yard, with the reason it was given. */
export const survivalView = z.strictObject({
  /** Null for all colonies. */
  yard: yardId.nullable(),
  rate: z.number().gt(0).lt(1),
  reason: z.string().trim().min(3).max(300),
  day: dayValue,
});
export type SurvivalView = z.infer<typeof survivalView>;

/** What is asked; what is left out is taken from the house rules. Money in minor units. */
export const orderQuestion = z.strictObject({
  target: count.min(0).max(20_000).optional(),
  confidence: z.number().min(0.5).max(0.99).optional(),
  hiveFrames: z.union([z.literal(8), z.literal(10)]).default(10),
  united: unitedValue.default('lost'),
  splits: z.boolean().default(true),
  splitQueens: z.enum(['bought', 'raised']).default('raised'),
  /** Old queens to replace in spring. */
  requeen: count.min(0).max(20_000).default(0),
  budget: count.min(0).nullable().default(null),
  /** Null sets no limit; absent: the house rule. */
  hours: z.number().min(0).max(100_000).nullable().optional(),
  /** What if the loss were this; goes before what is kept. */
  lossRate: z.number().min(0.01).max(0.99).optional(),
  /** What if bees cost so many times as much. */
  priceFactor: z.number().min(0.1).max(10).default(1),
});
export type DecisionQuestion = z.infer<typeof orderQuestion>;

export const plannedWare = z.object({
  offer: z.string(),
  /** Null where no offer is kept and the price is assumed. */
  seller: z.string().nullable(),
  kind: z.enum(['package', 'nuc', 'queen', 'colony']),
  words: z.string(),
  quantity: count,
  each: money,
  total: money,
  /** To be paid when ordering; null where the seller asks none. */
  deposit: money.nullable(),
  orderBy: dayValue,
  delivery: z.tuple([dayValue.nullable(), dayValue.nullable()]),
  reason: z.string(),
});
export type PlannedWare = z.infer<typeof plannedWare>;

export const plannedPart = z.object({
  item: z.string(),
  need: count,
  onHives: count,
  fromDeadOuts: count,
  /** Free in the shed, and free in a yard. */
  shed: count,
  yards: count.default(0),
  /** Ordered already and not come yet. */
  onOrder: count.default(0),
  have: count,
  /** Waiting to be mended, and of the dead-outs’ pieces those that are not sound; not counted as there. */
  toMend: count.default(0),
  /** Pieces short, before packs. */
  order: count,
  packs: z.array(z.object({ offer: z.string(), seller: z.string(), packSize: count, packs: count, each: money, total: money, orderBy: dayValue })),
  /** Short and on nobody's offer. */
  notOffered: count,
  reason: z.string(),
});
export type PlannedPart = z.infer<typeof plannedPart>;

export const orderAnswer = z.object({
  bees: z.array(plannedWare),
  equipment: z.array(plannedPart),
  /** How many supers a hive is given, and why; null in plans kept before it was said. */
  supers: z.string().nullable().default(null),
  bought: count,
  splits: count,
  splitsByYard: z.array(z.object({ yard: z.string(), count })),
  /** Where bought colonies would stand, and what moves between yards, in a middling spring. */
  placed: z.array(z.object({ yard: z.string(), count })),
  moves: z.array(z.object({ yard: z.string(), out: count, into: count })),
  queensForSplits: count,
  queensForOld: count,
  packagesOnComb: count,
  hours: z.number(),
  cash: money,
  deposit: money,
  costs: z.object({ bees: money, queens: money, equipment: money, work: money, honey: money, missing: money, surplus: money }),
  total: money,
  expectedMissing: z.number(),
  expectedSurplus: z.number(),
  /** Splits made on average: none where enough live without them. Null in plans kept before it was reckoned. */
  expectedSplits: z.number().nullable().default(null),
  chanceShort: share,
  /** Standard error of that chance from the drawn springs. */
  samplingError: z.number(),
  /** From the forecast itself; null where a yard was adjusted by hand. */
  chanceShortExact: share.nullable(),
  solver: z.object({ name: z.string(), status: z.literal('optimal'), gap: z.number(), variables: count, rows: count, springs: count }),
});
export type OrderAnswer = z.infer<typeof orderAnswer>;

export const yardOutlook = z.object({
  yard: yardId,
  code: z.string(),
  name: z.string(),
  room: count.nullable(),
  living: count,
  winters: count,
  atRisk: count,
  lost: count,
  /** Losses against those of all yards in the same winters, pulled towards 1; 95 % limits. */
  ratio: z.number(),
  ratioLimits: z.tuple([z.number(), z.number()]),
  shrinkage: z.number(),
  mean: z.number(),
  low: count,
  high: count,
  adjusted: z.object({ rate: z.number(), reason: z.string() }).nullable(),
});

export const orderDecision = z.object({
  asOf: dayValue,
  spring: dayValue,
  targetDay: dayValue,
  living: count,
  target: count,
  confidence: z.number(),
  question: orderQuestion,
  forecast: z.object({
    /** Past winters, each from the day of the year that is looked at on. */
    winters: z.array(z.object({ season: count, from: dayValue, atRisk: count, lost: count })),
    /** Expected loss and where it comes from. */
    rate: share,
    from: z.string(),
    mean: z.number(),
    low: count,
    high: count,
    chances: z.array(z.object({ survivors: count, chance: z.number() })),
    adjusted: z.object({ rate: z.number(), reason: z.string() }).nullable(),
  }),
  yards: z.array(yardOutlook),
  oldQueens: z.object({ count, sentence: z.string() }),
  outcome: z.enum(['order', 'nothing', 'impossible']),
  /** The cheapest order; where none keeps all limits, the one for the highest target that can be reached, or null. */
  answer: orderAnswer.nullable(),
  /** The target that the answer is for. */
  reached: count.nullable(),
  limits: z.array(z.object({ limit: z.enum(['room', 'budget', 'hours', 'deadlines', 'supply', 'splits', 'queens']), sentence: z.string() })),
  leftOut: z.array(z.object({ offer: z.string(), sentence: z.string() })),
  stockTrouble: z.array(z.object({ item: z.string(), place: z.string(), count: z.number(), day: dayValue, entry: z.number().int(), sentence: z.string() })),
  sentences: z.array(z.string()),
  /** Colonies and queens that were ordered and have not come; they are counted as coming. */
  onOrder: z.object({ colonies: count, queens: count }).default({ colonies: 0, queens: 0 }),
  cautions: z.array(z.string()),
});
export type OrderDecision = z.infer<typeof orderDecision>;

export const curvePoint = z.object({ confidence: z.number(), target: count, total: money.nullable(), cash: money.nullable(), bought: count.nullable(), splits: count.nullable() });

const sourceRow = z.object({
  kind: z.enum(['package', 'nuc']),
  price: z.object({ each: money, from: z.string() }).nullable(),
  honey: z.object({ grams: z.number(), low: z.number().nullable(), high: z.number().nullable(), colonies: count, seasons: count, own: z.boolean(), source: z.string(), confidence: z.string() }),
  /** Bought ones that still lived on the day the winter began. */
  lived: z.object({ alive: count, of: count, low: z.number(), high: z.number() }).nullable(),
  combs: count,
  minutes: z.number(),
  /** Price and work less the honey of the first year; minor units. */
  firstYear: money.nullable(),
});

export const keptPlan = z.object({
  key: z.string(),
  day: dayValue,
  note: z.string().nullable(),
  decision: orderDecision,
});

export type KeptPlan = z.infer<typeof keptPlan>;

/** One line of a kept plan against what happened; `over` once it can be judged. */
export const planLine = z.object({
  what: z.enum(['survivors', 'colonies', 'bought', 'splits', 'money']),
  planned: z.string(),
  /** Null where it cannot be known yet. */
  happened: z.string().nullable(),
  over: z.boolean(),
  /** Whether it came as planned; null until it can be judged. */
  held: z.boolean().nullable(),
  sentence: z.string(),
});
export type PlanLine = z.infer<typeof planLine>;

export const planReview = z.object({
  key: z.string(),
  day: dayValue,
  spring: dayValue,
  note: z.string().nullable(),
  target: count,
  confidence: z.number(),
  living: count,
  low: count,
  high: count,
  mean: z.number(),
  bought: count.nullable(),
  splits: count.nullable(),
  total: money.nullable(),
  /** Of those living on the day of the plan, alive as the spring began; null until then. */
  survivors: count.nullable(),
  inside: z.boolean().nullable(),
  /** Colonies alive on the target day; null until then. */
  onTargetDay: count.nullable(),
  sentence: z.string(),
  lines: z.array(planLine),
});

/** How the forecasts of kept plans have held, spring by spring, oldest first; of several plans for a spring the last. */
const calibration = z.object({
  over: count,
  inside: count,
  /** 95 % limits of the share inside; null without a spring. */
  limits: z.tuple([z.number(), z.number()]).nullable(),
  sentence: z.string(),
  springs: z.array(z.object({ spring: dayValue, living: count, low: count, high: count, survivors: count, inside: z.boolean(), runningInside: count, runningOver: count })),
});

export const decisionOperations = {
  'order.decide': read(orderQuestion, orderDecision),
  'order.curves': read(orderQuestion, z.object({ byConfidence: z.array(curvePoint), byTarget: z.array(curvePoint) })),
  'order.compare': read(nothing, z.object({ rows: z.array(sourceRow), paid: z.array(paidPrice), sentences: z.array(z.string()) })),
  'survival.views': read(nothing, z.object({ views: z.array(survivalView) })),
  /** One for all and one for each yard; a later one takes the place of the earlier. */
  'survival.keep': write(survivalView.omit({ day: true }), z.object({ views: z.array(survivalView) }), 'drop it, or keep another'),
  'survival.drop': write(z.strictObject({ yard: yardId.nullable() }), z.object({ views: z.array(survivalView) }), 'keep it again'),
  'plans.keep': write(z.strictObject({ question: orderQuestion, note: z.string().max(400).nullable() }), z.object({ key: z.string() }), 'a plan is kept as it was made; keep another'),
  'plans.list': read(nothing, z.object({ plans: z.array(planReview), tally: calibration })),
  'plans.read': read(z.strictObject({ key: z.string() }), keptPlan),
} as const;
