import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { layingTold, overtakenBy, type DueRecord, type DueRule } from './dueRule.ts';
import { queenlessPart } from './walkAwayLaying.ts';

/** A mated queen that was given, or came with a package: eggs by day 7 to 10. */
export const newQueenLaying: DueRule = {
  key: 'newQueenLaying',
  numbers: ['attention.newQueen.from', 'attention.newQueen.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry) => {
      const came = cameWords(entry, record);
      if (came === null) return [];
      const [earliest, latest] = [addDays(entry.day, numberRule(rules, 'attention.newQueen.from')), addDays(entry.day, numberRule(rules, 'attention.newQueen.by'))];
      const done = layingTold(record.entries, earliest);
      return [{ what: 'Look whether the new queen lays', reason: `${came} on ${dayInWords(entry.day)}.`, cause: entry.id, earliest, latest, done, overtaken: overtakenBy(record, entry, done, true), untold: null }];
    }),
};

function cameWords(entry: Entry, { state }: DueRecord): string | null {
  switch (entry.kind) {
    case 'requeen':
      return 'Requeened';
    case 'install':
      return entry.body.origin === 'package' ? 'Package hived with its queen' : null;
    case 'split':
      return entry.body.newQueen === 'mated' && queenlessPart(entry.body) === state.id ? 'Given a mated queen with the split' : null;
    default:
      return null;
  }
}
