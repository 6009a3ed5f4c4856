import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { Found, NeedFacts, NeedRule, YardFacts } from './needRule.ts';
import { stretch } from './seasonDays.ts';

/** A yard whose counts are too old, too few, or none, while mites grow. */
export const mitesCount: NeedRule = {
  key: 'mitesCount',
  title: 'Mite counts',
  why: 'Mites are seen too late by eye; a wash of some colonies tells of the yard.',
  numbers: ['mites.holds', 'mites.colonies', 'mites.precision', 'mites.roundDays', 'needs.mites.from', 'mites.begins.dormant', 'needs.mites.act'],
  weather: 'open',
  page: '/needs/mites',
  tally: { answers: ['mites'], came: null },
  find: (facts) => facts.yards.flatMap((yard) => (yard.standing.length === 0 ? [] : countIn(yard, facts))),
};

function countIn(yard: YardFacts, facts: NeedFacts): Found[] {
  const { rules, today, ahead } = facts;
  const season = stretch(rules, 'needs.mites.from', 'mites.begins.dormant', today);
  if (today >= season.until || addDays(today, ahead) < season.from) return [];
  const { speaks, round, estimate, more } = yard.mites();
  const holds = numberRule(rules, 'mites.holds');
  const plan = Math.min(yard.standing.length, numberRule(rules, 'mites.colonies'));
  const ask = (because: string, from: typeof today, washes: number, episode: string, words: string): Found[] => {
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
