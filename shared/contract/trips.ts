import { z } from 'zod';
import { roundColumns, roundKinds } from '../roundSheets.ts';
import { read } from './operation.ts';
import { colonyId, dayValue, yardId } from './values.ts';
import { outing, plannedVisit } from './work.ts';

const count = z.number().int();

export const tripTask = z.object({
  key: z.string(),
  what: z.string(),
  reason: z.string(),
  /** Of work, for all who go. */
  minutes: z.number(),
  /** In the order of the yard’s round sheet; colonies whose hives stand empty come last, with the day. `detail`: what its own record says. */
  colonies: z.array(z.object({ id: colonyId, label: z.string(), detail: z.string().nullable(), ended: z.object({ day: dayValue, how: z.enum(['died', 'left']) }).nullable() })),
  /** How many on this day, and of how many; both 0 where it is not about colonies. */
  count,
  of: count,
  /** All that are on the yard’s sheet. */
  whole: z.boolean(),
  /** Whether `colonies` are those of this day; otherwise all that it is about on any day. */
  known: z.boolean(),
  /** How many of the yard’s colonies, whichever they are: `8 of 16 colonies`; null where it is not left open. */
  among: z.string().nullable(),
});
export type TripTask = z.infer<typeof tripTask>;

/** How a yard’s round sheet goes by what is planned there that day. */
export const plannedSheet = z.object({
  kind: z.enum(roundKinds),
  /** The work by the sheet it would have by itself, that of `kind` first. `columns`: those that it needs and the sheet of `kind` does not have here. */
  works: z.array(z.object({ kind: z.enum(roundKinds), what: z.array(z.string()), columns: z.array(z.enum(roundColumns)) })),
});
export type PlannedSheet = z.infer<typeof plannedSheet>;

export const tripStop = plannedVisit.pick({ arrive: true, leave: true }).extend({
  yard: z.object({ id: yardId, code: z.string(), name: z.string() }),
  /** Colonies on its round sheet. */
  standing: count,
  /** Null where nothing of the work belongs on a round sheet. */
  sheet: plannedSheet.nullable(),
  tasks: z.array(tripTask),
});
export type TripStop = z.infer<typeof tripStop>;

export const tripOuting = outing.pick({ leave: true, back: true, driving: true, people: true, weather: true }).extend({
  /** In words, in the order in which it is loaded. */
  load: z.array(z.string()),
  /** What may be wanted, as the look will tell. */
  inCase: z.array(z.string()),
  /** The usual cautions of the work and of what is loaded, each once. */
  cautions: z.array(z.string()),
  stops: z.array(tripStop),
});
export type TripOuting = z.infer<typeof tripOuting>;

export const tripOperations = {
  /** The trips of a day by the plan that is shown, or for a day before it by the plan that held then. `kept`: whether the kept plan has them so. */
  'trip.sheet': read(z.strictObject({ day: dayValue }), z.object({ kept: z.boolean(), outings: z.array(tripOuting) })),
} as const;
