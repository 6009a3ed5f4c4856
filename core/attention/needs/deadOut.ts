import { addDays, dayInWords } from '#shared/days.ts';
import { diseaseCaution } from '#core/stock/stockWords.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { Found, NeedRule } from './needRule.ts';

/** Hives of colonies that died or left, until somebody has looked them over. */
export const deadOut: NeedRule = {
  key: 'deadOut',
  title: 'Dead-out',
  why: 'An open dead-out is robbed, and what killed it is carried on.',
  numbers: ['needs.deadOut.by', 'needs.deadOut.until'],
  weather: 'any',
  caution: 'Brood that is sunken, ropy or foul-smelling: close the hive, take nothing from it, and call the bee inspector before doing anything. Foulbrood must be reported in most places.',
  account: ({ anyLost }) => anyLost,
  find: (facts) =>
    facts.lost.flatMap(({ state, day, yard }): Found[] => {
      if (!facts.unchecked.has(state.id)) return [];
      const sick = state.causes.includes('disease');
      return [{
        yard, ended: state, episode: day, act: 'Look at the dead-out and close it up', because: sick ? `Disease was written down. ${diseaseCaution}` : 'Its hive has not been looked over since it died or left.',
        detail: dayInWords(day), records: [{ day, words: `${state.label} ${state.how === 'lost' ? 'was found dead' : 'left its hive'} on ${dayInWords(day)}${state.causes.length === 0 ? '' : `: ${state.causes.join(', ')}`}.`, entry: state.endEntry }],
        earliest: day, latest: addDays(day, numberRule(facts.rules, 'needs.deadOut.by')),
      }];
    }),
};
