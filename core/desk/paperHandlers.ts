import type { ReviewPaper } from '#shared/contract/paper.ts';
import type { United } from '#shared/contract/values.ts';
import { FaultError } from '#shared/faults.ts';
import type { Season } from '#shared/seasons.ts';
import { tableCsv } from '#core/exchange/tableCsv.ts';
import { seasonYards } from '#core/losses/seasonLedger.ts';
import { paperFiles, reviewPaper } from '#core/losses/paper/reviewPaper.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { reportOfStore } from './report.ts';
import { reportAs } from './reportWords.ts';

export const paperHandlers: Handlers<'losses.paper' | 'losses.files' | 'losses.report'> = {
  'losses.paper': async ({ season, united }, context) => paperOf(context, season, united),
  'losses.files': async ({ season, united }, context) => ({
    files: paperFiles(await paperOf(context, season, united)).map(({ name, table }) => ({ name, title: table.title, rows: table.rows.length, text: tableCsv(table) })),
  }),
  'losses.report': async ({ format, season, target, confidence, asOf }, context) => {
    const book = context.open();
    const today = await book.today(context.options.now().day);
    const { lastDay } = await book.store.counts();
    const { name } = await book.settings();
    const answer = await reportOfStore(book.store, {
      today, asOf: asOf ?? today, lastDay, imported: null,
      ...(season === undefined ? {} : { season }), ...(target === undefined ? {} : { target }), ...(confidence === undefined ? {} : { confidence }),
    });
    if (!answer.ok) throw new FaultError(answer);
    const { paper } = answer.value;
    return { name: `review-${paper.season}.${format === 'text' ? 'txt' : format}`, text: reportAs(format, answer.value, name) };
  },
};

/** The accounts are those of the review on the screen; the paper is laid out once for a state of the book. */
async function paperOf(context: DeskContext, season: Season | undefined, united: United): Promise<ReviewPaper> {
  const book = context.open();
  const picture = await book.picture();
  const { states, yardList, borders } = picture;
  const today = await book.today(context.options.now().day);
  const facts = { states, yards: yardList, borders, asOf: today, today };
  return keptFor(picture, `paper ${season} ${united} ${today}`, () => reviewPaper(facts, season, united, (one) => keptFor(picture, `account ${one} ${today}`, () => seasonYards(states, yardList, one, today, borders))));
}
