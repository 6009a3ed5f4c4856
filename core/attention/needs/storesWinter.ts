import { addDays, daysBetween, monthDayInWords } from '#shared/days.ts';
import { gramsFrom } from '#shared/units.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { mass, storesPhase, storesToday } from '#core/stores/storesToday.ts';
import type { NeedRule } from './needRule.ts';
import { restRecord } from './needWords.ts';

/** A colony that may starve: in winter by what is reckoned to be left, in spring and summer by what was seen. */
export const storesWinter: NeedRule = {
  key: 'storesWinter',
  title: 'Stores short in winter or spring',
  why: 'Most stores are eaten in early spring, when brood is raised and nothing is in bloom.',
  numbers: ['stores.low', 'stores.week', 'stores.holds', 'stores.gain.heavy', 'stores.gain.light', 'stores.frame.deep', 'stores.autumnFrom', 'stores.feedBy', 'needs.starving.within', 'needs.fedHolds'],
  weather: 'top',
  page: '/needs/stores',
  tally: { answers: ['feed', 'stores'], came: 'lost soon' },
  find: (facts) => {
    const { rules, today, massUnit } = facts;
    const phase = storesPhase(today, rules);
    if (phase === 'autumn') return [];
    const weekly = gramsFrom(numberRule(rules, 'stores.week'), 'lb');
    const closed = addDays(inSeasonOf(today, 'stores.feedBy', rules), 1);
    const holds = numberRule(rules, 'needs.fedHolds');
    return facts.colonies.flatMap((colony) => {
      const stores = storesToday(colony.state, { day: today, rules, unit: massUnit });
      const { told, reckoned } = stores;
      if (stores.say !== 'feed' || told === null || reckoned === null) return [];
      // Food given on the evening of the hefting answers what was found.
      const fed = colony.state.feedings.at(-1);
      if (fed !== undefined && fed.day >= told.day && daysBetween(fed.day, today) < holds) return [];
      // In winter it crossed the line some weeks ago, by what it uses; in the season what was seen is what counts.
      const low = addDays(today, -Math.min(daysBetween(told.day, today), Math.round((7 * stores.amount) / weekly)));
      const crossed = phase === 'summer' ? told.day : low > closed ? low : closed;
      const again = fed !== undefined && fed.day >= told.day ? addDays(fed.day, holds) : crossed;
      const since = again > crossed ? again : crossed;
      const latest = addDays(since, numberRule(rules, 'needs.starving.within'));
      // In the season a flow may have filled since what was empty then.
      const act = phase === 'winter' ? 'Heft it, and give fondant if it is light' : today > latest ? 'Look at its stores, and feed it if they are still low' : 'Feed it at once';
      return [{
        colony, episode: `${told.day} ${fed?.day ?? ''}`, act, because: phase === 'winter' ? `Reckoned to have less than ${lowWords(facts)} left.` : `Less than ${lowWords(facts)} of stores were seen.`,
        detail: phase === 'winter' ? `about ${mass(reckoned, massUnit)}` : `about ${mass(reckoned, massUnit)} on ${monthDayInWords(told.day)}`, records: restRecord(colony, stores, facts), earliest: since, latest,
        bring: [{ item: phase === 'winter' ? 'fondant' : 'syrup (1:1)', count: 1, unit: phase === 'winter' ? 'block' : 'feeder', each: true }],
      }];
    });
  },
};

function lowWords({ rules, massUnit }: Parameters<NeedRule['find']>[0]): string {
  return mass(gramsFrom(numberRule(rules, 'stores.low'), 'lb'), massUnit);
}
