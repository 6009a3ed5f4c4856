import type { PaperTable, ReviewPaper } from '#shared/contract/paper.ts';
import { seasonName, type Season } from '#shared/seasons.ts';
import { reviewSections } from './reviewSections.ts';
import type { SectionFacts } from './sectionFacts.ts';

export type PaperAsked = Omit<SectionFacts, 'season'>;

/** The season review as it goes on paper; sections with nothing to say are left out, and the others keep their numbers. */
export function reviewPaper(asked: PaperAsked, chosen: Season | undefined): ReviewPaper {
  const { asOf, season, seasons, empty } = asked.answers.frame(chosen);
  return {
    asOf,
    title: `Season review, ${seasonName(season)}`,
    seasons: seasons.map((one) => ({ season: one.season, name: one.name })),
    season,
    sections: empty ? [] : reviewSections.flatMap(({ key, title, make }, at) => {
      const parts = make({ ...asked, season });
      return parts.length === 0 ? [] : [{ key, number: at + 1, title, parts }];
    }),
  };
}

/** Every table of the paper with the name of its file: `losses-2025-account.csv`. */
export function paperFiles(paper: ReviewPaper): { name: string; table: PaperTable }[] {
  return paper.sections.flatMap(({ parts }) => parts.flatMap(({ tables }) => tables)).map((table) => ({ name: `losses-${paper.season}-${table.key}.csv`, table }));
}
