import { z } from 'zod';
import { read } from './operation.ts';
import { dayValue } from './values.ts';

export const workDay = z.object({
  day: dayValue,
  /** Person-minutes that there are, taken time left out, driving included; only stretches that reach into daylight count. */
  have: z.number(),
  /** Somebody has hours, but all of them are in the dark. */
  dark: z.boolean(),
});
export type WorkDay = z.infer<typeof workDay>;

export const workDayOperations = {
  /** What hours each day has, at most a hundred days. */
  'work.days': read(z.strictObject({ from: dayValue, until: dayValue }), z.object({ days: z.array(workDay) })),
} as const;
