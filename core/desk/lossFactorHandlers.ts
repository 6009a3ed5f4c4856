import { z } from 'zod';
import type { DeskContext, Handlers } from './desk.ts';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { seasonName } from '#shared/seasons.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { behindFactor, chosenRows, lossFactors, type FactorFacts } from '#core/losses/lossFactors.ts';
import { seasonsOf } from '#core/losses/reviewFacts.ts';
import { winterRows } from '#core/losses/winterRows.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import { wintersKept } from './wintersKept.ts';

type Names = 'losses.factors' | 'losses.factorGroup' | 'losses.notes' | 'losses.keepNotes';

/** What one writes to oneself at a season's end. */
const seasonNote = z.object({ text: z.string(), kept: z.string() });
type SeasonNote = z.infer<typeof seasonNote>;
const noteKind = 'season note';

export const lossFactorHandlers: Handlers<Names> = {
  'losses.factors': async ({ season, scope }, context) => {
    const facts = await factsOf(context);
    return answered(facts, `${season ?? 'last'} ${scope}`, () => lossFactors(facts, chosenRows(facts, season, scope, seasonsFrom(facts))));
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
    const notes = await notesOf(context.open());
    const own = notes.get(season);
    const before = [...notes].filter(([one, { text }]) => one < season && text.trim() !== '').toSorted(([a], [b]) => b - a)[0];
    return { text: own?.text ?? '', kept: own?.kept ?? null, before: before === undefined ? null : { season: before[0], name: seasonName(before[0]), text: before[1].text } };
  },
  'losses.keepNotes': async ({ season, text }, context) => {
    const kept = context.options.now().stamp;
    await context.open().store.keepPapers([{ kind: noteKind, key: String(season), body: text === '' ? null : JSON.stringify({ text, kept } satisfies SeasonNote) }]);
    return { kept };
  },
};

/** Answers to the book as it stands: its states are a new list after every change, and the day tells the rest. */
const answers = new WeakMap<FactorFacts['states'], Map<string, LossFactors>>();

function answered(facts: FactorFacts, asked: string, work: () => LossFactors): LossFactors {
  const known = answers.get(facts.states) ?? new Map<string, LossFactors>();
  answers.set(facts.states, known);
  const key = `${facts.asOf} ${asked}`;
  const answer = known.get(key) ?? work();
  known.set(key, answer);
  return answer;
}

async function factsOf(context: DeskContext): Promise<FactorFacts> {
  const book = context.open();
  return factorFacts(book, await book.today(context.options.now().day));
}

/** What the comparisons are made from, of a book as of a day. */
export async function factorFacts(book: Book, today: Day): Promise<FactorFacts> {
  const picture = await book.picture();
  const { byId, yardList, yards, rules } = picture;
  const winters = { ...(await wintersKept(book, picture, today)), byId, today, codeOf: (yard: YardId) => yards.get(yard).code };
  return { ...winters, yardList, kept: rules, rowsOf: (season) => keptFor(picture, `winter rows ${season} ${today}`, () => winterRows(winters, season)) };
}

export function seasonsFrom(facts: FactorFacts): number[] {
  return seasonsOf({ states: facts.states, yards: [], borders: facts.borders, asOf: facts.asOf, today: facts.today });
}

async function notesOf({ store }: Book): Promise<Map<number, SeasonNote>> {
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
