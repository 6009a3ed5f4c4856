import type { ColonyId, YardId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { colonyDues, dueRules } from '#core/attention/colonyDues.ts';
import type { DueRecord } from '#core/attention/dueRule.ts';
import { yardDues } from '#core/attention/yardDues.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { Handlers } from './desk.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { standingIn } from './standing.ts';

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

/**
 * The same of many colonies, with only as much of their record as the rules need to find what is still open: none looks
 * at what came before the entry that made something due, and what is older than their longest time has been let go.
 */
export async function openRecordsOf({ store }: Book, { names, rules, borders }: Picture, states: readonly ColonyState[], today: Day): Promise<DueRecord[]> {
  const since = addDays(today, -longestOpen(rules));
  // A treatment counts from its last day, which may be long after its first.
  const late = (await standingIn(store, { kinds: ['treatment'], until: addDays(since, -1) })).filter((entry) => entry.kind === 'treatment' && entry.body.endDate !== undefined && entry.body.endDate >= since);
  const own = new Map(states.map(({ id }): [ColonyId, Entry[]] => [id, []]));
  const whole = new Map<YardId, Entry[]>();
  for (const entry of [...late, ...(await standingIn(store, { from: since }))]) {
    for (const { colony } of rulesOf(entry.kind).touches(entry.body)) own.get(colony)?.push(entry);
    if (entry.kind === 'treatment' && entry.body.colony === undefined && entry.body.yard !== undefined) whole.set(entry.body.yard, [...(whole.get(entry.body.yard) ?? []), entry]);
  }
  const said = (entry: Entry) => rulesOf(entry.kind).sentence(entry.body, names);
  return states.map((state) => {
    const yards = [...new Set(state.stays.map(({ yard }) => yard))];
    const shared = yards.flatMap((yard) => (whole.get(yard) ?? []).filter(({ day }) => aliveOn(state, day) && yardOn(state, day) === yard));
    return { state, entries: [...(own.get(state.id) ?? []), ...shared].toSorted(byOrder), said, borders };
  });
}

/** Days after an entry (a treatment: after its last day) for which any rule keeps what it made due open. */
function longestOpen(rules: RuleValues): number {
  const letGo = numberRule(rules, 'attention.letGo');
  return letGo + Math.max(0, ...dueRules.flatMap(({ numbers }) => numbers.map((key) => numberRule(rules, key))));
}

function isWholeYard(entry: Entry): boolean {
  return entry.kind === 'treatment' && entry.body.colony === undefined;
}
