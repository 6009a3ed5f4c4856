import type { OwnTask } from '#shared/contract/work.ts';
import { addDays } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { daylightOn } from '#core/work/daylight.ts';
import { drivingTimes } from '#core/work/drivingTimes.ts';
import { ownTaskTrouble } from '#core/work/ownTimes.ts';
import { hoursTrouble } from '#core/work/workHours.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { requireYards, unusedKey } from './planChoices.ts';
import { distancePaperOf, hoursPaperOf, readDistances, readHours, readOwnTasks, taskPaper } from './workPapers.ts';

type Names =
  | 'work.hours' | 'work.setHours' | 'work.distances' | 'work.setDistance' | 'work.ownTasks' | 'work.setTask' | 'work.settleTask' | 'work.taskBack';

/** What the plan of the work rests on, as the person writes it down: hours, ways, own tasks, and what is held. */
export const workHandlers: Handlers<Names> = {
  'work.hours': async (_, context) => {
    const book = context.open();
    const { hours, own } = await readHours(book.store);
    const today = await book.today(context.options.now().day);
    const daylight = Array.from({ length: 8 }, (_week, at) => addDays(today, 7 * at)).flatMap((day) => {
      const light = daylightOn(day, hours.place);
      return light === null ? [] : [{ day, ...light }];
    });
    return { hours, own, daylight };
  },
  'work.setHours': async (hours, context) => {
    const trouble = hoursTrouble(hours);
    if (trouble !== null) throw refused(trouble);
    await context.open().store.keepPapers([hoursPaperOf(hours)]);
    return { hours };
  },
  'work.distances': async (_, context) => {
    const { store } = context.open();
    const yards = await store.yards();
    const known = await readDistances(store);
    const { between, fromHome } = drivingTimes(yards, known);
    const estimated = yards.flatMap((one, at) => yards.slice(at + 1).flatMap((other) => {
      const [a, b] = one.id < other.id ? [one.id, other.id] : [other.id, one.id];
      const minutes = known.some((pair) => pair.a === a && pair.b === b) ? null : between(a, b);
      return minutes === null ? [] : [{ a, b, minutes }];
    }));
    return { known, estimated, without: yards.flatMap(({ id }) => (fromHome(id) === null ? [id] : [])) };
  },
  'work.setDistance': async ({ a, b, minutes }, context) => {
    const { store } = context.open();
    await requireYards(context, [a, b]);
    if (a === b) throw new FaultError(refuse('refused', 'A yard has no way to itself.', { field: 'b', mend: 'Choose two yards.' }));
    await store.keepPapers([distancePaperOf(a, b, minutes)]);
    return {};
  },
  'work.ownTasks': async (_, context) => ({ tasks: await readOwnTasks(context.open().store) }),
  'work.setTask': async ({ key, task }, context) => {
    const { store } = context.open();
    const trouble = ownTaskTrouble(task);
    if (trouble !== null) throw refused(trouble);
    if (task.yard !== null) await requireYards(context, [task.yard]);
    const { byId } = await context.open().picture();
    if (!task.colonies.every((id) => byId.has(id))) throw new FaultError(refuse('unknown', 'One of those colonies is not in this book.', { field: 'colonies' }));
    const tasks = await readOwnTasks(store);
    const before = tasks.find((one) => one.key === key);
    if (key !== null && before === undefined) throw gone();
    const kept: OwnTask = { ...task, key: key ?? (await unusedKey(store, 't', tasks)), settled: before?.settled ?? [] };
    await keepTask(context, kept);
    return { task: kept };
  },
  'work.settleTask': async ({ key, day, how }, context) => {
    const { store } = context.open();
    const task = (await readOwnTasks(store)).find((one) => one.key === key);
    if (task === undefined) throw gone();
    if (day === null) await store.keepPapers([{ kind: taskPaper, key, body: null }]);
    else await keepTask(context, { ...task, settled: [...task.settled.filter((one) => one.day !== day), { day, how }] });
    return {};
  },
  'work.taskBack': async ({ task }, context) => {
    const trouble = ownTaskTrouble(task);
    if (trouble !== null) throw refused(trouble);
    if (task.yard !== null) await requireYards(context, [task.yard]);
    const other = (await readOwnTasks(context.open().store)).find((one) => one.key === task.key);
    // Another task may have its place by now.
    if (other !== undefined && other.what !== task.what) throw gone();
    await keepTask(context, task);
    return {};
  },
};

async function keepTask(context: DeskContext, { key, ...body }: OwnTask): Promise<void> {
  await context.open().store.keepPapers([{ kind: taskPaper, key, body: JSON.stringify(body) }]);
}

function refused({ sentence, mend, field }: { sentence: string; mend: string; field: string }): FaultError {
  return new FaultError(refuse('refused', sentence, { mend, field }));
}

function gone(): FaultError {
  return new FaultError(refuse('unknown', 'That task is no longer in the book.', { mend: 'Write it down as a new one.' }));
}
