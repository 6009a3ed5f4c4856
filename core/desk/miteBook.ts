import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { efficacy, type Efficacy } from '#core/mites/efficacy.ts';
import { judgeTreatment, spansByColony, treatmentActs, type Treated } from '#core/mites/treatmentActs.ts';
import { treatmentSpans, type TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { breathe } from './turns.ts';
import { standing } from './standing.ts';

/** Every treatment begun by the day, with what became of the mites, worked out once for as long as the book does not change. */
export interface MiteBook {
  readonly treated: readonly Treated[];
  readonly spans: ReadonlyMap<ColonyId, readonly TreatmentSpan[]>;
  /** Honey supers on a colony at the end of a day. */
  readonly supersOn: (colony: ColonyId, day: Day) => number;
}

export async function miteBookOf(book: Book, picture: Picture, today: Day): Promise<MiteBook> {
  return keptFor(picture, `mites ${today}`, async () => {
    const stored = await book.store.entries({ kinds: ['treatment', 'supers on', 'supers off'], until: today });
    const entries = standing(stored).toSorted(byOrder);
    const steps = new Map<ColonyId, { day: Day; on: number }[]>();
    for (const entry of entries) {
      if (entry.kind !== 'supers on' && entry.kind !== 'supers off') continue;
      const { colony, count } = entry.body;
      const own = steps.get(colony) ?? [];
      steps.set(colony, own);
      own.push({ day: entry.day, on: (own.at(-1)?.on ?? 0) + (entry.kind === 'supers on' ? count : -count) });
    }
    await breathe();
    const acts = treatmentActs(treatmentSpans(entries), picture.states);
    const spans = spansByColony(acts);
    const counted = picture.states.filter(({ miteCounts }) => miteCounts.length > 0);
    const treated: Treated[] = [];
    for (const act of acts) {
      treated.push(judgeTreatment(act, counted, spans, picture.rules));
      await breathe();
    }
    return { treated, spans, supersOn: (colony, day) => steps.get(colony)?.findLast((step) => step.day <= day)?.on ?? 0 };
  });
}

/** All treatments together, by the counts made after their last days. */
export function togetherOf(treated: readonly Treated[]): Efficacy {
  return efficacy(treated.filter(({ during }) => !during).flatMap(({ pairs }) => pairs.map(({ pair }) => pair)));
}
