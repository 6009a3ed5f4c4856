import type { NeedRule } from './needRule.ts';
import { requeenNumbers, requeenReasons } from './requeenReasons.ts';
import { isNear, stretch } from './seasonDays.ts';

/** Colonies whose queen is old or failing, or whose temper, mites or swarming speak for another stock, while queens can be replaced. */
export const requeen: NeedRule = {
  key: 'requeen',
  title: 'Requeening',
  why: 'Colonies with young queens have more brood, more honey and fewer swarm cells, and lose less in winter.',
  numbers: [...requeenNumbers, 'needs.requeen.from', 'needs.requeen.by'],
  weather: 'open',
  page: '/needs/queens',
  tally: { answers: ['requeen'], came: 'lost in winter' },
  find: (facts) => {
    const asked = stretch(facts.rules, 'needs.requeen.from', 'needs.requeen.by', facts.today);
    if (!isNear(asked, facts.today, facts.ahead)) return [];
    return facts.colonies.flatMap((colony) => {
      const [why, ...more] = requeenReasons(colony, facts);
      if (why === undefined) return [];
      const detail = more.length === 0 ? why.detail : `${why.detail}; also ${more.map(({ short }) => short).join(', ')}`;
      return [{ colony, episode: asked.until, act: 'Requeen it', because: why.because, detail, records: [why, ...more].flatMap(({ records }) => records), earliest: asked.from, latest: asked.until, bring: [{ item: 'mated queen', count: 1, unit: '', each: true }] }];
    });
  },
};
