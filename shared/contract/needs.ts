import { z } from 'zod';
import { read, write } from './operation.ts';
import { sourceWords } from './order.ts';
import { dueItem } from './due.ts';
import { colonyId, dayValue, entryId, nothing, yardId } from './values.ts';

const count = z.number().int();

/** Every rule that can ask for something, in the order in which the rules are listed. */
export const needKeys = [
  ...dueItem.shape.rule.options,
  'mitesOver', 'mitesCount', 'mitesSoon', 'winterBees', 'supersOff', 'storesAutumn', 'storesWinter', 'heft', 'addBox', 'swarmRisk', 'splitBy', 'requeen', 'noEggs',
  'weakAutumn', 'winterList', 'harvest', 'look', 'deadOut', 'renewal', 'orders', 'mend',
] as const;
export type NeedKey = (typeof needKeys)[number];

/** What the weather must allow; `label`: the label of the product says. */
export const needWeathers = ['open', 'quick', 'top', 'label', 'any'] as const;
export type NeedWeather = (typeof needWeathers)[number];

/** coming: its first day is not here yet, and not far off. */
export const needStatuses = ['coming', 'due', 'overdue'] as const;

/** A record behind a need, in words; `entry` is null where the record is not one entry, or an old one. */
export const needRecord = z.object({ day: dayValue, words: z.string(), entry: entryId.nullable() });
export type NeedRecord = z.infer<typeof needRecord>;

/** A house rule that a need rests on. */
export const needSource = z.object({ key: z.string(), label: z.string(), value: z.string(), source: z.string(), confidence: z.enum(sourceWords) });
export type NeedSource = z.infer<typeof needSource>;

/** A thing to take along; `each`: so many for every colony, else so many for the visit. */
export const needItem = z.object({ item: z.string(), count: z.number(), unit: z.string(), each: z.boolean() });
export type NeedItem = z.infer<typeof needItem>;

const colonyName = z.object({ id: colonyId, label: z.string() });
const yardName = z.object({ id: yardId, code: z.string(), name: z.string() });

/** One thing that one colony, or one yard, or the operation needs. */
export const need = z.object({
  /** The same for as long as the same record asks for it; what is put off is kept by it. */
  key: z.string(),
  rule: z.enum(needKeys),
  /** Null where it is about a yard; both null where it is about the operation. */
  colony: colonyName.nullable(),
  yard: yardName.nullable(),
  /** What is to be done, as a beekeeper would say it. */
  act: z.string(),
  /** Why, in words that hold for every colony that needs it for this reason. */
  because: z.string(),
  /** What this colony's own record says. */
  detail: z.string().nullable(),
  records: z.array(needRecord),
  earliest: dayValue,
  latest: dayValue,
  status: z.enum(needStatuses),
  /** Working minutes of one person, by the house rule; the way there is not in them. */
  minutes: z.number(),
  people: count,
  weather: z.enum(needWeathers),
  bring: z.array(needItem),
});
export type Need = z.infer<typeof need>;

const member = need.pick({ key: true, colony: true, yard: true, detail: true, records: true, earliest: true, latest: true, status: true });
export type NeedMember = z.infer<typeof member>;

/** The same act for the same reason, with all that need it. */
export const needLine = need.pick({ rule: true, act: true, because: true, earliest: true, latest: true, status: true, people: true, weather: true }).extend({
  key: z.string(),
  /** In the order of the yards and of the stands; 300 at most, `count` counts them all. */
  members: z.array(member),
  count,
  /** How many of them are past their last day. */
  overdue: count,
  /** How many colonies need it in each yard, and whether that is all that stand there. */
  yards: z.array(yardName.extend({ colonies: count, whole: z.boolean() })),
  minutes: z.number(),
  /** What to take along for all of them. */
  bring: z.array(needItem.omit({ each: true })),
  sources: z.array(needSource),
  /** 1 (can wait) to 5 (a colony may be lost), by the house rule. */
  grave: z.number(),
  points: z.number(),
  /** How the place in the list came about. */
  rank: z.string(),
  /** The usual caution, where the act can hurt someone. */
  caution: z.string().nullable(),
  /** The page where the act is chosen, if there is one. */
  page: z.string().nullable(),
  /** It may be done: in no count of what is to be done. */
  optional: z.boolean(),
});
export type NeedLine = z.infer<typeof needLine>;

/** Something put off to a day, or dismissed where `until` is null. */
export const putOff = z.object({
  keys: z.array(z.string()),
  rule: z.enum(needKeys),
  act: z.string(),
  about: z.string(),
  until: dayValue.nullable(),
  reason: z.string(),
  on: dayValue,
  /** Whether a record still asks for it. */
  asks: z.boolean(),
});
export type PutOff = z.infer<typeof putOff>;

const which = {
  line: z.string().min(1).max(300),
  /** Only what of the line is in this yard. */
  yard: yardId.nullable(),
  /** Only this colony. */
  colony: colonyId.nullable(),
};

export const needOperations = {
  /** The most urgent first. With a yard, only what is needed there. `putOffMost`: the last day until which something may be put off. */
  'needs.list': read(
    z.strictObject({ yard: yardId.nullable().default(null) }),
    z.object({ today: dayValue, lines: z.array(needLine), putOff: z.array(putOff), putOffMost: dayValue, yards: z.array(yardName.extend({ lines: count })) }),
  ),
  /** How many lines of the list are due or overdue, without those that are optional. */
  'needs.count': read(nothing, z.object({ due: count })),
  /** Until a day: it comes back then. Without one it is dismissed, and a reason is asked for. */
  'needs.putOff': write(z.strictObject({ ...which, until: dayValue.nullable(), reason: z.string().trim().max(400) }), z.object({ keys: z.array(z.string()) }), 'ask for it again in the list of what was put off'),
  'needs.askAgain': write(z.strictObject({ keys: z.array(z.string().min(1).max(300)).min(1).max(50_000) }), nothing, 'put it off once more'),
} as const;
