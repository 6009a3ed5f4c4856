import type { Entry } from '#core/journal/kinds.ts';
import { allVisitsInSlices, visitEntryKinds } from '#core/work/allVisits.ts';
import type { WorkedVisit } from '#core/work/workedVisits.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import { breathe, inSlices } from './turns.ts';
import { standingIn } from './standing.ts';

/** Every visit of the record, and the harvests that were read for it, worked out once for as long as the book does not change. */
export async function visitsOfBook(book: Book): Promise<{ visits: readonly WorkedVisit[]; harvests: readonly Entry[] }> {
  const picture = await book.picture();
  return keptFor(picture, 'visits', async () => {
    const standing = await standingIn(book.store, { kinds: visitEntryKinds });
    await breathe();
    return { visits: await inSlices(allVisitsInSlices(picture.states, picture.byId, standing)), harvests: standing.filter(({ kind }) => kind === 'harvest') };
  });
}
