import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Borders } from '#shared/seasons.ts';
import { aliveOn, currentReign, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { noDetails, type Yard, type YardDetails } from '#core/journal/yardBook.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import type { ColonyFacts, LostColony, NeedFacts, Treated, YardFacts } from './needRule.ts';

/** What the facts are made of. The states are those of the day's evening. */
export interface NeedSources {
  readonly today: Day;
  readonly ahead: number;
  readonly rules: RuleValues;
  readonly borders: Borders;
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly details: ReadonlyMap<YardId, YardDetails>;
  readonly stands: ReadonlyMap<YardId, readonly ColonyId[]>;
  /** All standing treatments up to the day, of colonies and of whole yards, in the journal's order. */
  readonly treatments: readonly Entry[];
  /** Notes and work of the last months that name a yard and no colony, in the journal's order. */
  readonly yardWords: readonly Entry[];
  readonly lastVisits: ReadonlyMap<YardId, Day>;
  readonly duesOf: (colony: ColonyId) => readonly DueItem[];
  readonly deadlines: NeedFacts['deadlines'];
  readonly toMend: NeedFacts['toMend'];
  readonly unchecked: ReadonlySet<ColonyId>;
  readonly entryOf: (colony: ColonyId, kind: Kind, on: Day) => EntryId | null;
}

/** A colony that ended longer ago is nobody's evening work any more. */
const lostDays = 60;

/** Works out once what all rules look at. */
export function needFacts(sources: NeedSources): NeedFacts {
  const { today, ahead, rules, borders, states, yards, details, stands, lastVisits, duesOf, deadlines, toMend, unchecked, entryOf } = sources;
  const treated = treatmentsBy(sources.treatments);
  const words = yardWordsBy(sources.yardWords);
  const found = new Map<YardId, YardFacts & { standing: ColonyFacts[] }>(
    yards.map((yard) => [yard.id, { yard, details: details.get(yard.id) ?? noDetails, standing: [], lastVisit: lastVisits.get(yard.id) ?? null, said: words.get(yard.id) ?? [] }]),
  );
  const byId = new Map(states.map((state) => [state.id, state]));
  const lost: LostColony[] = [];
  const since = addDays(today, -lostDays);
  for (const state of states) {
    const at = yardOn(state, today);
    const yard = at === null ? undefined : found.get(at);
    if (yard === undefined) continue;
    if (aliveOn(state, today)) yard.standing.push(colonyFacts(state, yard, treated, duesOf));
    else if ((state.how === 'lost' || state.how === 'absconded') && state.end !== null && state.end >= since) lost.push({ state, day: state.end, yard });
  }
  const list = [...found.values()];
  for (const yard of list) {
    const order = byStand(stands.get(yard.yard.id) ?? []);
    yard.standing.sort((a, b) => order(a.state, b.state));
  }
  return { today, ahead, rules, borders, yards: list, colonies: list.flatMap(({ standing }) => standing), lost, byId, deadlines, toMend, unchecked, entryOf };
}

function colonyFacts(state: ColonyState, yard: YardFacts, treated: ReturnType<typeof treatmentsBy>, duesOf: NeedSources['duesOf']): ColonyFacts {
  const strength = state.looks.findLast(({ framesBees }) => framesBees !== null);
  const count = state.miteCounts.at(-1);
  return {
    state, yard, reign: currentReign(state), look: state.looks.at(-1) ?? null, strength: strength?.framesBees == null ? null : { ...strength, framesBees: strength.framesBees },
    count: count === undefined || count.bees <= 0 ? null : { ...count, per100: (100 * count.mites) / count.bees }, treatments: treatmentsOf(state, treated), dues: duesOf(state.id),
  };
}

function treatmentsBy(entries: readonly Entry[]): { readonly own: ReadonlyMap<ColonyId, Treated[]>; readonly whole: ReadonlyMap<YardId, Treated[]> } {
  const [own, whole] = [new Map<ColonyId, Treated[]>(), new Map<YardId, Treated[]>()];
  for (const entry of entries) {
    if (entry.kind !== 'treatment') continue;
    const { colony, yard, endDate, activeIngredient } = entry.body;
    const treated = { day: entry.day, until: endDate !== undefined && endDate > entry.day ? endDate : entry.day, ingredient: activeIngredient, entry: entry.id };
    if (colony !== undefined) pushTo(own, colony, treated);
    else if (yard !== undefined) pushTo(whole, yard, treated);
  }
  return { own, whole };
}

/** A colony's own, and those of the yard it stood in on the day. */
function treatmentsOf(state: ColonyState, { own, whole }: ReturnType<typeof treatmentsBy>): readonly Treated[] {
  const shared = state.stays.flatMap(({ yard }) => (whole.get(yard) ?? []).filter(({ day }) => aliveOn(state, day) && yardOn(state, day) === yard));
  return [...new Set([...(own.get(state.id) ?? []), ...shared])].toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

function yardWordsBy(entries: readonly Entry[]): ReadonlyMap<YardId, YardFacts['said'][number][]> {
  const found = new Map<YardId, YardFacts['said'][number][]>();
  for (const { id, day, kind, body } of entries.toReversed()) {
    if ((kind !== 'note' && kind !== 'work') || body.yard === undefined) continue;
    const words = [kind === 'work' ? body.task : undefined, body.note].filter((one) => one !== undefined).join('; ');
    if (words !== '') pushTo(found, body.yard, { day, words, entry: id });
  }
  return found;
}

function pushTo<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const all = map.get(key);
  if (all === undefined) map.set(key, [value]);
  else all.push(value);
}
