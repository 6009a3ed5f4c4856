import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { layingTold, overtakenBy, type DueRule } from './dueRule.ts';

/** A colony whose queen went missing raises another: first look for eggs from day 21, no later than day 28. */
export const queenlessLaying: DueRule = {
  key: 'queenlessLaying',
  numbers: ['attention.queenless.from', 'attention.queenless.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry) => {
      if (entry.kind !== 'queen' || entry.body.what !== 'missing') return [];
      const [earliest, latest] = [addDays(entry.day, numberRule(rules, 'attention.queenless.from')), addDays(entry.day, numberRule(rules, 'attention.queenless.by'))];
      const done = layingTold(record.entries, earliest);
      return [{
        what: 'Look for eggs, or give it a queen', reason: `The queen was missing on ${dayInWords(entry.day)}.`, cause: entry.id, earliest, latest,
        done, overtaken: overtakenBy(record, entry, done, true), untold: null,
      }];
    }),
};
