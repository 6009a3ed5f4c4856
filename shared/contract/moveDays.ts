import { z } from 'zod';
import { read } from './operation.ts';
import { dayValue, yardId } from './values.ts';

export const moveDay = z.object({
  day: dayValue,
  /** Person-minutes of work that an outing there, to all that are named, has room for. */
  room: z.number(),
  /** Of them, what is planned on that day already; of that, what stays there whatever else goes, because it is held or in the same yard; and what the visit brings along: its round as long as it is on that day, and not twice where it is made there anyway. */
  taken: z.number(),
  kept: z.number(),
  work: z.number(),
  /** The yards planned for that day, its own too where it is gone to on both; `together`: one outing can lead to all of them, else those that are not held go elsewhere. */
  beside: z.array(yardId),
  together: z.boolean(),
  /** Of those beside, what would go elsewhere. */
  elsewhere: z.array(yardId),
  /** It was said that the yard is not to be gone to, or work of the visit not to be done, on that day; carrying the visit there lets go of that. */
  forbidden: z.boolean(),
});
export type MoveDay = z.infer<typeof moveDay>;

export const moveDayOperations = {
  /** The days of the plan that is shown to which the visit of a yard on a day can be carried, the soonest first; none without a plan. */
  'work.moveDays': read(z.strictObject({ yard: yardId, day: dayValue }), z.object({ days: z.array(moveDay) })),
} as const;
