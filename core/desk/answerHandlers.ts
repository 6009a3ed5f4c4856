import { answerSheets } from '#core/losses/answers/answerSheets.ts';
import type { Handlers } from './desk.ts';
import { standingIn } from './standing.ts';

export const answerHandlers: Handlers<'losses.answers'> = {
  'losses.answers': async ({ season, quarter }, context) => {
    const book = context.open();
    const { states, yardList, borders } = await book.picture();
    const today = await book.today(context.options.now().day);
    const requeens = await standingIn(book.store, { kinds: ['requeen'], until: today });
    return answerSheets({ states, yards: yardList, borders, requeens, asOf: today, today }, season, quarter);
  },
};
