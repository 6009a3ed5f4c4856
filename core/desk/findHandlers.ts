import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Findings } from '#shared/contract/find.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { fold, foldedWords } from '#shared/fold.ts';
import type { StoredEntry } from '#core/book/store.ts';
import { bestOf } from '#core/find/bestOf.ts';
import { findColonies, foldedLabel } from '#core/find/findColonies.ts';
import { findEntries } from '#core/find/findEntries.ts';
import { findLots } from '#core/find/findLots.ts';
import { findQueens } from '#core/find/findQueens.ts';
import { matchRank } from '#core/find/matchRank.ts';
import type { Lot } from '#core/honey/lots/lotBook.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import { noDetails, type YardDetails } from '#core/journal/yardBook.ts';
import { queenColour } from '#core/lineage/queenColour.ts';
import type { Handlers } from './desk.ts';
import { entryTexts } from './findTexts.ts';
import { yardsOf } from './lotLines.ts';
import { lotRecord } from './lotPapers.ts';
import { storyEntries } from './mendingHandlers.ts';
import type { Picture } from './picture.ts';
import { inSlices } from './turns.ts';

/** Behind every match of a name. */
const worst = 9;
const nothing: Findings = { colonies: { rows: [], total: 0 }, yards: { rows: [], total: 0 }, queens: { rows: [], total: 0 }, lots: { rows: [], total: 0 }, entries: { rows: [], total: 0 } };

export const findHandlers: Handlers<'find.all' | 'find.entry'> = {
  'find.all': async ({ text, limit }, context) => {
    const book = context.open();
    const { store } = book;
    const picture = await book.picture();
    // Read even when nothing is typed yet, so that the first letters are answered at once.
    const texts = await entryTexts(book);
    const { lots: known } = (await lotRecord(book, await book.today(context.options.now().day))).book;
    const words = foldedWords(text);
    if (words.length === 0) return nothing;
    const { states, byId, names } = picture;
    const label = (id: ColonyId) => {
      const state = byId.get(id);
      return state === undefined ? '' : foldedLabel(state);
    };
    const colonies = findColonies(states, words, limit);
    const queens = findQueens(states, words, limit);
    const entries = await inSlices(findEntries(texts, words, limit, label));
    const stored = new Map((await store.entries({ ids: entries.rows.map(({ id }) => id) })).map((one) => [one.entry.id, one]));
    return {
      colonies: {
        total: colonies.total,
        rows: colonies.rows.map(({ id, label: called, stays, start, end, how }) => ({ id, label: called, yardName: yardName(stays.at(-1)?.yard, picture) ?? '', start, end, how })),
      },
      yards: foundYards(words, limit, picture, await store.yardDetails()),
      queens: {
        total: queens.total,
        rows: queens.rows.map(({ state, reign }) => ({
          id: reign.queen, colony: { id: state.id, label: state.label }, year: reign.year, colour: reign.year === null ? null : queenColour(reign.year), source: reign.source, since: reign.since, until: reign.until,
        })),
      },
      lots: foundLots(known.values(), text, limit, picture),
      entries: {
        total: entries.total,
        rows: entries.rows.flatMap(({ id }) => {
          const one = stored.get(id);
          return one === undefined ? [] : [{ ...inWords(one, names), colonies: coloniesOf(one, picture) }];
        }),
      },
    };
  },
  'find.entry': async ({ id }, context) => {
    const book = context.open();
    const { store } = book;
    const picture = await book.picture();
    const [one] = await store.entries({ ids: [id] });
    if (one === undefined) throw new FaultError(refuse('unknown', 'That entry is not in this book.'));
    const { body } = one.entry;
    const [entry] = await storyEntries(store, [one], picture.names);
    if (entry === undefined) throw new Error(`entry ${id} has no words`);
    return {
      entry,
      colonies: coloniesOf(one, picture),
      yardName: 'yard' in body ? yardName(body.yard, picture) : null,
    };
  },
};

/** By code and name; then by what is written down of a yard: access, notes, registration. */
function foundYards(words: readonly string[], limit: number, { yardList, states }: Picture, written: ReadonlyMap<YardId, YardDetails>): Findings['yards'] {
  const fitting = yardList.flatMap((yard) => {
    const ranks = [fold(yard.code), fold(yard.name), fold(`${yard.code} ${yard.name}`)].map((name) => matchRank(name, words)).filter((rank) => rank !== null);
    if (ranks.length > 0) return [{ yard, rank: Math.min(...ranks) }];
    const { access, notes, registration } = written.get(yard.id) ?? noDetails;
    const all = fold([yard.code, yard.name, access, notes, registration].join(' '));
    return matchRank(all, words) === null ? [] : [{ yard, rank: worst }];
  });
  const found = bestOf(fitting, limit, (a, b) => a.rank - b.rank || (a.yard.name < b.yard.name ? -1 : 1));
  const living = (id: number) => states.filter((state) => state.end === null && state.stays.at(-1)?.yard === id).length;
  return { total: found.total, rows: found.rows.map(({ yard: { id, code, name } }) => ({ id, code, name, living: living(id) })) };
}

function foundLots(known: Iterable<Lot>, text: string, limit: number, { names }: Picture): Findings['lots'] {
  const found = findLots(known, text, limit);
  return { total: found.total, rows: found.rows.map(({ lot, from, until, left }) => ({ code: lot.code, from, until, left, yards: yardsOf(lot, names) })) };
}

function inWords({ entry, struck }: StoredEntry, names: Picture['names']) {
  return { id: entry.id, day: entry.day, kind: entry.kind, sentence: rulesOf(entry.kind).sentence(entry.body, names), note: entry.body.note ?? null, struck: struck !== null };
}

/** The colonies an entry names, as far as they have a page: one whose first entry was struck has none. */
function coloniesOf({ entry }: StoredEntry, { byId }: Picture) {
  return rulesOf(entry.kind).touches(entry.body).flatMap(({ colony }) => {
    const state = byId.get(colony);
    return state === undefined ? [] : [{ id: state.id, label: state.label }];
  });
}

function yardName(id: YardId | undefined, { yardList }: Picture): string | null {
  return yardList.find((yard) => yard.id === id)?.name ?? null;
}
