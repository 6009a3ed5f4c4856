import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { NeedRule } from './needRule.ts';

/** A yard whose registration is to be renewed soon, as written down on its page. */
export const renewal: NeedRule = {
  key: 'renewal',
  title: 'Registration of a yard',
  why: 'Many places ask for yards to be registered, and for how long differs.',
  numbers: ['attention.renewal'],
  weather: 'any',
  find: ({ yards, rules }) =>
    yards.flatMap((yard) => {
      const { renewal: by, registration } = yard.details;
      if (by === null) return [];
      return [{ yard, episode: by, act: 'Renew the registration of the yard', because: 'It is to be renewed, as you wrote it down.', detail: `${registration === null ? '' : `${registration}, `}by ${dayInWords(by)}`, earliest: addDays(by, -numberRule(rules, 'attention.renewal')), latest: by }];
    }),
};
