import { afterAll, beforeAll, expect, test } from 'vitest';
import { contract } from '#shared/contract/contract.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeAll(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await at.ask('book.create', { name: 'Ossar Valley' });
});
afterAll(async () => {
  await at.desk.close();
  scratch.remove();
});

const changed = async () => (await at.ask('rules.book', {})).rooms.flatMap(({ rules }) => rules).filter((rule) => rule.changed).map(({ key }) => key);

test('a heading is set back as a whole, and the other headings stay as they are', async () => {
  expect(contract['rules.book'].output.safeParse(await at.ask('rules.book', {})).success).toBe(true);
  await at.ask('rules.set', { key: 'losses.few', value: 12 });
  await at.ask('rules.set', { key: 'losses.pairs', value: 4 });
  await at.ask('rules.set', { key: 'order.deeps', value: 3 });
  expect(await changed()).toEqual(['losses.few', 'losses.pairs', 'order.deeps']);
  // The parts of a hive are rules of the order, and stand under a heading of their own.
  expect(await at.ask('rules.reset', { room: 'order' })).toEqual({ reset: [] });
  expect(await at.ask('rules.reset', { room: 'losses' })).toEqual({ reset: ['losses.few', 'losses.pairs'] });
  expect(await changed()).toEqual(['order.deeps']);
});

test('a heading that is not there is refused, and nothing is set back', async () => {
  expect(await at.desk.call('rules.reset', { room: 'weather' })).toMatchObject({ ok: false, code: 'refused', sentence: 'There are no house rules under “weather”.' });
  expect(await changed()).toEqual(['order.deeps']);
});

test('a rule kept at its default is not a changed one', async () => {
  await at.ask('rules.set', { key: 'order.deeps', value: 2 });
  expect(await changed()).toEqual([]);
});
