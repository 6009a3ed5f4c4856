import { FaultError, refuse } from '#shared/faults.ts';
import { ruleBook } from '#core/rules/ruleBook.ts';
import type { Handlers } from './desk.ts';

export const ruleHandlers: Handlers<'rules.book' | 'rules.reset'> = {
  'rules.book': async (_, context) => ruleBook(await context.open().store.rules()),
  'rules.reset': async ({ room }, context) => {
    const { store } = context.open();
    const found = ruleBook(await store.rules()).rooms.find(({ key }) => key === room);
    if (found === undefined) throw new FaultError(refuse('refused', `There are no house rules under “${room}”.`, { field: 'room', mend: 'Every rule stays as it was.' }));
    const reset = found.rules.filter(({ changed }) => changed).map(({ key }) => key);
    for (const key of reset) await store.keepRule(key, null);
    return { reset };
  },
};
