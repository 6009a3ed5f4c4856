import { addDays, dayInWords, monthDayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { thresholdNumbers } from './miteNumbers.ts';
import { isOver, isYardOver } from './mitesOver.ts';
import type { NeedRule } from './needRule.ts';
import { per100Words } from './needWords.ts';
import { stretch } from './seasonDays.ts';
import { winterBees } from './winterBees.ts';

/** A yard that is below the threshold now and, by the house's growth, will not be when it is next counted. */
export const mitesSoon: NeedRule = {
  key: 'mitesSoon',
  title: 'Mites near the threshold',
  why: 'While there is brood mites double in about a month, so a yard can cross the threshold between two counts.',
  numbers: ['mites.growth', 'mites.growthBroodless', 'mites.holds', 'mites.roundDays', 'mites.colonies', 'needs.mites.ahead', 'needs.mites.from', ...thresholdNumbers],
  weather: 'open',
  page: '/needs/mites',
  find: (facts) => {
    const { yards, rules, today } = facts;
    const asked = new Set(winterBees.find(facts).map(({ colony }) => colony));
    return yards.flatMap((yard) => {
      const { projection, speaks, round, estimate, thresholds } = yard.mites();
      const expected = projection?.expected ?? null;
      // Where a treatment is asked for anyway, another count tells nothing that matters.
      if (speaks !== 'now' || isYardOver(yard) || yard.standing.some((colony) => isOver(colony, facts) || asked.has(colony)) || estimate.few || round === null || expected === null || estimate.rate === null) return [];
      const season = stretch(rules, 'needs.mites.from', 'mites.begins.dormant', today);
      // Past the last counted brood nothing grows; and what holds until the next count is the next count's matter.
      if (expected > season.until || expected > addDays(round[1], numberRule(rules, 'mites.holds'))) return [];
      return [{
        yard, episode: round[1], act: 'Count mites again, or treat', because: `The yard will reach ${thresholds.treat} in 100 bees before its next count is due.`, detail: `about ${monthDayInWords(expected)}`,
        times: Math.min(yard.standing.length, numberRule(rules, 'mites.colonies')),
        records: [{ day: round[1], words: `${per100Words(estimate.rate.per100)} in 100 in ${estimate.washed} colonies up to ${dayInWords(round[1])}; grown by the house’s share it is ${thresholds.treat} about ${dayInWords(expected)}.`, entry: null }],
        earliest: addDays(expected, -numberRule(rules, 'needs.mites.ahead')), latest: expected, bring: [{ item: 'mite wash kit', count: 1, unit: '', each: false }],
      }];
    });
  },
};
