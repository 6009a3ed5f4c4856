import type { Locator, Page } from 'playwright-core';
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
const emptyBook: WindowOptions = {
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
  },
};

/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });
const table = (page: Page, name: string) => page.getByRole('table', { name });
const wanted = (page: Page) => page.getByRole('textbox', { name: /^Wanted on/ });
const sure = (page: Page) => page.getByRole('textbox', { name: 'How sure, %' });

/** The cells of the row that begins with a name, as words; read in one go, for the table may change meanwhile. */
async function cells(of: Locator, name: string): Promise<string[]> {
  const row = of.getByRole('row').filter({ has: of.page().getByRole('rowheader', { name, exact: true }) });
  const found = await row.locator('th, td').allTextContents();
  return found.map((text) => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim());
}

test('the plan answers as the target is typed, and is kept with the book', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await wanted(page).fill('120');
  await sure(page).fill('90');
  await page.getByRole('combobox', { name: 'Bought as' }).selectOption('nuc');
  const plan = await opened.desk('order.plan', { target: 120, confidence: 0.9, source: 'nuc', hiveFrames: 10, united: 'lost' });
  const orders = table(page, 'Order');
  await soon(() => cells(orders, plan.orders[0]!.what)).toContain(String(plan.buy));
  for (const sentence of plan.sentences) expect(await words(page.locator('main'))).toContain(sentence.replaceAll('\u00a0', ' '));
  expect(await cells(table(page, 'How sure against how many'), '90')).toEqual(['90', String(plan.buy), 'your choice']);
  const deepBox = plan.equipment.find(({ item }) => item === 'deep box')!;
  expect((await cells(table(page, 'Boxes and frames'), 'deep box')).at(-1)).toBe(String(deepBox.order));

  await soon(() => opened.desk('order.kept', {})).toEqual({ target: 120, confidence: 0.9, source: 'nuc', hiveFrames: 10 });
  await opened.restart();
  await wanted(page).waitFor();
  expect(await wanted(page).inputValue()).toBe('120');
  expect(await sure(page).inputValue()).toBe('90');
});

test('the slider and the number are one, and reached by keyboard', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await sure(page).fill('80');
  await sure(page).press('Tab');
  await page.keyboard.press('ArrowRight');
  expect(await sure(page).inputValue()).toBe('81');
  await soon(async () => (await opened.desk('order.kept', {})).confidence).toBe(0.81);
});

test('what cannot be read is said at its field, and the last answer stays', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await wanted(page).fill('110');
  await soon(async () => (await opened.desk('order.kept', {})).target).toBe(110);
  const orders = table(page, 'Order');
  await orders.waitFor();
  await wanted(page).fill('some');
  await sure(page).fill('120');
  await page.getByText('Type a whole number of colonies').waitFor();
  await page.getByText('Type a number from 50 to 99.').waitFor();
  expect(await wanted(page).getAttribute('aria-invalid')).toBe('true');
  expect(await orders.count()).toBe(1);
  expect((await opened.desk('order.kept', {})).target).toBe(110);
  await expectAccessible(page);
});

test('survivors stand against the target, as a picture and as a table', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await wanted(page).fill('105');
  const region = page.getByRole('region', { name: /^Likely alive on/ });
  await region.getByText('target 105').waitFor();
  const plan = await opened.desk('order.plan', { target: 105, source: 'package', hiveFrames: 10, united: 'lost' });
  await region.getByText(`four winters in five: ${plan.survivors.low} to ${plan.survivors.high}`).waitFor();
  const inside = await region.locator('.survivor-bar:not(.survivor-bar-outside)').count();
  expect(inside).toBe(plan.survivors.high - plan.survivors.low + 1);
  await region.getByRole('button', { name: /^As a table/ }).click();
  const low = plan.survivors.chances.find(({ survivors }) => survivors === plan.survivors.low)!;
  expect((await cells(region.getByRole('table'), String(plan.survivors.low)))[1]).toBe((low.chance * 100).toFixed(2));
});

