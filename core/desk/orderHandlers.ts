import { FaultError, refuse } from '#shared/faults.ts';
import { houseRules, numberRule, ruleTrouble } from '#core/rules/houseRules.ts';
import { hiveRules } from '#core/stock/hives.ts';
import type { Handlers } from './desk.ts';

type Names = 'rules.list' | 'rules.set' | 'order.keep' | 'order.kept';

export const orderHandlers: Handlers<Names> = {
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
    const rules = await book.store.rules();
    return { target: null, confidence: numberRule(rules, 'order.confidence'), source: 'package', hiveFrames: hiveRules(rules).usual };
  },
};
