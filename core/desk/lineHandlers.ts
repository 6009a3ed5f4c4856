import { linesPicture, wholeLines } from '#core/lineage/linesPicture.ts';
import type { Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';

export const lineHandlers: Handlers<'lines.picture'> = {
  'lines.picture': async (asked, context) => {
    const book = context.open();
    const picture = await book.picture();
    const today = await book.today(context.options.now().day);
    return linesPicture(picture, asked, today, keptFor(picture, `lines ${today}`, () => wholeLines(picture, today)));
  },
};
