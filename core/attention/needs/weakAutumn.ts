import { uniteCandidates } from '#core/stores/uniteWeak.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf, inYearWindow } from '#core/rules/yearWindow.ts';
import { latestStrength } from '#core/space/latestLook.ts';
import type { ColonyFacts, NeedFacts, NeedRule } from './needRule.ts';
import { restRecord } from './needWords.ts';

/** Colonies too weak to winter alone, each with a partner of its yard. */
export const weakAutumn: NeedRule = {
  key: 'weakAutumn',
  title: 'Weak in autumn',
  why: 'A small cluster cannot keep warm; united it strengthens another.',
  numbers: ['stores.winterFrames', 'stores.partnerFrames', 'stores.unite.from', 'stores.unite.until', 'space.lookHolds'],
  weather: 'open',
  page: '/needs/stores',
  caution: 'Look at its brood first: a colony that is weak from foulbrood is not united. Suspected foulbrood is reported to the bee inspector in most places before anything is done.',
  tally: { answers: ['combine'], came: 'lost in winter' },
  find: (facts) => {
    const by = inSeasonOf(facts.today, 'stores.unite.until', facts.rules);
    return facts.yards.flatMap(({ standing }) => {
      const byId = new Map(standing.map((colony) => [colony.state.id, colony]));
      return uniteCandidates(standing.map((colony) => ({ state: colony.state, splitDays: colony.space().splitDays })), facts.today, facts.rules).flatMap((weak) => {
        const colony = byId.get(weak.colony);
        // A strong colony without a queen is asked for by the rule of laying queens.
        if (colony === undefined || !isWeakNow(colony, facts)) return [];
        const partner = weak.partner === null ? undefined : byId.get(weak.partner.colony);
        return [{
          colony, episode: by, act: 'Unite it with a stronger colony', because: 'Too few bees to winter on.',
          detail: `${weak.bees} frames, ${partner === undefined ? 'no partner in the yard' : `into ${partner.state.label}`}`,
          records: [...restRecord(colony, weak, facts), ...(partner === undefined || weak.partner === null ? [] : restRecord(partner, { ...weak.partner, reason: `${partner.state.label}: ${weak.partner.reason}` }, facts))],
          earliest: weak.rests.day, latest: by, bring: [{ item: 'sheet of newspaper', count: 1, unit: '', each: true }],
        }];
      });
    });
  },
};

/** In the weeks of uniting, with fewer bees than the house winters on, by a look that still holds. */
export function isWeakNow({ state, space }: ColonyFacts, { today, rules }: NeedFacts): boolean {
  if (!inYearWindow(today, 'stores.unite.from', 'stores.unite.until', rules)) return false;
  const strength = latestStrength(state, space());
  return strength !== null && strength.past === null && strength.look.framesBees < numberRule(rules, 'stores.winterFrames');
}
