import type { Grouping } from '#shared/contract/lossSections.ts';
import type { PaperPart } from '#shared/contract/paper.ts';
import type { United } from '#shared/contract/values.ts';
import type { Season } from '#shared/seasons.ts';
import type { LossAnswers } from '../lossAnswers.ts';

/** What was written to oneself for a season, and what was written last before it. */
export interface NotesKept {
  readonly text: string;
  readonly before: { readonly name: string; readonly text: string } | null;
}

/** What a section may be made from: the answers that the screen shows, and no counts of its own. */
export interface SectionFacts {
  readonly season: Season;
  readonly united: United;
  /** A grouping whose curves are wanted beside the usual ones. */
  readonly by: Grouping | null;
  readonly answers: LossAnswers;
  /** Null where notes are not kept, as in a journal's file. */
  readonly notes: NotesKept | null;
}

/** The parts of a section; none where there is nothing to say. */
export type SectionMaker = (facts: SectionFacts) => PaperPart[];
