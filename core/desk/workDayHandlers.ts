import { addDays } from '#shared/days.ts';
import { hoursOn } from '#core/work/hoursOn.ts';
import type { Handlers } from './desk.ts';
import { readFreeHours } from './freeHours.ts';

const most = 100;

/** The hours of single days, for what shows a plan against them. */
export const workDayHandlers: Handlers<'work.days'> = {
  'work.days': async ({ from, until }, context) => {
    const { hours } = await readFreeHours(context.open().store);
    const last = addDays(from, most - 1);
    return { days: hoursOn(hours, from, until < last ? until : last) };
  },
};
