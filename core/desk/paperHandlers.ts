import type { Grouping } from '#shared/contract/lossSections.ts';
import type { ReviewPaper } from '#shared/contract/paper.ts';
import type { United } from '#shared/contract/values.ts';
import { FaultError } from '#shared/faults.ts';
import { tableCsv } from '#core/exchange/tableCsv.ts';
import { paperFiles, reviewPaperInSlices } from '#core/losses/paper/reviewPaper.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { seasonNotes } from './lossFactorHandlers.ts';
import { lossAnswersOf } from './lossAnswersOf.ts';
import { reportOfStore } from './report.ts';
import { reportAs } from './reportWords.ts';
import { inSlices } from './turns.ts';

export const paperHandlers: Handlers<'losses.paper' | 'losses.files' | 'losses.report'> = {
  'losses.paper': async (asked, context) => paperOf(asked, context),
  'losses.files': async (asked, context) => ({
    files: paperFiles(await paperOf(asked, context)).map(({ name, table }) => ({ name, title: table.title, rows: table.rows.length, text: tableCsv(table) })),
  }),
  'losses.report': async ({ format, season, united, by, target, confidence, asOf }, context) => {
    const book = context.open();
    const today = await book.today(context.options.now().day);
    const { lastDay } = await book.store.counts();
    const { name } = await book.settings();
    const answer = await reportOfStore(book.store, {
      today, asOf: asOf ?? today, lastDay, imported: null, united: united ?? 'lost', by: by ?? null,
      ...(season === undefined ? {} : { season }), ...(target === undefined ? {} : { target }), ...(confidence === undefined ? {} : { confidence }),
    });
    if (!answer.ok) throw new FaultError(answer);
    return { name: `review-${answer.value.season}.${format === 'text' ? 'txt' : format}`, text: reportAs(format, answer.value, name) };
  },
};

async function paperOf({ season, united, by }: { season?: number | undefined; united: United; by?: Grouping | undefined }, context: DeskContext): Promise<ReviewPaper> {
  const answers = await lossAnswersOf(context);
  const { season: shown } = answers.frame(season);
  return inSlices(reviewPaperInSlices({ answers, united, by: by ?? null, notes: await seasonNotes(context.open().store, shown) }, season));
}
