import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (which: 'ossar' | 'tiny', options: WindowOptions = {}) => (window = await openWindow({ at: '/losses', first: async (desk) => void (await desk('book.demo', { which })), ...options }));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const part = (page: Page, name: string) => page.getByRole('region', { name });
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const plain = (text: string | null) => (text ?? '').replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim();

test('what went with losses, causes, what can be said and the notes, in one winter and in all', { timeout: 120_000 }, async () => {
  const { page, desk, restart } = await open('ossar');
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2025');
  const factors = part(page, 'What went with it');
  await soon(async () => plain(await factors.textContent())).toContain('23 of 90 colonies that went into the winter were lost in it.');

  // A figure opens the colonies behind it, each with its page.
  const stores = factors.getByRole('button', { name: /Show the colonies: Autumn stores, Below 60 lb/ });
  expect(plain(await stores.textContent())).toBe('13 of 38 34 % (21–50)');
  await stores.click();
  const behind = page.getByRole('group', { name: /Autumn stores, Below 60 lb: 38 colonies/ });
  await behind.waitFor();
  expect(await behind.getByRole('link').count()).toBe(38);
  expect(await stores.getAttribute('aria-expanded')).toBe('true');
  await stores.click();
  await soon(() => behind.count()).toBe(0);

  // All winters: what was built into the invented records is found.
  await page.getByRole('combobox', { name: 'Compare within' }).selectOption('all');
  await soon(async () => plain(await factors.textContent())).toContain('Queen hatched, Two years before or more: 14 of 21 lost');
  const words = plain(await factors.textContent());
  expect(words).toMatch(/Each extra mite per 100 bees in late summer went with 1\.\d\d times the risk of loss/);
  expect(words).toMatch(/Each 10 lb more of autumn stores went with 0\.\d\d times the risk of loss/);
  expect(words).toContain('North Slope stands highest');
  expect(words).not.toMatch(/NaN|undefined|Infinity|null/);
  await factors.getByRole('row', { name: /Two years before or more/ }).hover();
  await soon(async () => plain(await page.getByRole('complementary', { name: 'Margin' }).textContent())).toContain('adjusted for 18 comparisons after Holm');

  const causes = part(page, 'Causes as recorded');
  await causes.getByRole('button', { name: /Show the colonies: unknown or not recorded/ }).first().click();
  await page.getByRole('group', { name: /Unknown or not recorded: 20 colonies/ }).waitFor();
  expect(await part(page, 'What the numbers can and cannot say').locator('p').count()).toBe(3);

  // Notes are kept as they are typed, through a restart, and come back with the next season.
  const box = page.getByRole('textbox', { name: /kept with 2025–26/ });
  await box.fill('Windbreak for North Slope before October.\nOrder queens in January.');
  await part(page, 'Notes to yourself').getByText(/^Kept /).waitFor();
  await expectAccessible(page);
  await restart();
  expect((await desk('losses.notes', { season: 2025 })).text).toBe('Windbreak for North Slope before October.\nOrder queens in January.');
  await goTo(page, 'Losses');
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2026');
  await part(page, 'Notes to yourself').getByText('Windbreak for North Slope').waitFor();
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2025');
  await soon(() => page.getByRole('textbox', { name: /kept with 2025–26/ }).inputValue()).toContain('Order queens in January.');
  // Left in the middle of a word, it is kept all the same.
  await page.getByRole('textbox', { name: /kept with 2025–26/ }).fill('Half a thou');
  await goTo(page, 'Colonies');
  await soon(async () => (await desk('losses.notes', { season: 2025 })).text).toBe('Half a thou');
  await goTo(page, 'Stock and orders');
  await soon(async () => plain(await page.getByRole('complementary', { name: 'Margin' }).textContent())).toContain('Half a thou');
});

test('five colonies: too few to tell, in words', { timeout: 60_000 }, async () => {
  const { page } = await open('tiny');
  const factors = part(page, 'What went with it');
  await soon(async () => plain(await factors.textContent())).toContain('Too few to tell what went with losses: 2 lost of 5.');
  expect(await factors.getByRole('columnheader', { name: 'p, adjusted' }).count()).toBe(0);
  expect(await factors.getByText('too few to tell').count()).toBeGreaterThan(5);
  await soon(async () => plain(await part(page, 'What the numbers can and cannot say').textContent())).toContain('With 2 losses among 5 colonies no group is compared with another');
  await soon(async () => plain(await part(page, 'Causes as recorded').textContent())).toContain('Too few to tell whether causes differ between yards');
});
