import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { storesToday } from '#core/stores/storesToday.ts';
import { latestOf } from './needWords.ts';
import type { ColonyFacts, Found, NeedFacts, NeedRule, YardFacts } from './needRule.ts';
import { isNear, stretch } from './seasonDays.ts';

/** In autumn colonies of whose stores nothing tells; in winter yards that nobody has been to for weeks. */
export const heft: NeedRule = {
  key: 'heft',
  title: 'Hefting',
  why: 'A light hive is found by lifting it, without opening it.',
  numbers: ['needs.heft.every', 'needs.heft.from', 'needs.heft.until', 'needs.heft.within', 'needs.heft.autumn', 'needs.heft.before', 'stores.feedBy', 'stores.holds', 'stores.frame.deep'],
  weather: 'any',
  page: '/needs/stores',
  find: (facts) => {
    const { rules, today, ahead } = facts;
    const winter = stretch(rules, 'needs.heft.from', 'needs.heft.until', today);
    if (isNear(winter, today, ahead)) return facts.yards.flatMap((yard) => winterRound(yard, winter.from, facts));
    const autumn = stretch(rules, 'needs.heft.autumn', 'stores.feedBy', today);
    return isNear(autumn, today, ahead) ? facts.colonies.flatMap((colony) => notTold(colony, autumn, facts)) : [];
  },
};

function winterRound(yard: YardFacts, from: Day, { rules }: NeedFacts): Found[] {
  if (yard.standing.length === 0) return [];
  const last = latestOf(yard.lastVisit, ...yard.standing.map(({ state }) => state.storesWeights.at(-1)?.day));
  const due = last === null ? from : addDays(last, numberRule(rules, 'needs.heft.every'));
  const earliest = due < from ? from : due;
  return [{
    yard, episode: earliest, act: 'Heft the hives', because: `In winter hives are hefted every ${numberRule(rules, 'needs.heft.every')} days; stores go fastest toward spring.`, detail: last === null ? 'never visited' : `last there on ${dayInWords(last)}`, times: yard.standing.length,
    records: last === null ? [] : [{ day: last, words: `Last visit on ${dayInWords(last)}.`, entry: null }], earliest, latest: addDays(earliest, numberRule(rules, 'needs.heft.within')),
  }];
}

function notTold(colony: ColonyFacts, { from, until }: { readonly from: Day; readonly until: Day }, { rules, today, massUnit }: NeedFacts): Found[] {
  const { say, reason, told } = storesToday(colony.state, { day: today < from ? from : today, rules, unit: massUnit }, 'autumn');
  if (say !== 'look first' && say !== 'not told') return [];
  return [{
    colony, episode: until, act: 'Weigh or heft it', because: 'Nothing tells of its stores for winter.', detail: told === null ? 'never told' : `last on ${dayInWords(told.day)}`,
    records: told === null ? [] : [{ day: told.day, words: reason, entry: null }], earliest: from, latest: addDays(until, -numberRule(rules, 'needs.heft.before')),
  }];
}
