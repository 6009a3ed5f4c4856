import { FaultError, refuse } from '#shared/faults.ts';
import { orderPlan } from '#core/order/orderPlan.ts';
import { houseRules, numberRule, ruleTrouble } from '#core/rules/houseRules.ts';
import { shedCounts } from '#core/stock/shedCounts.ts';
import type { ShedCount } from '#shared/contract/order.ts';
import type { Handlers } from './desk.ts';
import type { Book } from './openBook.ts';

type Names = 'order.plan' | 'stock.shed' | 'rules.list' | 'rules.set' | 'order.keep' | 'order.kept';

export const orderHandlers: Handlers<Names> = {
  'order.plan': async ({ target, confidence, source, hiveFrames, united }, context) => {
    const book = context.open();
    const { states, yardList, borders, rules } = await book.picture();
    const today = await book.today(context.options.now().day);
    const shed = await shedOf(book);
    return orderPlan(
      { target, confidence, source, hiveFrames, united, asOf: today, today },
      { states, yards: yardList, borders, rules, listed: houseRules(rules), stock: (item) => stockOf(shed, item) },
    );
  },
  'stock.shed': async (_, context) => shedOf(context.open()),
  'rules.list': async (_, context) => ({ rules: houseRules(await context.open().store.rules()) }),
  'rules.set': async ({ key, value }, context) => {
    const { store } = context.open();
    if (value !== null) {
      const trouble = ruleTrouble(key, value);
      if (trouble !== null) throw new FaultError(refuse('refused', trouble, { field: key, mend: 'The rule stays as it was.' }));
    }
    await store.keepRule(key, value);
    return { rules: houseRules(await store.rules()) };
  },
  'order.keep': async (choices, context) => {
    await context.open().store.keepSettings(new Map([['order', JSON.stringify(choices)]]));
    return {};
  },
  'order.kept': async (_, context) => {
    const book = context.open();
    const kept = (await book.store.settings()).get('order');
    if (kept !== undefined) return JSON.parse(kept) as { target: number | null; confidence: number; source: 'package' | 'nuc'; hiveFrames: 8 | 10 };
    return { target: null, confidence: numberRule(await book.store.rules(), 'order.confidence'), source: 'package', hiveFrames: 10 };
  },
};

export async function shedOf(book: Book): Promise<ShedCount> {
  const { names } = await book.picture();
  const entries = (await book.store.entries({ kinds: ['stock', 'purchase'] })).filter(({ struck }) => struck === null);
  return shedCounts(entries.map(({ entry }) => entry), names);
}

/** What the stock rows say of an item; null where none names it. */
export function stockOf(shed: ShedCount, item: string): { shed: number; yards: number } | null {
  const found = shed.items.find((one) => one.item === item);
  if (found === undefined) return null;
  const inShed = found.counts.find((one) => one.place === 'shed')?.count ?? 0;
  return { shed: inShed, yards: found.total - inShed };
}
