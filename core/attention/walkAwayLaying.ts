import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { layingTold, overtakenBy, type DueRule } from './dueRule.ts';

/** The queenless part of a walk-away split raises its own queen: eggs from day 21, verdict by day 28. */
export const walkAwayLaying: DueRule = {
  key: 'walkAwayLaying',
  numbers: ['attention.walkAway.from', 'attention.walkAway.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry) => {
      if (entry.kind !== 'split' || entry.body.newQueen !== 'walk-away' || queenlessPart(entry.body) !== record.state.id) return [];
      const [earliest, latest] = [addDays(entry.day, numberRule(rules, 'attention.walkAway.from')), addDays(entry.day, numberRule(rules, 'attention.walkAway.by'))];
      const done = layingTold(record.entries, earliest);
      return [{
        what: 'Look for eggs', reason: `Walk-away split on ${dayInWords(entry.day)}: it had to raise its own queen.`, cause: entry.id, earliest, latest,
        done, overtaken: overtakenBy(record, entry, done, true), untold: null,
      }];
    }),
};

/** The part that has to raise or take the new queen. */
export function queenlessPart<Id>({ queen, colony, child }: { readonly queen?: 'stays' | 'moves' | undefined; readonly colony: Id; readonly child: Id }): Id {
  return queen === 'moves' ? colony : child;
}
