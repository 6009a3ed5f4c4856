import { factorWords } from './factorWords.ts';

/** The sections of the season-end review in the order in which it reads; an id is part of the page's element ids. */
export const reviewContents = [
  { id: 'account', title: 'The season’s account' },
  { id: 'losses', title: 'What was lost' },
  { id: 'survival', title: 'When they died' },
  { id: 'factors', title: factorWords.heading },
  { id: 'causes', title: factorWords.causes },
  { id: 'say', title: factorWords.sayHeading },
  { id: 'notes', title: factorWords.notesHeading },
] as const;

export type ReviewSectionId = (typeof reviewContents)[number]['id'];

export function numberOf(id: ReviewSectionId): number {
  return reviewContents.findIndex((section) => section.id === id) + 1;
}

export function headId(id: ReviewSectionId): string {
  return `review-${id}`;
}
