import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import { aliveOn, type ColonyState, type MiteCount } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { RatePair } from '#core/stats/rateRatio.ts';

/** One treatment entry: of one colony, or of every colony then alive in a yard. */
export interface TreatmentSpan {
  readonly entry: EntryId;
  readonly ingredient: string;
  readonly from: Day;
  /** The last day written down; the first day where none is. */
  readonly until: Day;
  /** Whether a last day was written down. */
  readonly ended: boolean;
  readonly colony: ColonyId | null;
  readonly yard: YardId | null;
  readonly note: string | null;
}

export function treatmentSpans(entries: readonly Entry[]): TreatmentSpan[] {
  return entries
    .flatMap((entry) => {
      if (entry.kind !== 'treatment') return [];
      const { activeIngredient, endDate, colony, yard, note } = entry.body;
      const until = endDate !== undefined && endDate > entry.day ? endDate : entry.day;
      return [{ entry: entry.id, ingredient: activeIngredient, from: entry.day, until, ended: endDate !== undefined, colony: colony ?? null, yard: yard ?? null, note: note ?? null }];
    })
    .toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.entry - b.entry));
}

/** True if the treatment was given to this colony: named itself, or alive in the yard that was treated whole. */
export function wasTreated(state: ColonyState, span: TreatmentSpan): boolean {
  if (span.colony !== null) return span.colony === state.id;
  return span.yard !== null && aliveOn(state, span.from) && yardOn(state, span.from) === span.yard;
}

/** The counts that tell of a treatment in one colony; `during` where the later one was made before its last day. */
export interface CountedAcross {
  readonly before: MiteCount;
  readonly after: MiteCount;
  readonly during: boolean;
}

/**
 * The last count before a treatment began and the first after it ended, with no other treatment between them, within the
 * house's days. Without one after it, a count made while it was on, some days in. Null where either is missing. `others`:
 * every treatment of this colony.
 */
export function countedAcross(counts: readonly MiteCount[], span: Pick<TreatmentSpan, 'entry' | 'from' | 'until'>, others: readonly TreatmentSpan[], rules: RuleValues): CountedAcross | null {
  const before = counts.findLast(({ day }) => day <= span.from);
  if (before === undefined || before.day < addDays(span.from, -numberRule(rules, 'mites.beforeDays'))) return null;
  const clear = (until: Day) => !others.some((other) => other.entry !== span.entry && other.from < until && other.until > before.day);
  const settled = addDays(span.from, numberRule(rules, 'attention.recount.from'));
  const from = span.until > settled ? span.until : settled;
  const last = addDays(span.until, numberRule(rules, 'mites.afterDays'));
  const after = counts.find(({ day }) => day >= from && day <= last);
  if (after !== undefined && clear(after.day)) return { before, after, during: false };
  const during = counts.findLast(({ day }) => day >= settled && day < span.until);
  return during !== undefined && clear(during.day) ? { before, after: during, during: true } : null;
}

export function pairOf({ before, after }: Pick<CountedAcross, 'before' | 'after'>): RatePair {
  return { before: before.mites, beforeOf: before.bees, after: after.mites, afterOf: after.bees };
}

/** Counts of a colony that was left untreated over the same days: on both sides, each within so many days of those of the treated. */
export function leftUntreated(counts: readonly MiteCount[], own: readonly TreatmentSpan[], around: { readonly before: readonly [Day, Day]; readonly after: readonly [Day, Day] }): RatePair | null {
  const within = ({ day }: MiteCount, [from, until]: readonly [Day, Day]) => day >= from && day <= until;
  const before = counts.findLast((count) => within(count, around.before));
  const after = counts.find((count) => within(count, around.after));
  if (before === undefined || after === undefined || after.day <= before.day) return null;
  return own.some(({ from, until }) => from < after.day && until > before.day) ? null : pairOf({ before, after });
}
