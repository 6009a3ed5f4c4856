import { FaultError, refuse } from '#shared/faults.ts';
import { colonyDues } from '#core/attention/colonyDues.ts';
import type { DueRecord } from '#core/attention/dueRule.ts';
import { yardDues } from '#core/attention/yardDues.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Handlers } from './desk.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';

export const dueHandlers: Handlers<'colony.due' | 'yard.due'> = {
  'colony.due': async ({ id }, context) => {
    const book = context.open();
    const picture = await book.picture();
    const state = picture.byId.get(id);
    if (state === undefined) throw new FaultError(refuse('unknown', 'That colony is not in this book, or the entry that began it was struck.'));
    const today = await book.today(context.options.now().day);
    const [record] = await recordsOf(book, picture, [state]);
    return { today, items: record === undefined ? [] : colonyDues(record, picture.rules, today) };
  },
  'yard.due': async ({ id }, context) => {
    const book = context.open();
    const picture = await book.picture();
    if (!picture.yardList.some((yard) => yard.id === id)) throw new FaultError(refuse('unknown', 'That yard is not in this book.'));
    const today = await book.today(context.options.now().day);
    const standing = picture.states.filter((state) => aliveOn(state, today) && yardOn(state, today) === id).toSorted(byStand(picture.stands.get(id) ?? []));
    const records = await recordsOf(book, picture, standing);
    const details = (await book.store.yardDetails()).get(id);
    const dues = records.map((record) => ({ id: record.state.id, label: record.state.label, items: colonyDues(record, picture.rules, today) }));
    return { today, items: yardDues(dues, details?.renewal ?? null, details?.registration ?? null, picture.rules, today) };
  },
};

/** What the rules of what is due look at, of each of the colonies. */
export async function recordsOf({ store }: Book, { names, borders }: Picture, states: readonly ColonyState[]): Promise<DueRecord[]> {
  const own = await store.entriesOf(states.map(({ id }) => id));
  const since = states.reduce((least, { start }) => (least === null || start < least ? start : least), null as ColonyState['start'] | null);
  const treatments = since === null ? [] : (await store.entries({ kinds: ['treatment'], from: since })).flatMap(({ entry, struck }) => (struck === null && isWholeYard(entry) ? [entry] : []));
  const said = (entry: Entry) => rulesOf(entry.kind).sentence(entry.body, names);
  return states.map((state) => {
    const shared = treatments.filter((entry) => entry.kind === 'treatment' && aliveOn(state, entry.day) && entry.body.yard === yardOn(state, entry.day));
    return { state, entries: [...(own.get(state.id) ?? []), ...shared].toSorted(byOrder), said, borders };
  });
}

function isWholeYard(entry: Entry): boolean {
  return entry.kind === 'treatment' && entry.body.colony === undefined;
}
