import { z } from 'zod';
import { read } from './operation.ts';
import { dayValue } from './values.ts';

export const workDay = z.object({
  day: dayValue,
  /** Person-minutes that there are, taken time left out, driving included; only stretches that reach into daylight count, and of those who do not go alone only what another is there for. */
  have: z.number(),
  /** Person-minutes of everybody, daylight or not, as work at home can use them. */
  all: z.number(),
  /** Somebody has hours, but all of them are in the dark. */
  dark: z.boolean(),
  /** Somebody has hours, but nobody of them goes alone. */
  unled: z.boolean(),
});
export type WorkDay = z.infer<typeof workDay>;

export const workDayOperations = {
  /** What hours each day has, at most a hundred days. */
  'work.days': read(z.strictObject({ from: dayValue, until: dayValue }), z.object({ days: z.array(workDay) })),
} as const;
