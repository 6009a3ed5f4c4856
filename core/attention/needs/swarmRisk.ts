import { addDays } from '#shared/days.ts';
import { counted } from '#shared/figures.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inYearWindow } from '#core/rules/yearWindow.ts';
import { swarmRisk as riskOf } from '#core/space/swarmRisk.ts';
import type { NeedRule } from './needRule.ts';

/** Colonies at high risk of swarming, to be looked into before the others. */
export const swarmRisk: NeedRule = {
  key: 'swarmRisk',
  title: 'Swarm risk',
  why: 'A colony can go from no sign to a swarm in 5 days, and takes half its bees with it.',
  numbers: [
    'space.risk.high', 'space.swarm.lookHigh', 'space.swarm.from', 'space.swarm.until', 'space.risk.season', 'space.risk.lastYear', 'space.risk.older', 'space.risk.full', 'space.risk.packed', 'space.risk.cells', 'space.risk.split',
    'space.full', 'space.packed', 'space.lookHolds', 'needs.look.before',
  ],
  weather: 'open',
  instead: ['look'],
  page: '/needs/space',
  tally: { answers: ['inspection', 'split'], came: 'swarmed' },
  account: ({ today, rules }) => inYearWindow(today, 'space.swarm.from', 'space.swarm.until', rules),
  find: (facts) =>
    facts.colonies.flatMap((colony) => {
      // Cells that were seen ask for their own look, and sooner.
      if (colony.dues.some(({ rule }) => rule === 'swarmCellsLook')) return [];
      const risk = riskOf(colony.state, colony.space());
      if (risk === null || risk.level !== 'high') return [];
      return [{
        colony, episode: risk.lastLook ?? risk.nextLook, act: 'Look for swarm cells', because: 'The risk of a swarm is high.', detail: counted(risk.points, 'point', 'points'),
        records: risk.lastLook === null ? [] : [{ day: risk.lastLook, words: risk.reasons.map(({ words }) => words).join(' '), entry: facts.entryOf(colony.state.id, 'inspection', risk.lastLook) }],
        earliest: addDays(risk.nextLook, -numberRule(facts.rules, 'needs.look.before')), latest: risk.nextLook,
      }];
    }),
};
