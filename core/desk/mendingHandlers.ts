import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { StoryEntry } from '#shared/contract/journal.ts';
import type { ColonyConsequence, Consequence } from '#shared/contract/mending.ts';
import type { DateOrder } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { writeRow } from '#core/journal/writeRow.ts';
import { changeWords } from '#core/lineage/changeWords.ts';
import type { Store, StoredEntry } from '#core/book/store.ts';
import { contradictionFault, judgeStanding, type Judgement, type StandingChange } from './changeStanding.ts';
import type { Handlers } from './desk.ts';
import { namesOf } from './names.ts';
import { replacePlan, strikePlan } from './strikeAndUndo.ts';

export const mendingHandlers: Handlers<'journal.consequence' | 'journal.entry'> = {
  'journal.consequence': async ({ entry, cells }, context) => {
    const book = context.open();
    return consequenceOf(book.store, entry, cells, (await book.settings()).dateOrder);
  },
  'journal.entry': async ({ entry: id }, context) => {
    const { store } = context.open();
    const [stored] = await store.entries({ ids: [id] });
    if (stored === undefined) throw new FaultError(refuse('unknown', `There is no entry ${id} in this book.`));
    const names = await namesOf(store);
    const [entry] = await storyEntries(store, [stored], names);
    if (entry === undefined) throw new Error(`entry ${id} has no story`);
    return { entry, kind: stored.entry.kind, cells: writeRow(stored.entry, names) };
  },
};

/** What striking or replacing would do, by the same computation that then does it; nothing is changed. */
export async function consequenceOf(store: Store, id: EntryId, cells: Cells | undefined, order: DateOrder): Promise<Consequence> {
  const names = await namesOf(store);
  let change: StandingChange;
  try {
    change = cells === undefined ? await strikePlan(store, id, '') : await replacePlan(store, id, cells, '', order);
  } catch (error) {
    if (!(error instanceof FaultError) || error.fault.code !== 'refused') throw error;
    const { sentence, mend, rows = [] } = error.fault;
    return { allowed: false, colonies: [], refusal: { sentence, mend: mend ?? null, cells: rows.map((row) => ({ column: row.column, sentence: row.sentence })), contradictions: [] } };
  }
  const judgement = await judgeStanding(store, change);
  if (judgement.contradictions.length > 0) return refusedBy(store, judgement, change, names);
  return { allowed: true, colonies: coloniesChanged(judgement, change, names), refusal: null };
}

async function refusedBy(store: Store, judgement: Judgement, change: StandingChange, names: Names): Promise<Consequence> {
  const fault = contradictionFault(judgement.contradictions);
  const arriving = new Set<number>(change.add.map(({ entry }) => entry.id));
  const known = new Map((await store.entries({ ids: judgement.contradictions.map(({ line }) => line as EntryId) })).map(({ entry }) => [entry.id as number, entry]));
  return {
    allowed: false,
    colonies: [],
    refusal: {
      sentence: fault.sentence,
      mend: fault.mend ?? null,
      // The entry to be put in is not in the book yet: what is against it is against the cells typed.
      cells: judgement.contradictions.filter(({ line }) => arriving.has(line)).map(({ column, sentence }) => ({ column, sentence })),
      contradictions: judgement.contradictions
        .filter(({ line }) => !arriving.has(line))
        .map(({ line, sentence }) => {
          const entry = known.get(line);
          return {
            entry: line as EntryId, day: entry?.day ?? null, what: entry === undefined ? null : rulesOf(entry.kind).sentence(entry.body, names), sentence,
            colonies: entry === undefined ? [] : touchedBy(entry).map((colony) => ({ id: colony, label: names.colony(colony) })),
          };
        })
        .toSorted((a, b) => ((a.day ?? '') < (b.day ?? '') ? -1 : 1)),
    },
  };
}

function coloniesChanged({ before, after, entriesOf }: Judgement, change: StandingChange, names: Names): ColonyConsequence[] {
  const mended = [...change.strike, ...change.add].map(({ entry }) => entry).toSorted(byOrder)[0];
  return [...after].flatMap(([id, state]) => {
    const sentences = changeWords(before.get(id) ?? null, state, names);
    if (sentences.length === 0) return [];
    const own = new Set<number>(change.add.map(({ entry }) => entry.id));
    const later = mended === undefined ? [] : (entriesOf.get(id) ?? []).filter((entry) => byOrder(entry, mended) > 0 && !own.has(entry.id));
    return [{ id, label: state?.label ?? before.get(id)?.label ?? names.colony(id), there: state !== null, end: state?.end ?? null, sentences, later: state === null ? 0 : later.length }];
  });
}

function touchedBy(entry: Entry): ColonyId[] {
  return rulesOf(entry.kind).touches(entry.body).map((touch) => touch.colony);
}

/** Entries as a story tells them; a struck one names what was put in its place. */
export async function storyEntries(store: Store, stored: readonly StoredEntry[], names: Names): Promise<StoryEntry[]> {
  const sentenceOf = (entry: Entry) => rulesOf(entry.kind).sentence(entry.body, names);
  const struck = stored.filter((one) => one.struck !== null).map(({ entry }) => entry.id);
  // One that was put in and taken back again by undo is in nobody's place.
  const successors = struck.length === 0 ? [] : (await store.entries({ replacing: struck })).filter((one) => one.struck?.by !== 'undo');
  const next = new Map(successors.map((one) => [one.replaces, one.entry]));
  return stored.map(({ entry, struck: mark }) => {
    const by = mark === null ? undefined : next.get(entry.id);
    return {
      id: entry.id, day: entry.day, kind: entry.kind, sentence: sentenceOf(entry), note: entry.body.note ?? null, struck: mark !== null, struckReason: mark?.reason ?? null,
      replacedBy: by === undefined ? null : { id: by.id, day: by.day, sentence: sentenceOf(by) },
    };
  });
}
