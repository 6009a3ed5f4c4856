import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { overtakenBy, type DueRule } from './dueRule.ts';

/**
 * A treatment with a last day is taken off then. The book has no entry for that, so once somebody was there on or after
 * that day, or the day is long past, it says just that.
 */
export const treatmentOff: DueRule = {
  key: 'treatmentOff',
  numbers: ['attention.treatmentOff.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry) => {
      if (entry.kind !== 'treatment') return [];
      const { endDate, activeIngredient } = entry.body;
      if (endDate === undefined || endDate <= entry.day) return [];
      const visit = record.entries.find((next) => next.day >= endDate && next.id !== entry.id && 'colony' in next.body && next.body.colony !== undefined);
      return [{
        what: `Take off the ${activeIngredient}`, reason: `Treated on ${dayInWords(entry.day)} until ${dayInWords(endDate)}.`, cause: entry.id,
        earliest: endDate, latest: addDays(endDate, numberRule(rules, 'attention.treatmentOff.by')), done: null, overtaken: overtakenBy(record, entry, visit ?? null, false),
        untold: visit === undefined ? null : `The book has no entry for taking a treatment off; the first entry from its last day on is of ${dayInWords(visit.day)}.`,
      }];
    }),
};
