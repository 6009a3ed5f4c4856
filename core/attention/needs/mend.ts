import { countedItems } from '#shared/itemWords.ts';
import { isNear, stretch } from './seasonDays.ts';
import type { NeedRule } from './needRule.ts';

/** Equipment that waits to be mended, in the months when there is time. */
export const mend: NeedRule = {
  key: 'mend',
  title: 'Equipment to mend',
  why: 'What is broken in May was broken in January.',
  numbers: ['needs.mend.from', 'needs.mend.by'],
  weather: 'any',
  page: '/stock',
  account: ({ rules, today, ahead }) => isNear(stretch(rules, 'needs.mend.from', 'needs.mend.by', today), today, ahead),
  find: (facts) => {
    const { rules, today, ahead } = facts;
    const asked = stretch(rules, 'needs.mend.from', 'needs.mend.by', today);
    if (!isNear(asked, today, ahead)) return [];
    const { toMend } = facts;
    const pieces = toMend.reduce((sum, { count }) => sum + count, 0);
    if (pieces === 0) return [];
    return [{ episode: asked.until, act: 'Mend equipment', because: 'Before the season all of it should be fit for use.', detail: toMend.map(({ item, count }) => countedItems(count, item)).join(', '), times: pieces, earliest: asked.from, latest: asked.until }];
  },
};
