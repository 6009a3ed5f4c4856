import { addDays, dayInWords, monthDayOf, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { overtakenBy, type DueRule } from './dueRule.ts';

/** Whether a treatment worked is told by a count after it. None is asked for after one that ends in winter, when hives stay shut. */
export const miteRecount: DueRule = {
  key: 'miteRecount',
  numbers: ['attention.recount.from', 'attention.recount.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry, at) => {
      if (entry.kind !== 'treatment') return [];
      const end = entry.body.endDate !== undefined && entry.body.endDate > entry.day ? entry.body.endDate : entry.day;
      if (inWinter(end, record.borders)) return [];
      const latest = addDays(end, numberRule(rules, 'attention.recount.by'));
      const letGo = addDays(latest, numberRule(rules, 'attention.letGo'));
      const again = record.entries.slice(at + 1).find((next) => next.kind === 'treatment' && next.day <= letGo);
      // A count long after, or after the next treatment, tells nothing of this one.
      const count = record.entries.find((next) => next.kind === 'mites' && next.day >= end && next.id !== entry.id && next.day <= letGo && (again === undefined || next.day <= again.day)) ?? null;
      const ended = overtakenBy(record, entry, count, false);
      const treated = count === null && again !== undefined ? { day: again.day, says: `Treated again on ${dayInWords(again.day)}.` } : null;
      return [{
        what: 'Count mites again', reason: `Treated with ${entry.body.activeIngredient}${end === entry.day ? ` on ${dayInWords(end)}` : ` until ${dayInWords(end)}`}.`, cause: entry.id,
        earliest: addDays(end, numberRule(rules, 'attention.recount.from')), latest, done: count, overtaken: treated ?? ended, untold: null,
      }];
    }),
};

function inWinter(day: Day, { seasonStart, winterStart }: Borders): boolean {
  const on = monthDayOf(day);
  return winterStart > seasonStart ? on >= winterStart || on < seasonStart : on >= winterStart && on < seasonStart;
}
