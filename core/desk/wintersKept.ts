import type { Day } from '#shared/days.ts';
import type { Season } from '#shared/seasons.ts';
import { covariateRules, winterCovariates, yardTreatmentsOf, type CovariateFacts, type WinterColony, type YardTreatment } from '#core/losses/winterCovariates.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';

/** Treatments of whole yards, read once for a state of the book. */
export async function treatmentsOf(book: Book, picture: Picture): Promise<readonly YardTreatment[]> {
  return keptFor(picture, 'yard treatments', async () => yardTreatmentsOf((await book.store.entries({ kinds: ['treatment'] })).filter(({ struck }) => struck === null).map(({ entry }) => entry)));
}

/** What each colony went into a winter with, worked out once for all parts of the review. */
export async function wintersKept(book: Book, picture: Picture, asOf: Day): Promise<CovariateFacts & { readonly covariates: (season: Season) => readonly WinterColony[] }> {
  const facts: CovariateFacts = { states: picture.states, yardTreatments: await treatmentsOf(book, picture), borders: picture.borders, rules: covariateRules(picture.rules), asOf };
  return { ...facts, covariates: (season) => keptFor(picture, `covariates ${season} ${asOf}`, () => winterCovariates(facts, season)) };
}
