import { addDays, dayInWords, monthDayInWords, type Day } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { thresholdNumbers } from './miteNumbers.ts';
import { countHolds, wasOver } from './mitesOver.ts';
import type { Found, NeedFacts, NeedRule, YardFacts } from './needRule.ts';
import { countRecord, countWords } from './needWords.ts';
import { lastInYear, stretch } from './seasonDays.ts';
import { winterBees } from './winterBees.ts';

/** A yard whose counts are too old, too few, or none, while mites grow; and a colony that was over the threshold when it was counted, longer ago than its yard. */
export const mitesCount: NeedRule = {
  key: 'mitesCount',
  title: 'Mite counts',
  why: 'Mites are seen too late by eye; a wash of some colonies tells of the yard.',
  numbers: [...new Set(['mites.holds', 'mites.colonies', 'mites.precision', 'mites.roundDays', 'needs.mites.from', 'needs.mites.act', ...thresholdNumbers, ...winterBees.numbers])],
  weather: 'open',
  page: '/needs/mites',
  tally: { answers: ['mites'], came: null },
  find: (facts) => {
    const { rules, today, ahead, yards } = facts;
    const season = stretch(rules, 'needs.mites.from', 'mites.begins.dormant', today);
    const counting = today < season.until && addDays(today, ahead) >= season.from;
    const since = lastInYear(rules, 'needs.mites.from', today);
    const treat = new Set(winterBees.find(facts).map(({ colony }) => colony));
    return yards.flatMap((yard) => {
      if (yard.standing.length === 0) return [];
      const whole = counting ? countIn(yard, season, facts) : [];
      return whole.length > 0 ? whole : overtaken(yard, since, facts).filter(({ colony }) => !treat.has(colony));
    });
  },
};

function countIn(yard: YardFacts, season: { readonly from: Day }, { rules }: NeedFacts): Found[] {
  const { speaks, round, estimate, more } = yard.mites();
  const holds = numberRule(rules, 'mites.holds');
  const plan = Math.min(yard.standing.length, numberRule(rules, 'mites.colonies'));
  const ask = (because: string, from: Day, washes: number, episode: string, words: string): Found[] => {
    const earliest = from < season.from ? season.from : from;
    return [{
      yard, episode, act: 'Count mites', because, detail: `${washes} of ${yard.standing.length} colonies`, times: washes, records: round === null ? [] : [{ day: round[1], words, entry: null }],
      earliest, latest: addDays(earliest, numberRule(rules, 'needs.mites.act')), bring: [{ item: 'mite wash kit', count: 1, unit: '', each: false }],
    }];
  };
  // A treatment asks for its own count; until then the old ones do not matter.
  if (yard.standing.some(({ dues }) => dues.some(({ rule }) => rule === 'miteRecount' || rule === 'treatmentOff'))) return [];
  if (round === null || round[1] < season.from) return ask('No mites were counted in the yard this season.', season.from, plan, season.from, round === null ? '' : `Last counted on ${dayInWords(round[1])}.`);
  if (speaks === 'now' && estimate.few && more > 0) return ask('Too few colonies were counted to tell of the yard.', round[1], Math.min(more, plan), round[1], `${estimate.washed} counted up to ${dayInWords(round[1])}.`);
  // What lies before a treatment tells nothing of now, and its own recount was let go.
  if (speaks === 'now' || speaks === 'never') return [];
  return ask(`The last counts are more than ${holds} days old.`, addDays(round[1], holds), plan, round[1], `Last counted on ${dayInWords(round[1])}, ${estimate.washed} of ${yard.standing.length} colonies.`);
}

/** Whose own count asked for a treatment until time overtook it: what was found is not forgotten, and not acted on as if it were new. */
function overtaken(yard: YardFacts, since: Day, facts: NeedFacts): Found[] {
  const { rules } = facts;
  const holds = numberRule(rules, 'mites.holds');
  return yard.standing.flatMap((colony) => {
    const { count, dues } = colony;
    if (count === null || count.day < since || countHolds(colony, facts) || !wasOver(colony) || dues.some(({ rule }) => rule === 'miteRecount' || rule === 'treatmentOff')) return [];
    const earliest = addDays(count.day, holds);
    return [{
      colony, episode: count.day, act: 'Count mites again', because: `The last count was at or above ${yard.mites().thresholds.treat} in 100 bees, is more than ${holds} days old, and nothing was given since.`, detail: `${countWords(count)}, on ${monthDayInWords(count.day)}`,
      records: countRecord(colony, facts), earliest, latest: addDays(earliest, numberRule(rules, 'needs.mites.act')), bring: [{ item: 'mite wash kit', count: 1, unit: '', each: false }],
    }];
  });
}
