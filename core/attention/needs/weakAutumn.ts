import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { uniteCandidates } from '#core/stores/uniteWeak.ts';
import type { NeedRule } from './needRule.ts';
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
        if (colony === undefined) return [];
        const partner = weak.partner === null ? undefined : byId.get(weak.partner.colony);
        return [{
          colony, episode: by, act: weak.queenless ? 'Unite it, or give it a queen' : 'Unite it with a stronger colony', because: weak.queenless ? 'No laying queen so late in the year.' : 'Too few bees to winter on.',
          detail: `${weak.bees} frames, ${partner === undefined ? 'no partner in the yard' : `into ${partner.state.label}`}`,
          records: [...restRecord(colony, weak, facts), ...(partner === undefined || weak.partner === null ? [] : restRecord(partner, { ...weak.partner, reason: `${partner.state.label}: ${weak.partner.reason}` }, facts))],
          earliest: weak.rests.day, latest: by, bring: [{ item: 'sheet of newspaper', count: 1, unit: '', each: true }],
        }];
      });
    });
  },
};
