import { FaultError } from '#shared/faults.ts';
import { tableCsv } from '#core/exchange/tableCsv.ts';
import type { ReviewFacts } from '#core/losses/reviewFacts.ts';
import { paperFiles, reviewPaper } from '#core/losses/paper/reviewPaper.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { reportOfStore } from './report.ts';
import { reportAs } from './reportWords.ts';

export const paperHandlers: Handlers<'losses.paper' | 'losses.files' | 'losses.report'> = {
  'losses.paper': async ({ season, united }, context) => reviewPaper(await factsOf(context), season, united),
  'losses.files': async ({ season, united }, context) => ({
    files: paperFiles(reviewPaper(await factsOf(context), season, united)).map(({ name, table }) => ({ name, title: table.title, rows: table.rows.length, text: tableCsv(table) })),
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

async function factsOf(context: DeskContext): Promise<ReviewFacts> {
  const book = context.open();
  const { states, yardList, borders } = await book.picture();
  const today = await book.today(context.options.now().day);
  return { states, yards: yardList, borders, asOf: today, today };
}
