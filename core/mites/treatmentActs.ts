import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { RatePair } from '#core/stats/rateRatio.ts';
import { efficacy, type Efficacy } from './efficacy.ts';
import { countedAcross, leftUntreated, pairOf, wasTreated, type TreatmentSpan } from './treatmentSpans.ts';

/** What was given in one yard over the same days: one entry for the whole yard, or one for each colony. */
export interface TreatmentAct {
  readonly entries: readonly EntryId[];
  readonly ingredient: string;
  readonly from: Day;
  readonly until: Day;
  readonly ended: boolean;
  readonly yard: YardId | null;
  /** True where the entry names no colony, so that every one alive there was treated. */
  readonly whole: boolean;
  readonly colonies: readonly ColonyState[];
  readonly notes: readonly string[];
}

export interface Treated {
  readonly act: TreatmentAct;
  readonly pairs: readonly { readonly colony: ColonyId; readonly pair: RatePair; readonly during: boolean }[];
  /** By counts after it; where none was made, by counts made while it was on. */
  readonly result: Efficacy;
  readonly during: boolean;
}

/** Treatments that share yard, ingredient and days are one act. */
export function treatmentActs(spans: readonly TreatmentSpan[], states: readonly ColonyState[]): TreatmentAct[] {
  const byYard = new Map<YardId, ColonyState[]>();
  for (const state of states) for (const yard of new Set(state.stays.map((stay) => stay.yard))) byYard.set(yard, [...(byYard.get(yard) ?? []), state]);
  const byId = new Map(states.map((state) => [state.id, state]));
  const acts = new Map<string, { -readonly [Key in keyof TreatmentAct]: TreatmentAct[Key] }>();
  for (const span of spans) {
    const own = span.colony === null ? undefined : byId.get(span.colony);
    const yard = span.colony === null ? span.yard : own === undefined ? span.yard : yardOn(own, span.from);
    const colonies = span.colony === null ? (span.yard === null ? [] : (byYard.get(span.yard) ?? []).filter((state) => wasTreated(state, span))) : own === undefined ? [] : [own];
    const whole = span.colony === null;
    const key = `${yard ?? ''} ${span.ingredient.trim().toLowerCase()} ${span.from} ${span.until} ${span.ended} ${whole}`;
    const act = acts.get(key);
    if (act === undefined) acts.set(key, { entries: [span.entry], ingredient: span.ingredient, from: span.from, until: span.until, ended: span.ended, yard, whole, colonies, notes: span.note === null ? [] : [span.note] });
    else {
      act.entries = [...act.entries, span.entry];
      act.colonies = [...new Set([...act.colonies, ...colonies])];
      if (span.note !== null && !act.notes.includes(span.note)) act.notes = [...act.notes, span.note];
    }
  }
  return [...acts.values()];
}

/** Every treatment of each colony, in the order of their days. */
export function spansByColony(acts: readonly TreatmentAct[]): ReadonlyMap<ColonyId, readonly TreatmentSpan[]> {
  const found = new Map<ColonyId, TreatmentSpan[]>();
  for (const { entries, colonies, ingredient, from, until, ended, yard } of acts) {
    for (const { id } of colonies) {
      const own = found.get(id) ?? [];
      found.set(id, own);
      own.push({ entry: entries[0] ?? (0 as EntryId), ingredient, from, until, ended, colony: id, yard, note: null });
    }
  }
  for (const own of found.values()) own.sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  return found;
}

/** How far mites fell with a treatment, by the colonies counted on both sides of it, corrected by those left untreated if there are any. */
export function judgeTreatment(act: TreatmentAct, states: readonly ColonyState[], spans: ReadonlyMap<ColonyId, readonly TreatmentSpan[]>, rules: RuleValues): Treated {
  const of = { entry: act.entries[0] ?? (0 as EntryId), from: act.from, until: act.until };
  const found = act.colonies.flatMap((state) => {
    const across = countedAcross(state.miteCounts, of, spans.get(state.id) ?? [], rules);
    return across === null ? [] : [{ colony: state.id, ...across }];
  });
  const after = found.filter(({ during }) => !during);
  const during = after.length === 0 && found.length > 0;
  const counted = during ? found : after;
  const pairs = counted.map((one) => ({ colony: one.colony, pair: pairOf(one), during: one.during }));
  return { act, pairs, result: efficacy(pairs.map(({ pair }) => pair), during ? [] : controls(act, counted.map(({ before, after: later }) => [before.day, later.day] as const), states, spans, rules)), during };
}

/** Untreated colonies counted over the same days: on each side within the days on which treated ones were counted, and a week about them. */
function controls(act: TreatmentAct, days: readonly (readonly [Day, Day])[], states: readonly ColonyState[], spans: ReadonlyMap<ColonyId, readonly TreatmentSpan[]>, rules: RuleValues): RatePair[] {
  if (days.length === 0) return [];
  const [befores, afters] = [days.map(([before]) => before).toSorted(), days.map(([, later]) => later).toSorted()];
  const span = (sorted: readonly Day[]): readonly [Day, Day] => [addDays(sorted[0] ?? act.from, -slack), addDays(sorted.at(-1) ?? act.from, slack)];
  const around = { before: span(befores), after: span(afters) };
  const treated = new Set(act.colonies.map(({ id }) => id));
  const most = numberRule(rules, 'mites.afterDays');
  return states.flatMap((state) => {
    if (treated.has(state.id) || state.miteCounts.length < 2 || state.start > around.after[1] || (state.end !== null && state.end < addDays(around.after[0], -most))) return [];
    return leftUntreated(state.miteCounts, spans.get(state.id) ?? [], around) ?? [];
  });
}

const slack = 7;
