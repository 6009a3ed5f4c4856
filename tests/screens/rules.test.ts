import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions = {}) => {
  window = await openWindow({
    at: '/book/rules',
    first: async (desk) => {
      await desk('book.demo', { which: 'ossar' });
    },
    ...options,
  });
  return window;
};
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const field = (page: Page, label: string) => page.getByRole('textbox', { name: label, exact: true });
const row = (page: Page, label: string) => page.getByRole('row').filter({ has: field(page, label) });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });
const few = 'Fewer at risk than this: the counts lead';
const buyBy = 'Packages are ordered by';

test('a rule is found, changed, refused, and set back, all by keyboard', async () => {
  const opened = await open();
  const { page } = opened;
  const total = (await opened.desk('rules.book', {})).rooms.flatMap(({ rules }) => rules).length;
  await page.getByText(`${total} rules, none changed.`).waitFor();
  expect(await page.locator('main').innerText()).not.toMatch(/NaN|undefined|Infinity/);

  await page.keyboard.press('/');
  await page.keyboard.type('counts lead');
  await page.getByText(`1 of ${total} rules, none changed.`).waitFor();
  await page.keyboard.press('Tab');
  expect(await field(page, few).evaluate((one) => one === document.activeElement)).toBe(true);
  // The margin names the source of the rule that the keyboard is on.
  await margin(page).getByText('below about 10 the interval of a rate says more').waitFor();

  await page.keyboard.type('400');
  await page.keyboard.press('Enter');
  await row(page, few).getByText('Type a number from 1 to 100.').waitFor();
  await expectAccessible(page);
  expect((await opened.desk('rules.list', {})).rules.find(({ key }) => key === 'losses.few')?.value).toBe(10);
  await page.keyboard.press('Escape');
  expect(await field(page, few).inputValue()).toBe('10');

  await page.keyboard.press('Control+A');
  await page.keyboard.type('12');
  await page.keyboard.press('Enter');
  await notice(page).getByText(`${few}: now 12 colonies.`).waitFor();
  await soon(() => words(row(page, few))).toMatch(/changed · Back to the default.* 10 colonies 1 to 100 common practice, no source$/);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await notice(page).getByText(`${few}: back at the default, 10 colonies.`).waitFor();
  await soon(() => words(row(page, few))).not.toContain('changed');
});

test('changed rules are shown beside their defaults, and a heading is set back as a whole', async () => {
  const opened = await open();
  const { page } = opened;
  await field(page, buyBy).fill('soon');
  await field(page, buyBy).press('Enter');
  await row(page, buyBy).getByText('Type month and day as MM-DD').waitFor();
  await field(page, buyBy).fill('01-15');
  // Leaving the field keeps what stands in it.
  await field(page, buyBy).press('ArrowDown');
  expect(await field(page, 'Packages arrive').evaluate((one) => one === document.activeElement)).toBe(true);
  await soon(async () => (await opened.desk('rules.list', {})).rules.find(({ key }) => key === 'order.package.by')?.value).toBe('01-15');
  await field(page, 'Share of a dead-out’s equipment that can be used again').fill('50 %');
  await page.keyboard.press('Enter');
  await page.getByText(/ rules, 2 changed\.$/).waitFor();

  await page.getByRole('combobox', { name: 'Show' }).selectOption('changed');
  await page.getByText(/^2 of \d+ rules, 2 changed\.$/).waitFor();
  expect(await words(row(page, buyBy))).toContain('31 Jan');
  await page.getByRole('button', { name: 'Set all 2 changed rules back (The order before spring)' }).press('Enter');
  await page.getByText('No house rule is changed: every number is the default.').waitFor();
  expect((await opened.desk('rules.list', {})).rules.filter(({ value, default: standard }) => value !== standard)).toEqual([]);
  await page.getByRole('combobox', { name: 'Show' }).selectOption('memory');
  await soon(async () => (await page.getByRole('textbox').count()) > 3).toBe(true);
  expect(await words(page.locator('tbody tr').first())).toContain('from memory: check');
});

test('the page is reached from Book, from the Find box and from the margin, at its heading', async () => {
  const { page } = await open({ at: '/losses' });
  await goTo(page, 'Book');
  await page.getByRole('link', { name: 'See and change the house rules' }).click();
  await page.getByRole('heading', { name: 'House rules', level: 1 }).waitFor();
  await goTo(page, 'Stock and orders');
  await page.getByRole('link', { name: 'Order before spring' }).click();
  await margin(page).getByRole('link', { name: 'All house rules' }).first().click();
  await soon(() => page.evaluate(() => document.activeElement?.textContent)).toBe('The order before spring');
  await goTo(page, 'Tonight');
  await page.keyboard.press('Control+K');
  await page.keyboard.type('thresholds');
  await page.getByRole('option', { name: /House rules/ }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'House rules', level: 1 }).waitFor();
});

test('readable on dark paper, and nothing runs over the width of a narrow window', async () => {
  const { page } = await open({ scheme: 'dark' });
  await field(page, few).waitFor();
  // Every row is made alike: a heading's worth of them is looked through, not a hundred and fifty.
  await page.getByRole('searchbox').fill('what becomes due');
  await page.getByText(/^12 of /).waitFor();
  await expectAccessible(page);
  await page.getByRole('searchbox').fill('');
  for (const width of [1280, 1024, 853]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  }
});
