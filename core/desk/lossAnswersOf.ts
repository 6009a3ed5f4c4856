import { lossAnswers, survivalFacts, type AnswerFacts, type Keep, type LossAnswers } from '#core/losses/lossAnswers.ts';
import type { SurvivalFacts } from '#core/losses/survivalPart.ts';
import { yardTreatmentsOf, type YardTreatment } from '#core/losses/winterCovariates.ts';
import type { DeskContext } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';

/** The parts of the season-end review of the open book, as of its day; what several of them need is worked out once. */
export async function lossAnswersOf(context: DeskContext): Promise<LossAnswers & { readonly survivalFacts: SurvivalFacts }> {
  const book = context.open();
  const picture = await book.picture();
  const { states, byId, yardList, borders, rules } = picture;
  const today = await book.today(context.options.now().day);
  const { massUnit } = await book.settings();
  const facts: AnswerFacts = { states, byId, yards: yardList, borders, rules, asOf: today, today, massUnit, yardTreatments: await treatmentsOf(book, picture) };
  const keep: Keep = (key, make) => keptFor(picture, key, make);
  return { ...lossAnswers(facts, keep), survivalFacts: survivalFacts(facts, keep) };
}

/** Treatments of whole yards, read once for a state of the book. */
async function treatmentsOf(book: Book, picture: Picture): Promise<readonly YardTreatment[]> {
  return keptFor(picture, 'yard treatments', async () => yardTreatmentsOf((await book.store.entries({ kinds: ['treatment'] })).filter(({ struck }) => struck === null).map(({ entry }) => entry)));
}
