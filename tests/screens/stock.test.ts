import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow({ at: '/stock', ...options }));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const demo: WindowOptions = {
  first: async (desk) => {
    await desk('book.demo', { which: 'ossar' });
  },
};

/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });
const table = (page: Page, name: string) => page.getByRole('table', { name });

test('a house rule is changed in its place, with its source beside it, and set back', async () => {
  const opened = await open({ ...demo, at: '/orders' });
  const { page } = opened;
  const rules = margin(page);
  await rules.getByText(/^Show the \d+ rules$/).click();
  const rule = rules.getByRole('listitem').filter({ hasText: 'The day on which the target counts' });
  await rule.waitFor();
  expect(await words(rule)).toContain('common practice, no source');
  await rule.getByRole('button', { name: 'Change (The day on which the target counts)' }).press('Enter');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('10 June');
  await page.keyboard.press('Enter');
  await rule.getByText('Type month and day as MM-DD').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('06-10');
  await page.keyboard.press('Enter');
  await soon(() => words(rule)).toContain('10 Jun (default 20 Jun)');
  await page.getByText('on 10 June 2027').first().waitFor({ timeout: 30_000 });
  await rule.getByRole('button', { name: 'Back to the default (The day on which the target counts)' }).click();
  await soon(() => words(rule)).not.toContain('default');
});

test.each([1280, 1024, 853])('the screen is accessible and does not run over its width at %i px', async (width) => {
  const { page } = await open({ ...demo, width });
  await table(page, 'In the shed and elsewhere').waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await expectAccessible(page);
});
