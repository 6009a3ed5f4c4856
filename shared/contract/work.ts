import { z } from 'zod';
import { sourceWords } from './order.ts';
import { read, write } from './operation.ts';
import { colonyId, dayValue, nothing, yardId } from './values.ts';

const count = z.number().int();
const minutes = z.number().min(0);
/** Minutes of the day by the clock, 0 is midnight. */
const clock = count.min(0).max(1440);
const person = z.string().trim().min(1).max(40);
const key = z.string().min(1).max(120);

export const taskSources = ['due', 'round', 'season', 'delivery', 'order', 'own'] as const;
/** any: rain or wind do not matter. dry: no rain. flying: dry, calm, and warm enough for bees to fly and hives to be opened. */
export const weatherNeeds = ['any', 'dry', 'flying'] as const;

/** How the minutes of a task were worked out. */
export const minutesReason = z.object({
  /** House rule: fixed once there, and for each colony. */
  setUp: minutes,
  each: minutes,
  /** The person’s own recorded visits that the rule was corrected by, and the factor (1: as the rule says). */
  recorded: count,
  factor: z.number(),
  /** One sentence: where it comes from. */
  says: z.string(),
});
export type MinutesReason = z.infer<typeof minutesReason>;

export const workTask = z.object({
  /** The same task has the same key as long as its cause stands. */
  key: z.string(),
  source: z.enum(taskSources),
  /** Short: “Look for swarm cells”. */
  what: z.string(),
  /** The record or rule it follows from, in words. */
  reason: z.string(),
  /** Null: at home. */
  yard: yardId.nullable(),
  /** Empty where it is about the yard, or about home. */
  colonies: z.array(z.object({ id: colonyId, label: z.string() })),
  earliest: dayValue,
  latest: dayValue,
  /** Past its last day already when the plan is made. */
  overdue: z.boolean(),
  /** From 1 to 5, by the house rules: what comes late or is left, where not everything fits, is the least grave. */
  grave: z.number(),
  /** Work at the hives of one person, all colonies together; no driving. */
  minutes,
  minutesReason,
  people: count.min(1),
  weather: z.enum(weatherNeeds),
  bring: z.array(z.object({ item: z.string(), count: z.number() })),
  /** Comes so many days after another task, whenever that is done. */
  after: z.object({ key: z.string(), from: count, by: count }).nullable(),
  sources: z.array(z.object({ label: z.string(), value: z.union([z.number(), z.string()]), source: z.string(), confidence: z.enum(sourceWords) })),
});
export type WorkTask = z.infer<typeof workTask>;

/** A stretch of a day in which somebody can work, driving included; null: none. */
export const workSlot = z.object({ from: clock, until: clock }).refine(({ from, until }) => from < until, 'it ends before it begins');
export type WorkSlot = z.infer<typeof workSlot>;

export const worker = z.strictObject({
  name: person,
  /** Monday to Sunday. */
  week: z.array(workSlot.nullable()).length(7),
  /** May go to the bees without the others. */
  alone: z.boolean(),
  /** Days that are not as the week says: another slot, or none. */
  exceptions: z.array(z.strictObject({ day: dayValue, slot: workSlot.nullable() })).max(400),
});
export type Worker = z.infer<typeof worker>;

export const workPlace = z.strictObject({
  /** Degrees, north and east positive. */
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  /** IANA name, as “America/Chicago”; clock changes follow from it. */
  zone: z.string().min(1).max(60),
});
export type WorkPlace = z.infer<typeof workPlace>;

export const workHours = z.strictObject({ people: z.array(worker).min(1).max(8), place: workPlace });
export type WorkHours = z.infer<typeof workHours>;

/** Minutes of driving between two yards, either way. */
export const yardDistance = z.strictObject({ a: yardId, b: yardId, minutes: z.number().min(0).max(600) });
export type YardDistance = z.infer<typeof yardDistance>;

