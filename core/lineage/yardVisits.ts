import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { YardVisit } from '#shared/contract/yards.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { yardOn } from './yardOn.ts';

/** The kinds that may be about a yard without naming a colony. */
export const wholeYardKinds: readonly Kind[] = ['treatment', 'harvest', 'work', 'note', 'stock', 'purchase'];

/**
 * The last day on which something was entered in each yard: for a colony that stands or ended there, by a
 * colony that left it, or for the yard as a whole. `whole`: the standing entries of `wholeYardKinds`.
 */
export function lastVisits(states: readonly ColonyState[], whole: readonly Entry[]): Map<YardId, Day> {
  const last = new Map<YardId, Day>();
  const seen = (yard: YardId, day: Day) => {
    const known = last.get(yard);
    if (known === undefined || known < day) last.set(yard, day);
  };
  for (const state of states) {
    for (const stay of state.stays) seen(stay.yard, stay.until ?? state.lastDay);
  }
  for (const entry of whole) {
    for (const yard of yardsOf(entry)) seen(yard, entry.day);
  }
  return last;
}

/**
 * What was done in a yard, day by day, the newest first: entries of colonies that stood there on the day, and
 * those of the yard as a whole. A move counts for the yard it left and the one it reached.
 */
export function yardVisits(yard: YardId, states: ReadonlyMap<ColonyId, ColonyState>, entries: readonly Entry[], names: Names, days: number): YardVisit[] {
  const found = new Map<EntryId, { entry: Entry; colonies: ColonyId[] }>();
  for (const entry of entries) {
    if (found.has(entry.id)) continue;
    const touched = rulesOf(entry.kind).touches(entry.body).map((touch) => touch.colony);
    const here = touched.filter((id) => stoodIn(states.get(id), yard, entry.day));
    if (here.length === 0 && !yardsOf(entry).includes(yard)) continue;
    found.set(entry.id, { entry, colonies: here.slice(0, 1) });
  }
  const byDay = Map.groupBy(found.values(), ({ entry }) => entry.day);
  return [...byDay].toSorted(([a], [b]) => (a < b ? 1 : -1)).slice(0, days).map(([day, done]) => ({ day, acts: actsOf(done, states, names), kinds: kindsOf(done.map(({ entry }) => entry.kind)) }));
}

function actsOf(done: readonly { entry: Entry; colonies: readonly ColonyId[] }[], states: ReadonlyMap<ColonyId, ColonyState>, names: Names): YardVisit['acts'] {
  const acts = new Map<string, YardVisit['acts'][number]>();
  for (const { entry, colonies } of done.toSorted((a, b) => a.entry.place - b.entry.place)) {
    const said = rulesOf(entry.kind).sentence(entry.body, names);
    const sentence = entry.kind === 'note' ? (entry.body.note ?? said) : said;
    const act = acts.get(sentence) ?? { sentence, colonies: [] };
    acts.set(sentence, act);
    for (const id of colonies) act.colonies.push({ id, label: states.get(id)?.label ?? names.colony(id) });
  }
  return [...acts.values()];
}

function kindsOf(kinds: readonly Kind[]): YardVisit['kinds'] {
  return [...Map.groupBy(kinds, (kind) => kind)].map(([kind, all]) => ({ kind, entries: all.length })).toSorted((a, b) => b.entries - a.entries);
}

function stoodIn(state: ColonyState | undefined, yard: YardId, day: Day): boolean {
  if (state === undefined) return false;
  return yardOn(state, day) === yard || state.stays.some((stay) => stay.yard === yard && stay.until === day);
}

/** The yards that an entry without a colony is about. */
function yardsOf(entry: Entry): YardId[] {
  const places = entry.kind === 'stock' ? [entry.body.from, entry.body.to] : entry.kind === 'purchase' && entry.body.to !== undefined ? [entry.body.to] : [];
  const named = 'yard' in entry.body && entry.body.yard !== undefined && !('colony' in entry.body && entry.body.colony !== undefined) ? [entry.body.yard] : [];
  return [...named, ...places.flatMap((place) => (typeof place === 'string' ? [] : [place.yard]))];
}
