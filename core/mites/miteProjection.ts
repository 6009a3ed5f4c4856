import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { addDays, type Day } from '#shared/days.ts';
import type { RatePer100 } from './miteRate.ts';

/** When a rate that grows steadily reaches a threshold. Each day is the first on which it does; null: not within a year. */
export interface MiteProjection {
  /** True if the rate itself is there already. */
  readonly reached: boolean;
  readonly expected: Day | null;
  /** By the upper and the lower limit of the count: the range of what the count leaves open. */
  readonly earliest: Day | null;
  readonly latest: Day | null;
}

/** Growth is the same for no longer than a season of brood; a day farther off than this is not named. */
const farthest = 365;

/** Mites in 100 bees so many days on, growing by a share of themselves a day (0.021: doubling in 33 days). */
export function grownRate(per100: number, days: number, growth: number): number {
  return per100 * Math.exp(growth * days);
}

/** Days until a rate has grown to a threshold, in parts of days; 0 if it is there, null if it never gets there. */
export function daysUntil(per100: number, threshold: number, growth: number): number | null {
  if (per100 >= threshold) return 0;
  return per100 > 0 && growth > 0 ? Math.log(threshold / per100) / growth : null;
}

/**
 * Carries a count of a day forward to the threshold by the house's growth, with brood or without. The range is that of the count alone: that the
 * growth itself is a rule of thumb, and that mites come in with other bees in fall, is not in it.
 */
export function miteProjection(rate: RatePer100, counted: Day, threshold: number, rules: RuleValues, brood = true): MiteProjection {
  const growth = numberRule(rules, brood ? 'mites.growth' : 'mites.growthBroodless');
  const on = (per100: number): Day | null => {
    const days = daysUntil(per100, threshold, growth);
    return days === null || days > farthest ? null : addDays(counted, Math.ceil(days - 1e-9));
  };
  return { reached: rate.per100 >= threshold, expected: on(rate.per100), earliest: on(rate.limits.upper), latest: on(rate.limits.lower) };
}

/** Mites in all for 100 grown bees, those under cappings counted in, while there is brood. */
export function withBrood(per100: number, rules: RuleValues): number {
  return per100 * numberRule(rules, 'mites.broodFactor');
}

/** Bees in so many half cups, where they were measured and not counted. */
export function beesInHalfCups(halfCups: number, rules: RuleValues): number {
  if (!(halfCups > 0)) throw new RangeError(`a wash takes more than 0 half cups, not ${halfCups}`);
  return Math.round(halfCups * numberRule(rules, 'mites.halfCup'));
}

/** Chance to find no mite in so many bees when the true rate is so many in 100, each bee carrying one or none. */
export function chanceOfNone(per100: number, bees: number): number {
  if (!(per100 >= 0 && per100 <= 100) || !(bees >= 0)) throw new RangeError(`${per100} mites in 100 of ${bees} bees`);
  return (1 - per100 / 100) ** bees;
}