export const ownTaskBody = z.strictObject({
  what: z.string().trim().min(1).max(120),
  yard: yardId.nullable(),
  colonies: z.array(colonyId).max(500),
  earliest: dayValue,
  latest: dayValue,
  minutes: z.number().min(1).max(6000),
  people: count.min(1).max(8),
  weather: z.enum(weatherNeeds),
  bring: z.array(z.strictObject({ item: z.string().trim().min(1).max(80), count: z.number().min(0).max(10_000) })).max(40),
  /** RFC 5545 rule without DTSTART, as “FREQ=WEEKLY;INTERVAL=2”, counted from `earliest`; each time has as many days as the first. Null: once. */
  repeat: z.string().trim().max(200).nullable(),
  note: z.string().trim().max(400).nullable(),
});
export type OwnTaskBody = z.infer<typeof ownTaskBody>;

export const ownTask = ownTaskBody.extend({
  key: z.string(),
  /** Days on which a time of it was done or called off; each is the first day of that time. */
  settled: z.array(z.object({ day: dayValue, how: z.enum(['done', 'struck']) })),
});
export type OwnTask = z.infer<typeof ownTask>;

/**
 * What the plan has to keep to. pin: this visit, or this task, on that day. forbid: not on that day. lock: a visit that
 * was promised; the plan goes round it. drop: this task is left out. A visit is a yard on a day; `task` narrows it to one.
 */
export const planChoice = z.object({
  key: z.string(),
  kind: z.enum(['pin', 'forbid', 'lock', 'drop']),
  day: dayValue.nullable(),
  yard: yardId.nullable(),
  task: z.string().nullable(),
});
export type PlanChoice = z.infer<typeof planChoice>;

export const plannedTask = z.object({
  key: z.string(),
  what: z.string(),
  /** How many of its colonies on this day, and of how many; both 0 where it is not about colonies. */
  colonies: count,
  of: count,
  minutes,
  people: count,
  /** Days past its last day; 0 in time. */
  late: count,
  /** Of a round that follows another: the last day of its own. Null: that of its task. */
  by: dayValue.nullable().default(null),
});
export type PlannedTask = z.infer<typeof plannedTask>;

export const plannedVisit = z.object({
  yard: yardId,
  arrive: clock,
  leave: clock,
  tasks: z.array(plannedTask),
  /** The choice that holds it. */
  held: z.enum(['pin', 'lock']).nullable(),
  /** Against the plan that was kept: new, on the same day as there, or null without such a plan. */
  change: z.enum(['same', 'new']).nullable(),
});
export type PlannedVisit = z.infer<typeof plannedVisit>;

/** One time out, from home to home: the yards in the order they are driven. */
export const outing = z.object({
  day: dayValue,
  people: z.array(z.string()),
  leave: clock,
  back: clock,
  /** Of the truck. */
  driving: minutes,
  /** Working minutes of all people together: planned, and that there are. */
  working: minutes,
  room: minutes,
  visits: z.array(plannedVisit),
  bring: z.array(z.object({ item: z.string(), count: z.number() })),
  weather: z.enum(weatherNeeds),
});
export type Outing = z.infer<typeof outing>;

/** A task that the plan cannot do, or not in time, and what would mend it. */
export const plannedTrouble = z.object({
  key: z.string(),
  what: z.string(),
  yard: yardId.nullable(),
  kind: z.enum(['left', 'late']),
  /** Days late; 0 where it is left. */
  late: count,
  /** Minutes of it that find no place. */
  minutes,
  reason: z.string(),
  mend: z.string().nullable(),
});
export type PlannedTrouble = z.infer<typeof plannedTrouble>;

export const weekLoad = z.object({
  /** Its first day; the last week may be cut short. */
  from: dayValue,
  /** Person-minutes that there are by daylight and hours, that the plan is out (driving included), and that are worked. */
  have: minutes,
  out: minutes,
  working: minutes,
});
export type WeekLoad = z.infer<typeof weekLoad>;

