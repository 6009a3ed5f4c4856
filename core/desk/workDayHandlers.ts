import { addDays } from '#shared/days.ts';
import { hoursOn } from '#core/work/hoursOn.ts';
import { moveDays } from '#core/work/moveDays.ts';
import type { Handlers } from './desk.ts';
import { readFreeHours } from './freeHours.ts';
import { planRuns } from './planRun.ts';
import { readChoices, readDistances, readKeptPlan } from './workPapers.ts';

const most = 100;

/** The hours of single days, for what shows a plan against them, and the days to which its visits can go. */
export const workDayHandlers: Handlers<'work.days' | 'work.moveDays'> = {
  'work.days': async ({ from, until }, context) => {
    const { hours } = await readFreeHours(context.open().store);
    const last = addDays(from, most - 1);
    return { days: hoursOn(hours, from, until < last ? until : last) };
  },
  'work.moveDays': async ({ yard, day }, context) => {
    const book = context.open();
    const { store } = book;
    const plan = planRuns.get(store)?.plan ?? (await readKeptPlan(store))?.plan ?? null;
    if (plan === null) return { days: [] };
    const { yardList, rules } = await book.picture();
    const { hours } = await readFreeHours(store);
    const facts = { plan, choices: await readChoices(store), yards: yardList, hours, distances: await readDistances(store), rules, today: await book.today(context.options.now().day) };
    return { days: moveDays(facts, yard, day) };
  },
};
