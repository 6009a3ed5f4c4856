import { addDays } from '#shared/days.ts';
import { planWeeks, type WorkFacts } from '#core/work/workFacts.ts';
import { fittingIn } from '#core/work/fittingTreatments.ts';
import type { DeskContext } from './desk.ts';
import { needsNow } from './needsNow.ts';
import { placedIn } from './placedPapers.ts';
import { readOwnTasks } from './workPapers.ts';

/** Reads from the book all that the tasks of the next weeks are worked out from. */
export async function workFactsOf(context: DeskContext): Promise<WorkFacts> {
  const book = context.open();
  const { states, yardList, rules } = await book.picture();
  const today = await book.today(context.options.now().day);
  const { open, facts } = await needsNow(context, 7 * planWeeks);
  const recorded = (await book.store.entries({ kinds: ['work'], until: today })).flatMap(({ entry, struck }) => (struck === null && entry.kind === 'work' ? [entry] : []));
  return {
    today, until: addDays(today, 7 * planWeeks - 1), states, yards: yardList, rules, needs: open,
    fitting: (yard, on) => fittingIn(facts, yard, on),
    // Which are unchecked is only known where any died.
    deadOuts: new Set(facts.lost.length === 0 ? [] : facts.lost.flatMap(({ state: { id } }) => (facts.unchecked.has(id) ? [id] : []))),
    awaited: (await placedIn(book, today)).filter(({ awaited, left }) => awaited && left > 0), own: await readOwnTasks(book.store), recorded,
  };
}