export const workPlan = z.object({
  from: dayValue,
  until: dayValue,
  outings: z.array(outing),
  /** Tasks at home, each on a day. */
  home: z.array(z.object({ day: dayValue, task: plannedTask })),
  troubles: z.array(plannedTrouble),
  weeks: z.array(weekLoad),
  /** Minutes of driving in it, and with each task on its earliest free day. */
  driving: minutes,
  naive: minutes,
  /** The least share by which a better plan could be better, at most: 0 is proven best; null: not known yet. */
  gap: z.number().nullable(),
  /** Visits that the kept plan has too, and that it has otherwise; null without one. */
  changes: z.object({ same: count, moved: count, visits: count }).nullable(),
  /** Words about what the plan could not know: yards without minutes, no hours, no daylight. */
  remarks: z.array(z.string()),
});
export type WorkPlan = z.infer<typeof workPlan>;

export const keptWorkPlan = z.object({ made: z.string(), plan: workPlan });

/** A plan that is being worked out beside everything else. */
export const planProgress = z.object({
  state: z.enum(['none', 'running', 'done', 'stopped', 'failed']),
  /** The best so far; null in state `none`. */
  plan: workPlan.nullable(),
  /** Since the start. */
  seconds: z.number(),
  /** One sentence on where it stands. */
  says: z.string(),
});
export type PlanProgress = z.infer<typeof planProgress>;

export const workOperations = {
  /** All tasks that lie in the next eight weeks or are overdue, soonest last day first. */
  'work.tasks': read(nothing, z.object({ today: dayValue, until: dayValue, tasks: z.array(workTask), remarks: z.array(z.string()) })),
  /** `own`: false while nobody has written hours down, and the house pattern is taken. Daylight is of the next 8 weeks’ first days. */
  'work.hours': read(nothing, z.object({ hours: workHours, own: z.boolean(), daylight: z.array(z.object({ day: dayValue, sunrise: clock, sunset: clock })) })),
  'work.setHours': write(workHours, z.object({ hours: workHours }), 'set them again as they were'),
  /** `known` as written down; `estimated` through home, or along the known ones, for the rest, in minutes. */
  'work.distances': read(nothing, z.object({ known: z.array(yardDistance), estimated: z.array(yardDistance), without: z.array(yardId) })),
  /** Null takes it away, and the estimate is taken again. */
  'work.setDistance': write(z.strictObject({ a: yardId, b: yardId, minutes: z.number().min(0).max(600).nullable() }), nothing, 'set it again as it was'),
  'work.ownTasks': read(nothing, z.object({ tasks: z.array(ownTask) })),
  /** Without a key a new one is made. */
  'work.setTask': write(z.strictObject({ key: key.nullable(), task: ownTaskBody }), z.object({ task: ownTask }), 'set it again as it was'),
  /** One time of it (`day`, its first day) done or called off, or with null all of it taken away. */
  'work.settleTask': write(z.strictObject({ key, day: dayValue.nullable(), how: z.enum(['done', 'struck']) }), nothing, 'bring the task back as it was'),
  /** A task as it was before one of its times was settled, or before it was taken away. */
  'work.taskBack': write(z.strictObject({ task: ownTask }), nothing, 'settle it again'),
  /** The plan that was kept (what was promised) and what holds it. Whether what it was made from has changed since, in words; `foundStale`: the same of the plan worked out last. */
  'work.plan': read(nothing, z.object({ kept: keptWorkPlan.nullable(), choices: z.array(planChoice), stale: z.string().nullable(), foundStale: z.string().nullable() })),
  /** Works a plan out from the record as it is: answers with a good one at once, and a better one is sought beside everything else. */
  'work.replan': write(nothing, planProgress, 'nothing is kept by it'),
  /** How far that has come. */
  'work.progress': read(nothing, planProgress),
  /** Stops the search; what was found so far stays. */
  'work.stop': write(nothing, planProgress, 'nothing is kept by it'),
  /** Keeps the best plan found as the one that was promised. */
  'work.keepPlan': write(nothing, keptWorkPlan, 'keep another'),
} as const;
