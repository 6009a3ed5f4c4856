import type { ColonyId } from '#shared/brands.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import type { ColonyState, MiteCount } from '#core/journal/colonyState.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { miteProjection, type MiteProjection } from './miteProjection.ts';
import { miteRate, probabilityAbove, type RatePer100 } from './miteRate.ts';
import { miteThresholdsOn, type MiteThresholds } from './miteThresholds.ts';
import type { TreatmentSpan } from './treatmentSpans.ts';
import { yardEstimate, type YardEstimate } from './yardEstimate.ts';

export type Brood = 'yes' | 'no' | 'not known';

/** A colony's last count, as it speaks on the day. */
export interface CountedColony {
  readonly colony: ColonyId;
  readonly count: MiteCount;
  readonly rate: RatePer100;
  /** Chance that its true rate was above the threshold of the day. */
  readonly above: number;
  /** The last treatment begun on or after the day of the count. */
  readonly treatedSince: TreatmentSpan | null;
  /** Part of what the yard's figure is made of. */
  readonly inRound: boolean;
}

/** What a yard's counts say on a day. */
export interface YardNow {
  readonly living: number;
  readonly brood: Brood;
  readonly thresholds: MiteThresholds;
  /** `now`: counted within the house's days and not treated since; `old`: longer ago; `treated`: every count is from before a treatment. */
  readonly speaks: 'now' | 'old' | 'treated' | 'never';
  /** First and last day of the counts in the figure. */
  readonly round: readonly [Day, Day] | null;
  readonly treatedSince: TreatmentSpan | null;
  readonly estimate: YardEstimate<ColonyId>;
  readonly verdict: 'above' | 'below' | 'open' | 'none';
  /** More colonies to count before it can be told; 0 where it is told. */
  readonly more: number;
  readonly projection: MiteProjection | null;
  readonly counted: readonly CountedColony[];
  readonly uncounted: readonly ColonyId[];
}

/** Whether there is brood: by looks of the last days, in any colony; not known where nobody looked. */
export function broodIn(states: readonly ColonyState[], today: Day, rules: RuleValues): Brood {
  const since = addDays(today, -numberRule(rules, 'treat.broodSeen'));
  const looks = states.flatMap(({ looks: own }) => own.filter(({ day, framesBrood, eggs }) => day > since && day <= today && (framesBrood !== null || eggs !== null)));
  if (looks.length === 0) return 'not known';
  return looks.some(({ framesBrood, eggs }) => (framesBrood ?? 0) > 0 || eggs === true) ? 'yes' : 'no';
}

/**
 * A yard's mites from the last counts of the colonies alive there (`standing`). Its figure rests on counts that lie
 * within the house's days of each other and have seen no treatment since; where all are from before a treatment, on
 * those, and says so. While it is not known whether there is brood, the threshold of bees with brood is taken.
 */
export function yardNow(standing: readonly ColonyState[], spans: ReadonlyMap<ColonyId, readonly TreatmentSpan[]>, today: Day, rules: RuleValues): YardNow {
  const brood = broodIn(standing, today, rules);
  const thresholds = miteThresholdsOn(today, brood !== 'no', rules);
  const last = standing.flatMap((state) => {
    const count = state.miteCounts.findLast(({ day }) => day <= today);
    if (count === undefined) return [];
    return [{ colony: state.id, count, treatedSince: (spans.get(state.id) ?? []).findLast(({ from }) => from >= count.day && from <= today) ?? null }];
  });
  const fresh = last.filter(({ treatedSince }) => treatedSince === null);
  const told = fresh.length > 0 ? fresh : last;
  const newest = told.reduce((latest: Day | null, { count: { day } }) => (latest === null || day > latest ? day : latest), null);
  const oldest = newest === null ? null : addDays(newest, -numberRule(rules, 'mites.roundDays'));
  const inRound = new Set(told.filter(({ count: { day } }) => oldest !== null && day >= oldest).map(({ colony }) => colony));
  const washes = last.filter(({ colony }) => inRound.has(colony)).map(({ colony, count: { mites, bees } }) => ({ colony, mites, bees }));
  const estimate = yardEstimate(washes, standing.length, thresholds.treat, rules);
  const days = last.filter(({ colony }) => inRound.has(colony)).map(({ count: { day } }) => day).toSorted();
  const treated = newest !== null && fresh.length === 0;
  const speaks = newest === null ? 'never' : treated ? 'treated' : daysBetween(newest, today) > numberRule(rules, 'mites.holds') ? 'old' : 'now';
  const sure = numberRule(rules, 'mites.sure');
  const { above, few } = estimate;
  const verdict = newest === null ? 'none' : above === null || few ? 'open' : above >= sure ? 'above' : above <= 1 - sure ? 'below' : 'open';
  return {
    living: standing.length, brood, thresholds, speaks, estimate, verdict,
    round: days[0] === undefined ? null : [days[0], days.at(-1) ?? days[0]],
    treatedSince: treated ? (last.map(({ treatedSince }) => treatedSince).filter((span) => span !== null).toSorted((a, b) => (a.from < b.from ? 1 : -1))[0] ?? null) : null,
    // Counts that a treatment or time has overtaken decide nothing: then the whole first plan is to be counted again.
    more: speaks === 'now' ? (verdict === 'above' || verdict === 'below' ? 0 : estimate.more) : Math.min(standing.length, numberRule(rules, 'mites.colonies')),
    projection: treated || estimate.rate === null || newest === null ? null : miteProjection(estimate.rate, newest, thresholds.treat, rules, brood !== 'no'),
    counted: last
      .map(({ colony, count, treatedSince }) => ({ colony, count, treatedSince, rate: miteRate(count), above: probabilityAbove(count, thresholds.treat), inRound: inRound.has(colony) }))
      .toSorted((a, b) => Number(b.inRound) - Number(a.inRound) || b.rate.per100 - a.rate.per100),
    uncounted: standing.filter(({ miteCounts }) => !miteCounts.some(({ day }) => day <= today)).map(({ id }) => id),
  };
}
