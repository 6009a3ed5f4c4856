import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { inYearWindow } from '#core/rules/yearWindow.ts';
import type { Found, NeedRule } from './needRule.ts';
import { dayInYear } from './seasonDays.ts';

/** Colonies that nobody looked into for longer than the time of the year allows. */
export const look: NeedRule = {
  key: 'look',
  title: 'Look',
  why: 'What is not looked at is found out too late: queens, swarms, disease, hunger.',
  numbers: ['needs.look.from', 'needs.look.until', 'space.swarm.from', 'space.swarm.until', 'space.swarm.look', 'needs.look.buildUp', 'needs.look.flow', 'needs.look.late', 'needs.look.lateFrom', 'needs.look.before'],
  weather: 'open',
  tally: { answers: ['inspection'], came: null },
  find: ({ colonies, rules, today, entryOf }) => {
    if (!inYearWindow(today, 'needs.look.from', 'needs.look.until', rules)) return [];
    const begins = dayInYear(rules, 'needs.look.from', today);
    const { days, because } = intervalOn(today, rules);
    return colonies.flatMap((colony): Found[] => {
      const { state } = colony;
      // A colony that has its own day for a look is not asked for twice.
      if (colony.dues.some(({ rule }) => lookRules.has(rule))) return [];
      const last = state.looks.at(-1)?.day ?? null;
      const began = state.origin === 'split' || state.start >= begins ? state.start : null;
      const since = last !== null && (began === null || last > began) ? last : began;
      const due = since === null || since < begins ? addDays(begins, days) : addDays(since, days);
      return [{
        colony, episode: last ?? state.start, act: 'Look into it', because, detail: last === null ? 'never looked into' : `last on ${dayInWords(last)}`,
        records: last === null ? [] : [{ day: last, words: `Last looked into on ${dayInWords(last)}.`, entry: entryOf(state.id, 'inspection', last) }], earliest: addDays(due, -numberRule(rules, 'needs.look.before')), latest: due,
      }];
    });
  },
};

const lookRules: ReadonlySet<string> = new Set(['walkAwayLaying', 'newQueenLaying', 'queenlessLaying', 'swarmCellsLook']);

function intervalOn(today: Day, rules: RuleValues): { readonly days: number; readonly because: string } {
  const swarm = inYearWindow(today, 'space.swarm.from', 'space.swarm.until', rules);
  const key = swarm ? 'space.swarm.look' : today >= dayInYear(rules, 'needs.look.lateFrom', today) ? 'needs.look.late' : today < dayInYear(rules, 'space.swarm.from', today) ? 'needs.look.buildUp' : 'needs.look.flow';
  const days = numberRule(rules, key);
  return { days, because: `${swarm ? 'In swarm season' : key === 'needs.look.late' ? 'Late in the season' : key === 'needs.look.flow' ? 'In summer' : 'In spring'} hives are looked into every ${days} days.` };
}
