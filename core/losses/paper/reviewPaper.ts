import type { PaperTable, ReviewPaper } from '#shared/contract/paper.ts';
import { whole, type Slices } from '#shared/slices.ts';
import { seasonName, type Season } from '#shared/seasons.ts';
import { reviewSections } from './reviewSections.ts';
import type { SectionFacts } from './sectionFacts.ts';

export type PaperAsked = Omit<SectionFacts, 'season'>;

/** The season review as it goes on paper; sections with nothing to say are left out, and the others keep their numbers. */
export function reviewPaper(asked: PaperAsked, chosen: Season | undefined): ReviewPaper {
  return whole(reviewPaperInSlices(asked, chosen));
}

/** The same, section by section. */
export function* reviewPaperInSlices(asked: PaperAsked, chosen: Season | undefined): Slices<ReviewPaper> {
  const { asOf, season, seasons, empty } = asked.answers.frame(chosen);
  const sections: ReviewPaper['sections'] = [];
  if (!empty) yield* asked.answers.factorsInSlices(season, 'all');
  for (const [at, { key, title, make }] of (empty ? [] : reviewSections).entries()) {
    const parts = make({ ...asked, season });
    if (parts.length > 0) sections.push({ key, number: at + 1, title, parts });
    yield;
  }
  return {
    asOf,
    title: `Season review, ${seasonName(season)}`,
    seasons: seasons.map((one) => ({ season: one.season, name: one.name })),
    season,
    sections,
  };
}

/** Every table of the paper with the name of its file: `losses-2025-account.csv`. */
export function paperFiles(paper: ReviewPaper): { name: string; table: PaperTable }[] {
  return paper.sections.flatMap(({ parts }) => parts.flatMap(({ tables }) => tables)).map((table) => ({ name: `losses-${paper.season}-${table.key}.csv`, table }));
}
