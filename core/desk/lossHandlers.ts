import { lossReview } from '#core/losses/lossReview.ts';
import type { Handlers } from './desk.ts';

export const lossHandlers: Handlers<'losses.review'> = {
  'losses.review': async ({ season, united }, context) => {
    const book = context.open();
    const { states, yardList, borders } = await book.picture();
    const today = await book.today(context.options.now().day);
    return lossReview({ states, yards: yardList, borders, asOf: today, today }, season, united);
  },
};
