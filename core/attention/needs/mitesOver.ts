import { addDays, daysBetween } from '#shared/days.ts';
import { judgeMites, miteThresholdsOn } from '#core/mites/miteThresholds.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { labelCaution } from './dueNeeds.ts';
import type { ColonyFacts, NeedFacts, NeedRule } from './needRule.ts';
import { countRecord, per100Words } from './needWords.ts';

/** A count at or above the threshold of its phase that no treatment has answered. */
export const mitesOver: NeedRule = {
  key: 'mitesOver',
  title: 'Mites over the threshold',
  why: 'Above the threshold a colony is harmed, and in late summer its winter bees are.',
  numbers: ['mites.treat.increase', 'mites.treat.peak', 'mites.treat.decrease', 'needs.mites.act', 'needs.mites.fresh'],
  weather: 'label',
  caution: labelCaution,
  page: '/needs/mites',
  tally: { answers: ['treatment'], came: 'lost in winter' },
  find: (facts) => {
    const act = numberRule(facts.rules, 'needs.mites.act');
    return facts.colonies.flatMap((colony) => {
      const { count } = colony;
      const over = overThreshold(colony, facts);
      if (over === null || count === null) return [];
      return [{
        colony, episode: count.day, act: 'Treat for mites', because: `The last count is at or above the threshold of ${over.treat} in 100 bees.`, detail: `${per100Words(count.per100)} in 100`,
        records: countRecord(colony, facts), earliest: count.day, latest: addDays(count.day, act),
      }];
    });
  },
};

/** The threshold that a colony's last count reaches and no treatment has answered since; null if it does not, or is too old. */
export function overThreshold(colony: ColonyFacts, facts: NeedFacts): { readonly treat: number } | null {
  const { count } = colony;
  if (count === null || daysBetween(count.day, facts.today) > numberRule(facts.rules, 'needs.mites.fresh') || treatedSince(colony, count.day)) return null;
  const thresholds = miteThresholdsOn(count.day, (colony.look?.framesBrood ?? 0) > 0, facts.rules);
  return judgeMites(count.per100, thresholds) === 'act' ? thresholds : null;
}

/** A treatment that began on that day or later, or that was still in the hive. */
export function treatedSince({ treatments }: ColonyFacts, day: string): boolean {
  return treatments.some((one) => one.day >= day || one.until > day);
}
