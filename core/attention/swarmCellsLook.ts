import { addDays, dayInWords } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { overtakenBy, type DueRule } from './dueRule.ts';

/** Swarm cells are sealed 8 days after the egg: the next look, a split, or the swarm itself answers within 7. */
export const swarmCellsLook: DueRule = {
  key: 'swarmCellsLook',
  numbers: ['attention.swarmCells.by'],
  find: (record, rules) =>
    record.entries.flatMap((entry, at) => {
      if (entry.kind !== 'inspection' || entry.body.queenCells !== 'swarm') return [];
      const later = record.entries.slice(at + 1);
      // A split on the same evening is the answer to what was seen.
      const done = later.find((next) => next.kind === 'split' || (next.kind === 'queen' && next.body.what === 'swarmed') || (next.kind === 'inspection' && next.day > entry.day)) ?? null;
      return [{
        what: 'Look again for swarm cells', reason: `Swarm cells were seen on ${dayInWords(entry.day)}.`, cause: entry.id,
        earliest: entry.day, latest: addDays(entry.day, numberRule(rules, 'attention.swarmCells.by')), done, overtaken: overtakenBy(record, entry, done, false), untold: null,
      }];
    }),
};
