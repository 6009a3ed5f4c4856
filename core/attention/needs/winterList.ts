import { addDays, type Day } from '#shared/days.ts';
import { winterWorkIn } from '#core/stores/winterList.ts';
import { dayInYear } from './seasonDays.ts';
import type { Found, NeedRule, YardFacts } from './needRule.ts';

const items = [
  { item: 'reduce', by: 'needs.winter.reduce', act: 'Reduce the entrances against mice', because: 'It is not written down that entrances were made small.', bring: 'entrance reducer or mouse guard' },
  { item: 'wrap', by: 'needs.winter.wrap', act: 'Wrap the hives', because: 'It is not written down that hives were wrapped.', bring: 'winter wrap' },
] as const;

/** What a yard is made ready with for winter. The book has no entry for it: a note or work of the yard that names it answers. */
export const winterList: NeedRule = {
  key: 'winterList',
  title: 'Winter list',
  why: 'Mice move in with the first frosts, and wind takes warmth through the winter.',
  numbers: ['needs.winter.from', 'needs.winter.reduce', 'needs.winter.wrap'],
  weather: 'any',
  page: '/needs/stores',
  find: ({ yards, rules, today, ahead }) => {
    const from = dayInYear(rules, 'needs.winter.from', today);
    if (addDays(today, ahead) < from) return [];
    return yards.flatMap((yard) => (yard.standing.length === 0 ? [] : items.flatMap((one) => asked(yard, one, from, dayInYear(rules, one.by, today)))));
  },
};

function asked(yard: YardFacts, { item, act, because, bring }: (typeof items)[number], from: Day, by: Day): Found[] {
  if (yard.said.some(({ day, words }) => day >= from && !isOfWhatLacks(words) && winterWorkIn(words).includes(item))) return [];
  return [{ yard, episode: `${item} ${by}`, act, because, detail: yard.standing.length === 1 ? '1 hive' : `${yard.standing.length} hives`, times: yard.standing.length, earliest: from, latest: by, bring: [{ item: bring, count: yard.standing.length, unit: '', each: true }] }];
}

/** Notes also say what was not done, or is to be done; then the question stands. */
function isOfWhatLacks(words: string): boolean {
  return /\b(no|not|none|never|without|lack(s|ing)?|missing|yet|still|needs?|needed|should|must|will|to do|order|buy|bring|next|later|tomorrow)\b|n[’']t\b/i.test(words);
}