test('a house rule is changed in its place, with its source beside it, and set back', async () => {
  const opened = await open(demo);
  const { page } = opened;
  const rules = margin(page);
  const rule = rules.getByRole('listitem').filter({ hasText: 'Packages are ordered by' });
  await rule.waitFor();
  expect(await words(rule)).toContain('common practice, no source');
  await rule.getByRole('button', { name: 'Change (Packages are ordered by)' }).press('Enter');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('31 January');
  await page.keyboard.press('Enter');
  await rule.getByText('Type month and day as MM-DD').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('01-15');
  await page.keyboard.press('Enter');
  await soon(() => words(rule)).toContain('15 Jan (default 31 Jan)');
  const [order] = (await opened.desk('order.plan', { source: 'package', hiveFrames: 10, united: 'lost' })).orders;
  expect(order?.orderBy).toBe('2027-01-15');
  await soon(async () => (await cells(table(page, 'Order'), order!.what))[3]).toBe('15 January 2027');
  await rule.getByRole('button', { name: 'Back to the default (Packages are ordered by)' }).click();
  await soon(() => words(rule)).not.toContain('default');
  await expectAccessible(page);
});

test('an order whose day is past says so in a word, and the margin says what to do', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await opened.desk('rules.set', { key: 'order.package.by', value: '11-01' });
  await page.reload();
  const plan = await opened.desk('order.plan', { source: 'package', hiveFrames: 10, united: 'lost' });
  const [order] = plan.orders;
  expect(order?.late).toBe(true);
  const orders = table(page, 'Order');
  await orders.waitFor();
  expect((await cells(orders, order!.what))[3]).toBe('1 November 2026, past');
  await orders.locator('tbody').first().focus();
  await margin(page).getByText('The day to order by is past.').waitFor();
});

test('an empty book offers the next step, and plans a first year once a number is typed', async () => {
  const { page } = await open(emptyBook);
  await page.getByText('Once colonies are in the book').waitFor();
  await expectAccessible(page);
  await wanted(page).fill('6');
  const orders = table(page, 'Order');
  await orders.waitFor();
  expect((await cells(orders, 'Packages'))[1]).toBe('6');
  expect(await page.locator('main').innerHTML()).not.toMatch(/NaN|undefined|Infinity/);
});

test('the order prints black on white, page by page, with its heads, book and day', async () => {
  const opened = await open(demo);
  const { page } = opened;
  // Straight on to the paper: what was typed last counts all the same.
  await wanted(page).fill('120');
  await page.getByRole('link', { name: 'Print the order' }).click();
  await page.getByRole('heading', { name: 'Order for spring 2027', level: 1 }).waitFor();
  await page.getByText('Target 120 colonies').waitFor();
  await expectAccessible(page);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  const paper = await page.evaluate(() => ({
    ink: getComputedStyle(document.querySelector('.paper-page h1')!).color,
    ground: getComputedStyle(document.body).backgroundColor,
    heads: [...document.querySelectorAll('thead')].map((head) => getComputedStyle(head).display),
    buttons: [...document.querySelectorAll('.paper-acts')].map((acts) => getComputedStyle(acts).display),
    running: [...document.querySelectorAll('.paper-running')].map((row) => row.textContent),
  }));
  expect(paper.ink).toBe('rgb(0, 0, 0)');
  expect(paper.ground).toBe('rgb(255, 255, 255)');
  expect(new Set(paper.heads)).toEqual(new Set(['table-header-group']));
  expect(paper.buttons).toEqual(['none']);
  for (const line of paper.running) expect(line?.replaceAll('\u00a0', ' ')).toBe('Ossar Valley, as of 25 November 2026');
  for (const [format, box] of [['Letter', '612 792'], ['A4', '595']] as const) {
    const file = (await page.pdf({ format })).toString('latin1');
    expect(file.match(/\/Type \/Page\b/g)?.length ?? 0).toBeGreaterThanOrEqual(1);
    expect(file).toMatch(new RegExp(`/MediaBox \\[0 0 ${box}`));
  }
});

test.each([1280, 1024, 853])('the screen is accessible and does not run over its width at %i px', async (width) => {
  const { page } = await open({ ...demo, width });
  await table(page, 'Order').waitFor();
  await table(page, 'In the shed and elsewhere').waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await expectAccessible(page);
});
