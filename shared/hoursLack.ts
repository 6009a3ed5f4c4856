import type { WorkDay } from './contract/workDays.ts';

/** Why nobody can go to the bees: no hours at all, only hours of people who do not go alone, or only in the dark. */
export type HoursLack = 'nobody' | 'unled' | 'dark';

/** Why nobody can go out on any of some days; null where somebody can on one of them, or where there are no days. */
export function hoursLack(days: readonly WorkDay[]): HoursLack | null {
  if (days.length === 0 || days.some(({ have }) => have > 0)) return null;
  return days.some(({ dark }) => dark) ? 'dark' : days.some(({ unled }) => unled) ? 'unled' : 'nobody';
}
