import { addDays, daysBetween, monthDayInWords } from '#shared/days.ts';
import { treatmentCautions } from '#core/mites/miteCautions.ts';
import { probabilityAbove } from '#core/mites/miteRate.ts';
import { judgeMites } from '#core/mites/miteThresholds.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { thresholdNumbers } from './miteNumbers.ts';
import type { ColonyFacts, Found, NeedFacts, NeedRule, YardFacts } from './needRule.ts';
import { chanceWords, countRecord, countWords, per100Words } from './needWords.ts';

/** A yard, or a single colony, at or above the threshold of the season, with no treatment since it was counted. */
export const mitesOver: NeedRule = {
  key: 'mitesOver',
  title: 'Mites over the threshold',
  why: 'Above the threshold a colony is harmed, and in late summer its winter bees are.',
  numbers: [...thresholdNumbers, 'mites.sure', 'mites.holds', 'mites.roundDays', 'needs.mites.act'],
  weather: 'label',
  caution: treatmentCautions.join(' '),
  page: '/needs/mites',
  tally: { answers: ['treatment'], came: 'lost in winter' },
  find: (facts) => facts.yards.flatMap((yard) => (isYardOver(yard) ? wholeYard(yard, facts) : yard.standing.flatMap((colony) => oneColony(colony, facts)))),
};

/** The yard's mean is above the threshold as surely as the house asks, and no treatment has answered its counts. */
export function isYardOver({ mites, standing }: YardFacts): boolean {
  const counted = standing.filter(({ count }) => count !== null);
  return counted.length > 0 && !counted.every(isAnswered) && mites().speaks === 'now' && mites().verdict === 'above';
}

/** A colony's own last count still speaks, reaches the threshold, and no treatment has answered it. */
export function isOver(colony: ColonyFacts, facts: NeedFacts): boolean {
  return countHolds(colony, facts) && wasOver(colony);
}

/** By the house's days: the same for a colony as for a yard, here as on the page of mites. */
export function countHolds({ count }: ColonyFacts, { rules, today }: NeedFacts): boolean {
  return count !== null && daysBetween(count.day, today) <= numberRule(rules, 'mites.holds');
}

/** The last count reached the threshold, however long ago, and no treatment has answered it. */
export function wasOver(colony: ColonyFacts): boolean {
  const { count, yard } = colony;
  return count !== null && judgeMites(count.per100, yard.mites().thresholds) === 'act' && !isAnswered(colony);
}

/** Treated since its last count, or by a treatment that was on then and went on after. */
function isAnswered({ count, treatments }: ColonyFacts): boolean {
  return count !== null && treatments.some(({ from, until }) => from >= count.day || until > count.day);
}

function wholeYard(yard: YardFacts, { rules }: NeedFacts): Found[] {
  const { estimate, round, thresholds } = yard.mites();
  if (round === null || estimate.rate === null) return [];
  const { rate, washed, above } = estimate;
  const mean = `${per100Words(rate.per100)} in 100 (${per100Words(rate.limits.lower)}–${per100Words(rate.limits.upper)}) in ${washed} of ${yard.standing.length} colonies`;
  return [{
    yard, episode: round[1], act: 'Treat the whole yard for mites', because: `The yard’s mean is above ${thresholds.treat} in 100 bees.`, detail: mean, times: yard.standing.length,
    records: [{ day: round[1], words: `${mean}${above === null ? '' : `; the chance that it is above is ${chanceWords(above)}`}.`, entry: null }],
    earliest: round[1], latest: addDays(round[1], numberRule(rules, 'needs.mites.act')),
  }];
}

function oneColony(colony: ColonyFacts, facts: NeedFacts): Found[] {
  const { count } = colony;
  if (count === null || !isOver(colony, facts)) return [];
  const { treat } = colony.yard.mites().thresholds;
  const [record] = countRecord(colony, facts);
  return [{
    colony, episode: count.day, act: 'Treat for mites', because: `The last count is at or above ${treat} in 100 bees.`, detail: `${countWords(count)}, on ${monthDayInWords(count.day)}`,
    records: record === undefined ? [] : [{ ...record, words: `${record.words} The chance that it is above ${treat} is ${chanceWords(probabilityAbove(count, treat))}.` }],
    earliest: count.day, latest: addDays(count.day, numberRule(facts.rules, 'needs.mites.act')),
  }];
}
