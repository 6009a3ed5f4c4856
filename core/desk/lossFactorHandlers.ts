import { z } from 'zod';
import type { DeskContext, Handlers } from './desk.ts';
import type { Day } from '#shared/days.ts';
import { seasonName } from '#shared/seasons.ts';
import type { Store } from '#core/book/store.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { behindFactor, chosenRows, type FactorFacts } from '#core/losses/lossFactors.ts';
import { seasonsOf } from '#core/losses/reviewFacts.ts';
import { covariateRules, yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import { lossAnswersOf } from './lossAnswersOf.ts';
import type { Book } from './openBook.ts';

type Names = 'losses.factors' | 'losses.factorGroup' | 'losses.notes' | 'losses.keepNotes';

/** What one writes to oneself at a season's end. */
const seasonNote = z.object({ text: z.string(), kept: z.string() });
type SeasonNote = z.infer<typeof seasonNote>;
const noteKind = 'season note';

export const lossFactorHandlers: Handlers<Names> = {
  'losses.factors': async ({ season, scope }, context) => {
    return (await lossAnswersOf(context)).factors(season, scope);
  },
  'losses.factorGroup': async ({ season, scope, factor, group, yard }, context) => {
    const facts = await factsOf(context);
    const behind = behindFactor(facts, chosenRows(facts, season, scope, seasonsFrom(facts)), factor, group, yard);
    if (behind === null) throw new FaultError(refuse('unknown', `Colonies are not grouped by “${factor}”.`));
    return {
      name: behind.name,
      colonies: behind.colonies.map((colony) => {
        const state = facts.byId.get(colony.id);
        return { ...colony, label: state?.label ?? '', day: colony.lost ? (state?.end ?? null) : null, causes: colony.lost ? [...(state?.causes ?? [])] : [] };
      }),
    };
  },
  'losses.notes': async ({ season }, context) => {
    return seasonNotes(context.open().store, season);
  },
  'losses.keepNotes': async ({ season, text }, context) => {
    const kept = context.options.now().stamp;
    await context.open().store.keepPapers([{ kind: noteKind, key: String(season), body: text === '' ? null : JSON.stringify({ text, kept } satisfies SeasonNote) }]);
    return { kept };
  },
};

async function factsOf(context: DeskContext): Promise<FactorFacts> {
  const book = context.open();
  return factorFacts(book, await book.today(context.options.now().day));
}

/** What the comparisons are made from, of a book as of a day. */
export async function factorFacts(book: Book, today: Day): Promise<FactorFacts> {
  const { states, byId, yardList, yards, borders, rules } = await book.picture();
  const treatments = await book.store.entries({ kinds: ['treatment'] });
  return {
    states, byId, borders, yardList, today, asOf: today, kept: rules, rules: covariateRules(rules),
    yardTreatments: yardTreatmentsOf(treatments.flatMap(({ entry, struck }) => (struck === null ? [entry] : []))),
    codeOf: (yard) => yards.get(yard).code,
  };
}

export function seasonsFrom(facts: FactorFacts): number[] {
  return seasonsOf({ states: facts.states, yards: [], borders: facts.borders, asOf: facts.asOf, today: facts.today });
}

/** What was written for a season, and what was written last before it. */
export async function seasonNotes(store: Store, season: number): Promise<{ text: string; kept: string | null; before: { season: number; name: string; text: string } | null }> {
  const notes = await notesOf(store);
  const own = notes.get(season);
  const before = [...notes].filter(([one, { text }]) => one < season && text.trim() !== '').toSorted(([a], [b]) => b - a)[0];
  return { text: own?.text ?? '', kept: own?.kept ?? null, before: before === undefined ? null : { season: before[0], name: seasonName(before[0]), text: before[1].text } };
}

async function notesOf(store: Store): Promise<Map<number, SeasonNote>> {
  const notes = new Map<number, SeasonNote>();
  for (const [key, body] of await store.papers(noteKind)) {
    const read = seasonNote.safeParse(parsed(body));
    if (read.success) notes.set(Number(key), read.data);
  }
  return notes;
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return null;
  }
}
