import type { WorkPlan } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { tripSheet } from '#core/work/tripSheet.ts';
import { workTasks } from '#core/work/workTasks.ts';
import type { Handlers } from './desk.ts';
import { planOfDay } from './planOfDay.ts';
import { roundSettingOf } from './roundSettingOf.ts';
import { workFactsOf } from './workFactsOf.ts';

export const tripHandlers: Handlers<'trip.sheet'> = {
  'trip.sheet': async ({ day }, context) => {
    const { plan, kept } = await planOfDay(context, day);
    if (plan === null || !plan.outings.some((outing) => outing.day === day)) return { kept: true, outings: [] };
    const facts = await workFactsOf(context);
    const { stands } = await context.open().picture();
    const outings = tripSheet({ ...facts, plan, tasks: workTasks(facts).tasks, stands }, day);
    return {
      kept: kept !== null && tripText(kept, day) === tripText(plan, day),
      outings: await Promise.all(outings.map(async (outing) => ({
        ...outing, stops: await Promise.all(outing.stops.map(async (stop) => ({ ...stop, sheet: (await roundSettingOf(context, stop.yard.id, day)).planned }))),
      }))),
    };
  },
};

/** Which yards are gone to that day, and what for. */
function tripText({ outings }: WorkPlan, day: Day): string {
  return JSON.stringify(outings.filter((outing) => outing.day === day).map(({ visits }) => visits.map(({ yard, tasks }) => [yard, tasks.map(({ key, colonies }) => [key, colonies])])));
}
