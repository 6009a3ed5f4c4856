import { z } from 'zod';
import type { EntryId } from '#shared/brands.ts';
import { lotStep, waterPlace, type LotStep } from '#shared/contract/lots.ts';
import type { Day } from '#shared/days.ts';
import type { Paper, Store } from '#core/book/store.ts';
import { lotBook, type LotBook } from '#core/honey/lots/lotBook.ts';
import type { HarvestFact, KeptStep, LotFacts, SaleFact } from '#core/honey/lots/lotFacts.ts';
import type { WaterPlace } from '#core/honey/waterLimits.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { keptFor } from './keptFor.ts';
import { breathe } from './turns.ts';
import { nextKey } from './offerPapers.ts';
import type { Book } from './openBook.ts';

/*
 * What was done with a lot is kept as papers of kind `lot`, one for each act, which only grow: one that is taken back stays
 * with its reason. Harvests and sales are the journal's own entries.
 */
const lotPaper = 'lot';
const choicePaper = 'honey choice';
const choiceBody = z.strictObject({ place: waterPlace });

/** Steps as they were kept; one that this program cannot read throws, and is never left out in silence. */
export async function readSteps(store: Store): Promise<KeptStep[]> {
  return [...(await store.papers(lotPaper))].map(([key, body]) => ({ ...lotStep.parse(JSON.parse(body)), key }));
}

export function stepPaper({ key, ...step }: KeptStep): Paper {
  return { kind: lotPaper, key, body: JSON.stringify(step satisfies LotStep) };
}

export function lotPapers(steps: readonly LotStep[]): Paper[] {
  const keys: string[] = [];
  return steps.map((step) => {
    const key = nextKey('l', keys.slice(-1));
    keys.push(key);
    return stepPaper({ ...step, key });
  });
}

export async function readPlace(store: Store): Promise<WaterPlace> {
  const body = (await store.papers(choicePaper)).get('place');
  return body === undefined ? 'usdaAB' : choiceBody.parse(JSON.parse(body)).place;
}

export function placePaper(place: WaterPlace): Paper {
  return { kind: choicePaper, key: 'place', body: JSON.stringify({ place } satisfies z.infer<typeof choiceBody>) };
}

export interface LotRecord {
  readonly facts: LotFacts;
  readonly book: LotBook;
  readonly steps: readonly KeptStep[];
  readonly today: Day;
}

/** Harvests, sales and what was done at home up to the day, folded once for as long as the book does not change. */
export async function lotRecord(book: Book, today: Day): Promise<LotRecord> {
  const picture = await book.picture();
  return keptFor(picture, `lots ${today}`, async () => {
    const { store } = book;
    const stored = await store.entries({ kinds: ['harvest', 'sale'], until: today });
    const harvests: HarvestFact[] = [];
    const sales: SaleFact[] = [];
    for (const [at, { entry, struck }] of stored.entries()) {
      if (at % 5000 === 0) await breathe();
      if (struck !== null) continue;
      const { id, day, place } = entry;
      if (entry.kind === 'harvest') {
        const { colony, yard, gross, tare, moisture, lot } = entry.body;
        const state = colony === undefined ? undefined : picture.byId.get(colony);
        harvests.push({
          entry: id, day, place, yard: (state === undefined ? null : yardOn(state, day)) ?? yard ?? null, colony: colony ?? null, gross, tare, net: (gross - tare) as HarvestFact['net'],
          // Honey cannot be water alone: such a figure is a slip, and tells nothing of the lot.
          moisture: moisture === undefined || moisture >= 100 ? null : moisture, lot: lot ?? null,
        });
      } else if (entry.kind === 'sale' && entry.body.item !== undefined) {
        const { item, quantity, price, lot } = entry.body;
        sales.push({ entry: id, day, place, item, quantity: quantity ?? null, price: price ?? null, lot: lot ?? null });
      }
    }
    const replacedBy = new Map(stored.flatMap(({ entry, replaces }): [EntryId, EntryId][] => (replaces === null ? [] : [[replaces, entry.id]])));
    const standsFor = new Map([...replacedBy.keys()].map((old): [EntryId, EntryId] => [old, lastOf(old, replacedBy)]));
    const steps = (await readSteps(store)).filter(({ day }) => day <= today);
    const facts: LotFacts = { harvests, sales, steps, standsFor };
    await breathe();
    return { facts, book: lotBook(facts), steps, today };
  });
}

function lastOf(entry: EntryId, replacedBy: ReadonlyMap<EntryId, EntryId>): EntryId {
  let found = entry;
  for (let next = replacedBy.get(found); next !== undefined; next = replacedBy.get(found)) found = next;
  return found;
}
