import { winterBees } from './winterBees.ts';
import { mitesOver } from './mitesOver.ts';
import type { ColonyFacts, NeedRule } from './needRule.ts';

/** Supers that are on where a treatment is asked for: most labels want them off. */
export const supersOff: NeedRule = {
  key: 'supersOff',
  title: 'Supers off before a treatment',
  why: 'Most treatments may not be in the hive with honey that is to be eaten.',
  numbers: [],
  people: 2,
  weather: 'quick',
  caution: 'The label says whether supers may be on. A full super weighs as much as a person should lift alone, or more: take a helper, or go frame by frame.',
  find: (facts) => {
    const treated = [...mitesOver.find(facts), ...winterBees.find(facts)];
    return treated.flatMap(({ colony, yard, episode, earliest, latest }) => {
      const colonies = colony !== undefined ? [colony] : facts.colonies.filter((one) => one.yard.yard.id === yard?.yard.id);
      return colonies.filter((one) => supersOn(one) > 0).map((one) => ({
        colony: one, episode, act: 'Take the supers off first, or choose what the label allows with them', because: 'A treatment is asked for, and supers are on.', detail: supersWords(supersOn(one)), earliest, latest,
        records: [], bring: [{ item: 'bee escape or blower', count: 1, unit: '', each: false }],
      }));
    });
  },
};

export function supersOn({ state: { supers } }: ColonyFacts): number {
  return supers.deep + supers.medium + supers.shallow;
}

export function supersWords(count: number): string {
  return count === 1 ? '1 super' : `${count} supers`;
}
