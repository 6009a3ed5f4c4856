import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { combsHold } from '#core/stores/combsHold.ts';
import { mass, storesPhase, storesToday, winterPlace } from '#core/stores/storesToday.ts';
import { winterTarget } from '#core/stores/storesVerdict.ts';
import { volumeIn } from '#shared/units.ts';
import { dayInWords } from '#shared/days.ts';
import type { NeedRule } from './needRule.ts';
import { restRecord } from './needWords.ts';

/** Colonies short of the winter's target while heavy syrup can still be given. */
export const storesAutumn: NeedRule = {
  key: 'storesAutumn',
  title: 'Stores short in autumn',
  why: 'What is short of the winter’s stores must be fed while bees still ripen syrup.',
  numbers: ['stores.place', 'stores.target.north', 'stores.target.middle', 'stores.target.south', 'stores.slack', 'stores.holds', 'stores.frame.deep', 'stores.gain.heavy', 'stores.gain.light', 'stores.autumnFrom', 'needs.feed.from', 'stores.feedBy'],
  weather: 'quick',
  page: '/needs/stores',
  tally: { answers: ['feed'], came: 'lost in winter' },
  // What the combs hold goes by the boxes that a hive stands on.
  account: ({ today, rules }) => storesPhase(today, rules) === 'autumn',
  find: (facts) => {
    const { rules, today, massUnit } = facts;
    if (storesPhase(today, rules) !== 'autumn') return [];
    const from = inSeasonOf(today, 'needs.feed.from', rules);
    const by = inSeasonOf(today, 'stores.feedBy', rules);
    return facts.colonies.flatMap((colony) => {
      const stores = storesToday(colony.state, { day: today, rules, unit: massUnit, holds: combsHold(colony.space().boxes, colony.state, rules) });
      if (stores.say !== 'feed' || stores.told === null || stores.feed === null) return [];
      const unit = massUnit === 'kg' ? 'l' : 'gal';
      const volume = Math.round(volumeIn(stores.feed.volume, unit));
      return [{
        colony, episode: by, act: 'Feed heavy syrup', because: `Short of the winter’s ${mass(winterTarget(winterPlace(rules), rules), massUnit)}; heavy syrup is fed until ${dayInWords(by)}.`, detail: `${mass(stores.amount, massUnit)} short, ${volume} ${unit}`,
        records: restRecord(colony, stores, facts), earliest: stores.told.day > from ? stores.told.day : from, latest: by, bring: [{ item: 'heavy syrup (2:1)', count: volume, unit, each: true }],
      }];
    });
  },
};
