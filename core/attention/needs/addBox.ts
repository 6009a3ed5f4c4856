import { addDays } from '#shared/days.ts';
import { percent } from '#shared/figures.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inYearWindow } from '#core/rules/yearWindow.ts';
import { spaceNeed } from '#core/space/spaceNeed.ts';
import type { NeedFacts, NeedRule } from './needRule.ts';
import { restRecord } from './needWords.ts';

/** Colonies whose bees cover the house's share of their combs. */
export const addBox: NeedRule = {
  key: 'addBox',
  title: 'Box or super',
  why: 'A colony without room prepares to swarm, or has nowhere to put the crop.',
  numbers: ['space.full', 'space.lookHolds', 'space.from', 'space.until', 'needs.box.within', 'order.deeps'],
  weather: 'quick',
  page: '/needs/space',
  tally: { answers: ['supers on', 'split'], came: 'swarmed' },
  account: inSeason,
  find: (facts) => {
    if (!inSeason(facts)) return [];
    const within = numberRule(facts.rules, 'needs.box.within');
    return facts.colonies.flatMap((colony) => {
      const need = spaceNeed(colony.state, colony.space());
      if (need.say !== 'add' || need.add === null || need.look === null || need.bees === null || need.room === null) return [];
      const { box, count } = need.add;
      const item = box === 'deep' ? 'deep box with combs' : 'medium super with combs';
      return [{
        colony, episode: need.look, act: box === 'deep' ? 'Add a deep box' : 'Add a super', because: `Bees cover at least ${percent(numberRule(facts.rules, 'space.full'))} of the combs.`,
        detail: `${percent(need.bees / need.room)} covered${count > 1 ? `, ${count}` : ''}`, records: restRecord(colony, need, facts), earliest: need.look, latest: addDays(need.look, within), bring: [{ item, count, unit: '', each: true }],
      }];
    });
  },
};

function inSeason({ today, rules }: Pick<NeedFacts, 'today' | 'rules'>): boolean {
  return inYearWindow(today, 'space.from', 'space.until', rules);
}
