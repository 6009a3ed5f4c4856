import { addDays, dayInWords, daysBetween, type Day } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inYearWindow } from '#core/rules/yearWindow.ts';
import type { ColonyFacts, NeedRule } from './needRule.ts';
import { isWeakNow } from './weakAutumn.ts';

/** Colonies whose last look found neither eggs nor queen, and that raise or were given none. */
export const noEggs: NeedRule = {
  key: 'noEggs',
  title: 'No laying queen',
  why: 'Without a laying queen a colony dwindles, and after some weeks its workers lay drones.',
  numbers: ['needs.noEggs.doubt', 'needs.noEggs.within', 'attention.queenless.by', 'attention.letGo', 'needs.look.from', 'needs.look.until'],
  weather: 'open',
  instead: ['look', 'requeen'],
  tally: { answers: ['inspection', 'requeen', 'combine', 'queen'], came: 'lost in winter' },
  find: (facts) => {
    const { rules, today } = facts;
    if (!inYearWindow(today, 'needs.look.from', 'needs.look.until', rules)) return [];
    const doubt = numberRule(rules, 'needs.noEggs.doubt');
    const young = numberRule(rules, 'attention.queenless.by');
    return facts.colonies.flatMap((colony) => {
      const { state, look } = colony;
      if (look === null || look.eggs !== false || look.queenSeen === true || daysBetween(look.day, today) > numberRule(rules, 'attention.letGo')) return [];
      // One that is too weak to winter is united, which is asked for by itself.
      if (isWeakNow(colony, facts)) return [];
      // A young queen has her own day, and what asks for it is in the list already.
      if (colony.dues.some(({ rule }) => laying.has(rule)) || changedLately(colony, addDays(look.day, -young))) return [];
      const seen = lastLaying(colony);
      const doubted = addDays(seen ?? state.start, doubt);
      const long = today >= doubted;
      const soon = addDays(look.day, numberRule(rules, 'needs.noEggs.within'));
      return [{
        colony, episode: look.day, act: long ? 'Look for drone brood in worker cells; requeen or unite' : 'Look for eggs again',
        because: long ? `No signs of a laying queen for ${doubt} days or more: laying workers or a drone layer are suspected.` : 'Neither eggs nor queen at the last look.',
        detail: seen === null ? 'never seen laying' : `last seen laying on ${dayInWords(seen)}`,
        records: [{ day: look.day, words: `No eggs on ${dayInWords(look.day)}${seen === null ? '' : `; last signs of a laying queen on ${dayInWords(seen)}`}.`, entry: facts.entryOf(state.id, 'inspection', look.day) }],
        // What is only asked for once the days of doubt are over is not overdue on its first day.
        earliest: look.day, latest: long && doubted > soon ? doubted : soon,
      }];
    });
  },
};

const laying: ReadonlySet<string> = new Set(['walkAwayLaying', 'newQueenLaying', 'queenlessLaying']);

function changedLately({ state, space }: ColonyFacts, since: Day): boolean {
  return state.start >= since || state.reigns.some(({ since: from, until }) => from >= since || (until !== null && until >= since)) || space().splitDays.some((split) => split >= since);
}

function lastLaying({ state }: ColonyFacts): Day | null {
  return state.looks.findLast(({ eggs, queenSeen }) => eggs === true || queenSeen === true)?.day ?? null;
}
