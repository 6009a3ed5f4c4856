import type { Handlers } from './desk.ts';
import { tallyOf } from './tallyRun.ts';

export const tallyHandlers: Handlers<'needs.tally'> = {
  'needs.tally': async (_, context) => {
    const book = context.open();
    return tallyOf(book, await book.today(context.options.now().day));
  },
};
