import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Borders } from '#shared/seasons.ts';
import { whole, type Slices } from '#shared/slices.ts';
import type { MassUnit } from '#shared/units.ts';
import { aliveOn, currentReign, type ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { noDetails, type Yard, type YardDetails } from '#core/journal/yardBook.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { treatmentSpans, wasTreated, type TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import { splitDaysOf, type HiveBoxes } from '#core/space/hiveBoxes.ts';
import { yardNow } from '#core/mites/yardNow.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { ColonyFacts, LostColony, NeedFacts, Said, YardFacts } from './needRule.ts';

/** What the facts are made of. The states are those of the day's evening. */
export interface NeedSources {
  readonly today: Day;
  readonly ahead: number;
  readonly rules: RuleValues;
  readonly borders: Borders;
  readonly massUnit: MassUnit;
  /** This, `toMend` and `unchecked` are asked for only by rules that said so for the day (`NeedRule.account`). */
  readonly boxesOf: (colony: ColonyId) => HiveBoxes | null;
  readonly states: readonly ColonyState[];
  /** All colonies, where `states` are only some of them. */
  readonly byId?: ReadonlyMap<ColonyId, ColonyState>;
  readonly yards: readonly Yard[];
  readonly details: ReadonlyMap<YardId, YardDetails>;
  readonly stands: ReadonlyMap<YardId, readonly ColonyId[]>;
  /** All standing treatments up to the day, of colonies and of whole yards, in the journal's order. */
  readonly treatments: readonly Entry[];
  /** Notes and work of the last months that name a yard and no colony, in the journal's order. */
  readonly yardWords: readonly Entry[];
  readonly lastVisits: ReadonlyMap<YardId, Day>;
  readonly duesOf: (colony: ColonyId) => readonly DueItem[];
  /** The notes of a colony's looks of the last months, oldest first. */
  readonly saidOf: (colony: ColonyId) => readonly Said[];
  readonly deadlines: NeedFacts['deadlines'];
  readonly toMend: NeedFacts['toMend'];
  readonly unchecked: ReadonlySet<ColonyId>;
  readonly entryOf: (colony: ColonyId, kind: Kind, on: Day) => EntryId | null;
}

const coloniesAtOnce = 500;

/** Works out once what all rules look at. */
export function needFacts(sources: NeedSources): NeedFacts {
  return whole(needFactsInSlices(sources));
}

/** The same, some colonies at a time. */
export function* needFactsInSlices(sources: NeedSources): Slices<NeedFacts> {
  const { today, ahead, rules, borders, massUnit, states, yards, details, stands, lastVisits, deadlines, entryOf } = sources;
  const spansOf = spansBy(treatmentSpans(sources.treatments));
  const words = yardWordsBy(sources.yardWords);
  const found = new Map<YardId, YardFacts & { standing: ColonyFacts[] }>(
    yards.map((yard) => {
      const standing: ColonyFacts[] = [];
      const mites = once(() => yardNow(standing.map(({ state }) => state), new Map(standing.map(({ state, treatments }) => [state.id, treatments])), today, rules));
      return [yard.id, { yard, details: details.get(yard.id) ?? noDetails, standing, mites, lastVisit: lastVisits.get(yard.id) ?? null, said: words.get(yard.id) ?? [] }];
    }),
  );
  const byId = sources.byId ?? new Map(states.map((state) => [state.id, state]));
  const lost: LostColony[] = [];
  const isLost = lostLately(today, rules);
  for (const [count, state] of states.entries()) {
    if (count % coloniesAtOnce === 0) yield;
    const at = yardOn(state, today);
    const yard = at === null ? undefined : found.get(at);
    if (yard === undefined) continue;
    if (aliveOn(state, today)) yard.standing.push(colonyFacts(state, yard, spansOf(state), byId, sources));
    else if (isLost(state) && state.end !== null) lost.push({ state, day: state.end, yard });
  }
  const list = [...found.values()];
  for (const yard of list) {
    const order = byStand(stands.get(yard.yard.id) ?? []);
    yard.standing.sort((a, b) => order(a.state, b.state));
  }
  return {
    today, ahead, rules, borders, massUnit, yards: list, colonies: list.flatMap(({ standing }) => standing), lost, byId, deadlines, entryOf,
    get toMend() {
      return sources.toMend;
    },
    get unchecked() {
      return sources.unchecked;
    },
  };
}

/** Whether a colony was lost or absconded in the weeks before a day; one that ended longer ago is nobody's evening work any more. */
export function lostLately(today: Day, rules: RuleValues): (state: Pick<ColonyState, 'how' | 'end'>) => boolean {
  const since = addDays(today, -numberRule(rules, 'needs.deadOut.until'));
  return ({ how, end }) => (how === 'lost' || how === 'absconded') && end !== null && end >= since;
}

function colonyFacts(state: ColonyState, yard: YardFacts, treatments: readonly TreatmentSpan[], byId: ReadonlyMap<ColonyId, ColonyState>, { today, rules, boxesOf, duesOf, saidOf }: NeedSources): ColonyFacts {
  const strength = state.looks.findLast(({ framesBees }) => framesBees !== null);
  const count = state.miteCounts.at(-1);
  return {
    state, yard, reign: currentReign(state), look: state.looks.at(-1) ?? null, strength: strength?.framesBees == null ? null : { ...strength, framesBees: strength.framesBees },
    count: count === undefined || count.bees <= 0 ? null : { ...count, per100: (100 * count.mites) / count.bees }, treatments, dues: duesOf(state.id), said: () => saidOf(state.id),
    space: once(() => {
      const splitDays = splitDaysOf(state, byId, today);
      return {
        day: today, rules, splitDays,
        get boxes() {
          return boxesOf(state.id);
        },
      };
    }),
  };
}

/** The spans of each colony, found by the yard that was treated or the colony itself. */
function spansBy(spans: readonly TreatmentSpan[]): (state: ColonyState) => TreatmentSpan[] {
  const own = Map.groupBy(spans.filter(({ colony }) => colony !== null), ({ colony }) => colony);
  const whole = Map.groupBy(spans.filter(({ colony }) => colony === null), ({ yard }) => yard);
  return (state) => {
    const near = [...(own.get(state.id) ?? []), ...new Set(state.stays.flatMap(({ yard }) => whole.get(yard) ?? []))].filter((span) => wasTreated(state, span));
    return near.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.entry - b.entry));
  };
}

function yardWordsBy(entries: readonly Entry[]): ReadonlyMap<YardId, Said[]> {
  const found = new Map<YardId, Said[]>();
  for (const { id, day, kind, body } of entries.toReversed()) {
    if ((kind !== 'note' && kind !== 'work') || body.yard === undefined) continue;
    for (const words of [kind === 'work' ? body.task : undefined, body.note]) {
      if (words !== undefined && words !== '') pushTo(found, body.yard, { day, words, entry: id });
    }
  }
  return found;
}

/** Worked out when it is first asked for. */
function once<Value extends object>(make: () => Value): () => Value {
  let made: Value | null = null;
  return () => (made ??= make());
}

function pushTo<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const all = map.get(key);
  if (all === undefined) map.set(key, [value]);
  else all.push(value);
}
