import type { Need } from '#shared/contract/needs.ts';
import type { Day } from '#shared/days.ts';
import { needFactsInSlices } from '#core/attention/needs/needFacts.ts';
import type { NeedFacts } from '#core/attention/needs/needRule.ts';
import { needsInSlices } from '#core/attention/needs/needsOf.ts';
import type { DeskContext } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { readPutOff, type PutOffBody } from './needPapers.ts';
import { needSources } from './needSources.ts';
import type { Book } from './openBook.ts';
import { inSlices } from './turns.ts';

export interface NeedsNow {
  readonly book: Book;
  readonly today: Day;
  readonly facts: NeedFacts;
  /** What is asked for now. */
  readonly open: readonly Need[];
  /** What is put off, with whether a record still asks for it. */
  readonly off: ReadonlyMap<string, PutOffBody & { readonly need: Need | null }>;
}

/**
 * What is needed on the day that is looked at, worked out once for as long as the book does not change. `ahead`: how many
 * days before its first day something is already found; the list's own by the house rule.
 */
export async function needsNow(context: DeskContext, ahead: number | null = null): Promise<NeedsNow> {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const picture = await book.picture();
  return keptFor(picture, `needs ${today} ${ahead ?? ''}`, async () => {
    const facts = await inSlices(needFactsInSlices(await needSources(book, today, ahead)));
    const all = await inSlices(needsInSlices(facts));
    // Papers have no day of their own in the book: what was put off later than the day looked at was not put off then.
    const papers = [...(await readPutOff(book.store))].filter(([, { on, until }]) => on <= today && (until === null || until > today));
    const byKey = new Map(all.map((need) => [need.key, need]));
    const off = new Map(papers.map(([key, body]) => [key, { ...body, need: byKey.get(key) ?? null }]));
    return { book, today, facts, open: all.filter(({ key }) => !off.has(key)), off };
  });
}
