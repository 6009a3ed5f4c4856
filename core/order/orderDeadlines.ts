import type { Offer } from '#shared/contract/offers.ts';
import type { OrderDeadline, PlacedOrder } from '#shared/contract/placed.ts';
import { dayInWords, daysBetween, type Day } from '#shared/days.ts';
import { itemName } from '#core/stock/itemName.ts';
import { offeredWords } from './offerCheck.ts';
import type { KeptPlan } from '#shared/contract/decision.ts';

/** Days before a seller's last day on which an evening begins to speak of it. */
const planned = 90;
const unplanned = 30;

/** What the last kept plan orders and the book shows no order of yet; without a plan, sellers of bees who close within `early` days. */
export function orderDeadlines(plans: readonly KeptPlan[], offers: readonly Offer[], orders: readonly PlacedOrder[], today: Day, early = unplanned): OrderDeadline[] {
  const plan = plans.filter(({ decision }) => decision.spring > today && decision.answer !== null).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.key < b.key ? -1 : 1)).at(-1);
  const lines = plan === undefined ? withoutPlan(offers, today) : ofPlan(plan, orders);
  return lines
    .map(({ what, seller, orderBy, note }) => ({ seller, orderBy, days: daysBetween(today, orderBy), what, note }))
    .filter(({ days }) => days >= 0 && days <= (plan === undefined ? early : planned))
    .toSorted((a, b) => a.days - b.days)
    .map(({ seller, orderBy, days, what, note }) => ({
      seller, orderBy, days, what,
      sentence: `${what.charAt(0).toUpperCase()}${what.slice(1)} from ${seller}: order by ${dayInWords(orderBy)}, ${days === 0 ? 'today is the last day' : `${days} ${days === 1 ? 'day' : 'days'} left`}${note}.`,
    }));
}

interface Line {
  readonly what: string;
  readonly seller: string;
  readonly orderBy: Day;
  readonly note: string;
}

function ofPlan({ day, decision }: KeptPlan, orders: readonly PlacedOrder[]): Line[] {
  const { answer } = decision;
  if (answer === null) return [];
  const ordered = (seller: string, item: string) =>
    orders.filter((one) => one.day >= day && one.seller === seller && one.item === item).reduce((sum, { quantity }) => sum + quantity, 0);
  const bees = answer.bees.flatMap(({ seller, kind, words, quantity, orderBy }): Line[] => {
    if (seller === null) return [];
    const left = quantity - ordered(seller, beeItem(kind));
    return left > 0 ? [{ what: `${left}${/^\d/.test(words) ? '\u00a0×' : ''} ${words}`, seller, orderBy, note: '' }] : [];
  });
  const equipment = new Map<string, Line>();
  for (const { item, packs } of answer.equipment) {
    for (const { seller, packSize, packs: number, orderBy } of packs) {
      if (packSize * number > ordered(seller, item)) equipment.set(`${seller}|${orderBy}`, { what: 'equipment', seller, orderBy, note: '' });
    }
  }
  return [...bees, ...equipment.values()];
}

function withoutPlan(offers: readonly Offer[], _: Day): Line[] {
  return offers.flatMap(({ what, seller, orderBy }): Line[] => (what.kind === 'equipment' ? [] : [{ what: offeredWords(what), seller, orderBy, note: '; no plan is kept yet' }]));
}

/** The item of a purchase row for bees on offer. */
export function beeItem(kind: 'package' | 'nuc' | 'queen' | 'colony'): string {
  return kind === 'colony' ? itemName('full colony') : kind;
}
