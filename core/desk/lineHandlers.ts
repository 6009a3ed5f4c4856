import { firstView, lanesFrom, linesPicture, wholeLinesInSlices, type LinesOf, type WholeLines } from '#core/lineage/linesPicture.ts';
import type { Day } from '#shared/days.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { inSlices } from './turns.ts';

interface Lines {
  readonly of: LinesOf;
  readonly today: Day;
  readonly whole: WholeLines;
}

async function linesOf(context: DeskContext): Promise<Lines> {
  const book = context.open();
  const of = await book.picture();
  const today = await book.today(context.options.now().day);
  return { of, today, whole: await keptFor(of, `lines ${today}`, () => inSlices(wholeLinesInSlices(of, today))) };
}

export const lineHandlers: Handlers<'lines.picture' | 'lines.lanes' | 'lines.rows'> = {
  'lines.picture': async ({ view, ...asked }, context) => {
    const { of, today, whole } = await linesOf(context);
    const picture = linesPicture(of, asked, today, whole);
    return view === 'first' ? firstView(picture, asked) : picture;
  },
  'lines.lanes': async ({ from, most, ...asked }, context) => {
    const { of, whole } = await linesOf(context);
    return lanesFrom(of, asked, from, most, whole);
  },
  'lines.rows': async ({ by, from, most }, context) => {
    const { whole } = await linesOf(context);
    return { rows: whole.lines[by].slice(from, from + most) };
  },
};
