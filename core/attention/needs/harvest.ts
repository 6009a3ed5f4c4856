import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { ColonyFacts, NeedRule } from './needRule.ts';
import { isNear, stretch } from './seasonDays.ts';
import { supersOn, supersWords } from './supersOff.ts';

const times = [
  { from: 'needs.harvest.first', by: 'needs.harvest.firstBy', act: 'Look whether the supers are ripe, and take those that are', because: 'The main flow is over.' },
  { from: 'needs.harvest.last', by: 'needs.harvest.lastBy', act: 'Take off the last supers', because: 'The last flow is over, and the colonies are fed next.' },
] as const;

/** Supers that were on before a flow ended and have not been harvested since. */
export const harvest: NeedRule = {
  key: 'harvest',
  title: 'Harvest and supers off',
  why: 'A crop left on is treated with, fed into, or eaten.',
  numbers: [...times.flatMap(({ from, by }) => [from, by]), 'needs.harvest.early', 'needs.harvest.stays'],
  people: 2,
  weather: 'open',
  caution: 'A full super is heavy: take a helper, or go frame by frame. Honey is not for children under one year.',
  tally: { answers: ['harvest', 'supers off'], came: null },
  find: (facts) => {
    const { rules, today, ahead } = facts;
    return times.flatMap(({ from: fromKey, by, act, because }, at) => {
      const last = at === times.length - 1;
      // The last supers stay asked for; the first round gives way to the second.
      const asked = stretch(rules, fromKey, by, last ? addDays(today, -numberRule(rules, 'needs.harvest.stays')) : today);
      if (last ? addDays(today, ahead) < asked.from : !isNear(asked, today, ahead)) return [];
      // A crop of the last weeks before the first day is the main crop too.
      const early = addDays(asked.from, -numberRule(rules, 'needs.harvest.early'));
      return facts.colonies.flatMap((colony) => {
        if (supersOn(colony) === 0 || (!last && takenSince(colony, early))) return [];
        const taken = colony.state.harvests.at(-1);
        return [{
          colony, episode: asked.until, act, because, detail: supersWords(supersOn(colony)), records: taken === undefined ? [] : [{ day: taken.day, words: `Last harvested on ${dayInWords(taken.day)}.`, entry: facts.entryOf(colony.state.id, 'harvest', taken.day) }],
          earliest: asked.from, latest: asked.until, bring: [{ item: 'bee escape or blower', count: 1, unit: '', each: false }],
        }];
      });
    });
  },
};

function takenSince({ state }: ColonyFacts, since: Day): boolean {
  return state.harvests.some(({ day }) => day >= since);
}
