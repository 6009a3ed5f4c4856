import type { PaperTable, ReviewPaper } from '#shared/contract/paper.ts';
import type { United } from '#shared/contract/values.ts';
import { seasonName, type Season } from '#shared/seasons.ts';
import { lossReview } from '../lossReview.ts';
import { type ReviewFacts } from '../reviewFacts.ts';
import type { SeasonYard } from '../seasonLedger.ts';
import { reviewSections } from './reviewSections.ts';

/** The season review as it goes on paper; parts with nothing to say are left out. */
export function reviewPaper(facts: ReviewFacts, season: Season | undefined, united: United, account?: (season: Season) => readonly SeasonYard[]): ReviewPaper {
  const review = lossReview(facts, season, united, account);
  return {
    asOf: review.asOf,
    title: `Season review, ${seasonName(review.season)}`,
    seasons: review.seasons.map((one) => ({ season: one.season, name: one.name })),
    season: review.season,
    sections: reviewSections.flatMap((make) => make({ review, facts }) ?? []),
  };
}

/** Every table of the paper with the name of its file: `losses-2025-account.csv`. */
export function paperFiles(paper: ReviewPaper): { name: string; table: PaperTable }[] {
  return paper.sections.flatMap(({ tables }) => tables).map((table) => ({ name: `losses-${paper.season}-${table.key}.csv`, table }));
}
