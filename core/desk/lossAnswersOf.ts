import type { Day } from '#shared/days.ts';
import { lossAnswers, type AnswerFacts, type LossAnswers } from '#core/losses/lossAnswers.ts';
import { yardTreatmentsOf, type YardTreatment } from '#core/losses/winterCovariates.ts';
import type { DeskContext } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { standingIn } from './standing.ts';

/** The parts of the season-end review of the open book, as of its day; what several of them need is worked out once. */
export async function lossAnswersOf(context: DeskContext): Promise<LossAnswers> {
  const book = context.open();
  return lossAnswersIn(book, await book.today(context.options.now().day));
}

/** The same of any book, as of a day. */
export async function lossAnswersIn(book: Book, today: Day): Promise<LossAnswers> {
  const picture = await book.picture();
  const { states, byId, yardList, borders, rules } = picture;
  const { massUnit } = await book.settings();
  const facts: AnswerFacts = { states, byId, yards: yardList, borders, rules, asOf: today, today, massUnit, yardTreatments: await treatmentsOf(book, picture) };
  return lossAnswers(facts, (key, make) => keptFor(picture, key, make));
}

/** Treatments of whole yards, read once for a state of the book. */
async function treatmentsOf(book: Book, picture: Picture): Promise<readonly YardTreatment[]> {
  return keptFor(picture, 'yard treatments', async () => yardTreatmentsOf(await standingIn(book.store, { kinds: ['treatment'] })));
}
