import type { Outing } from '#shared/contract/work.ts';
import type { PlannedWorked } from '#shared/contract/worked.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { workedAhead } from '#core/work/workedAhead.ts';
import { workedSeasons, type WorkedFacts } from '#core/work/workedHours.ts';
import { visitsOfBook } from './bookVisits.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { readFreeHours } from './freeHours.ts';
import { inSlices } from './turns.ts';
import { readKeptPlans } from './workPapers.ts';

/** Hours as they were worked, against the plans that were kept, and what the season to come asks for. */
export const workedHandlers: Handlers<'worked.seasons' | 'worked.planned' | 'worked.ahead'> = {
  'worked.seasons': async (_, context) => {
    const facts = await factsOf(context);
    return { today: facts.today, massUnit: (await context.open().settings()).massUnit, seasons: await keptFor(facts, 'seasons', () => inSlices(workedSeasons(facts))) };
  },
  'worked.planned': async (_, context) => {
    const { visits, yards, today } = await factsOf(context);
    const byPlace = new Map(visits.map((visit) => [`${visit.day} ${visit.yard}`, visit]));
    const rows = (await pastOutings(context, today)).flatMap(({ day, visits: planned }) =>
      planned.flatMap(({ yard: id, tasks }): PlannedWorked[] => {
        const yard = yards.find((one) => one.id === id);
        if (yard === undefined) return [];
        const visit = byPlace.get(`${day} ${id}`);
        // Until the day is over, nothing entered says nothing.
        if (day === today && visit === undefined) return [];
        return [{
          day, yard: { id, code: yard.code, name: yard.name }, planned: tasks.reduce((sum, { minutes }) => sum + minutes, 0),
          worked: visit?.hours == null ? null : visit.hours * 60, went: visit !== undefined,
        }];
      }),
    );
    const both = rows.filter((row): row is PlannedWorked & { worked: number } => row.worked !== null);
    return {
      rows: rows.toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0)).slice(0, 60),
      both: { visits: both.length, planned: both.reduce((sum, { planned }) => sum + planned, 0), worked: both.reduce((sum, { worked }) => sum + worked, 0) },
    };
  },
  'worked.ahead': async ({ colonies }, context) => {
    const { store } = context.open();
    const facts = await factsOf(context);
    const { hours, own } = await readFreeHours(store);
    const living = facts.states.filter((state) => aliveOn(state, facts.today)).length;
    const asked = colonies ?? Math.max(1, living);
    return { colonies: asked, living, own, ...workedAhead(facts, hours, asked) };
  },
};

/** Worked out once for as long as the book does not change: the pages of the hours ask for them several times over. */
async function factsOf(context: DeskContext): Promise<WorkedFacts> {
  const book = context.open();
  const picture = await book.picture();
  const today = await book.today(context.options.now().day);
  return keptFor(picture, `worked ${today}`, async () => {
    const { states, yardList, borders } = picture;
    return { ...(await visitsOfBook(book)), states, yards: yardList, borders, today };
  });
}

/** Days that are over, each by the last plan that was kept before it: what was promised when the day came. */
async function pastOutings(context: DeskContext, today: string): Promise<Outing[]> {
  const plans = await readKeptPlans(context.open().store);
  const found = new Map<string, Outing[]>();
  for (const { made, plan } of plans) {
    const from = made.slice(0, 10) > plan.from ? made.slice(0, 10) : plan.from;
    for (const day of [...found.keys()]) if (day >= from) found.delete(day);
    for (const outing of plan.outings) if (outing.day >= from && outing.day <= today) found.set(outing.day, [...(found.get(outing.day) ?? []), outing]);
  }
  return [...found.values()].flat();
}

