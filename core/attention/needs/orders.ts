import { addDays } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { NeedRule } from './needRule.ts';

/** Sellers' last days for what a kept plan orders, or for bees on offer where no plan is kept. */
export const orders: NeedRule = {
  key: 'orders',
  title: 'Orders',
  why: 'A seller who has closed leaves spring without bees.',
  numbers: ['needs.orders.before'],
  weather: 'any',
  page: '/orders',
  find: ({ deadlines, rules }) =>
    deadlines.map(({ orderBy, seller, sentence }) => ({ episode: `${seller} ${orderBy} ${sentence.split(' from ')[0] ?? ''}`, act: `Order from ${seller}`, because: 'Its last day is near.', detail: sentence, earliest: addDays(orderBy, -numberRule(rules, 'needs.orders.before')), latest: orderBy })),
};
