import { z } from 'zod';
import type { Handlers } from './desk.ts';
import { seasonName } from '#shared/seasons.ts';
import type { Store } from '#core/book/store.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { behindFactor, chosenRows, type FactorFacts } from '#core/losses/lossFactors.ts';
import { seasonsOf } from '#core/losses/reviewFacts.ts';
import { lossAnswersOf } from './lossAnswersOf.ts';
import { inSlices } from './turns.ts';

type Names = 'losses.factors' | 'losses.factorGroup' | 'losses.notes' | 'losses.keepNotes';

/** What one writes to oneself at a season's end. */
const seasonNote = z.object({ text: z.string(), kept: z.string() });
type SeasonNote = z.infer<typeof seasonNote>;
const noteKind = 'season note';

export const lossFactorHandlers: Handlers<Names> = {
  'losses.factors': async ({ season, scope }, context) => {
    return inSlices((await lossAnswersOf(context)).factorsInSlices(season, scope));
  },
  'losses.factorGroup': async ({ season, scope, factor, group, yard }, context) => {
    const { factorFacts: facts } = await lossAnswersOf(context);
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
