import { linesPicture } from '#core/lineage/linesPicture.ts';
import type { Handlers } from './desk.ts';

export const lineHandlers: Handlers<'lines.picture'> = {
  'lines.picture': async (asked, context) => {
    const book = context.open();
    return linesPicture(await book.picture(), asked, await book.today(context.options.now().day));
  },
};
