import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow({ at: '/orders', ...options }));
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
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 30_000 });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });
const region = (page: Page, name: string | RegExp) => page.getByRole('region', { name });
const table = (page: Page, name: string) => page.getByRole('table', { name });
const wanted = (page: Page) => page.getByRole('textbox', { name: 'Colonies wanted' });
const sure = (page: Page) => page.getByRole('textbox', { name: 'How sure, %' });
const whatIf = (page: Page, name: string) => page.getByRole('slider', { name: `What if: ${name}` });
const main = (page: Page) => words(page.locator('main'));

/** The cells of the row that begins with a name, as words; read in one go, for the table may change meanwhile. */
async function cells(of: Locator, name: string): Promise<string[]> {
  const row = of.getByRole('row').filter({ has: of.page().getByRole('rowheader', { name, exact: true }) });
  const found = await row.first().locator('th, td').allTextContents();
  return found.map((text) => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim());
}

async function downloaded(page: Page, button: string): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
  return readFile(await file.path(), 'utf8');
}

test('from the offer to the delivery: plan, what if, kept plan, order, delivery, equipment, paper', async () => {
  const opened = await open(demo);
  const { page, desk } = opened;
  const first = await desk('order.decide', { confidence: 0.8 });
  await soon(() => main(page)).toContain(first.sentences[1]!.replaceAll('\u00a0', ' '));
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);

  // A cheaper seller, typed by keyboard alone; what is wrong is said at its field and nothing typed is lost.
  await page.getByRole('button', { name: 'Enter an offer' }).press('Enter');
  await soon(() => page.evaluate(() => (document.activeElement as HTMLInputElement).name)).toBe('seller');
  await page.keyboard.type('Stony Ford Bees');
  for (const text of ['pa', '3', '0']) {
    await page.keyboard.press('Tab');
    await page.keyboard.type(text);
  }
  await page.keyboard.press('Enter');
  await page.getByText('Type a day, such as').first().waitFor();
  await page.keyboard.type('2026-11-01');
  await page.keyboard.press('Enter');
  await page.getByText('orders are closed. Type a later day').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('2027-01-20');
  await page.keyboard.press('Enter');
  await page.getByText('would give 3 lb packages away: the price is 0.').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('120');
  await page.keyboard.press('Enter');
  await notice(page).getByText('The offer of Stony Ford Bees is kept').waitFor();
  expect((await desk('offers.list', {})).offers.at(-1)).toMatchObject({ seller: 'Stony Ford Bees', steps: [{ from: 1, each: 12_000 }], orderBy: '2027-01-20' });
  await soon(() => main(page)).toContain('from Stony Ford Bees by 20 January 2027');

  // What if: the slider by its keys; the answer follows, the house's number does not.
  await whatIf(page, 'loss until spring').focus();
  for (let step = 0; step < 8; step += 1) await page.keyboard.press('ArrowRight');
  const harder = await desk('order.decide', { confidence: 0.8, lossRate: 0.37 });
  await soon(() => main(page)).toContain(harder.sentences[1]!.replaceAll('\u00a0', ' '));
  expect((await desk('survival.views', {})).views).toEqual([]);
  await page.getByRole('button', { name: 'Back to the forecast' }).click();
  await wanted(page).fill('some');
  await sure(page).fill('120');
  await page.getByText('Type a whole number of colonies').waitFor();
  await page.getByText('Type a number from 50 to 99.').waitFor();
  await wanted(page).fill('100');
  await sure(page).fill('80');
  const plan = await desk('order.decide', { confidence: 0.8, target: 100 });
  await soon(() => main(page)).toContain(plan.sentences[1]!.replaceAll('\u00a0', ' '));
  const [bees] = plan.answer!.bees;
  expect((await cells(table(page, 'The order: Stony Ford Bees'), '3 lb packages')).slice(0, 2)).toEqual(['3 lb packages', String(bees!.quantity)]);
  expect(await cells(table(page, 'Splits, places and moves'), 'All together')).toEqual(['All together', String(plan.answer!.splits), String(plan.answer!.bought)]);
  const part = plan.answer!.equipment.find(({ item }) => item === 'deep box')!;
  expect((await cells(table(page, 'Equipment'), 'deep box')).slice(-3, -1)).toEqual([part.have, part.order].map((value) => value.toLocaleString('en-US')));
  await table(page, 'Equipment').getByRole('row').filter({ hasText: 'deep box' }).focus();
  await margin(page).getByText(part.reason).waitFor();

  // The curves fill as they are worked out, and stand as a table.
  const curve = region(page, 'To have 100, by how sure');
  await curve.getByRole('button', { name: /^As a table/ }).click();
  await soon(async () => (await cells(curve.getByRole('table'), '80')).at(-1)).toBe(String(plan.answer!.splits));

  // Kept, ordered from the plan, and no longer asked for.
  await page.getByRole('textbox', { name: 'Note' }).fill('before the club evening');
  await page.keyboard.press('Enter');
  await notice(page).getByText('The plan is kept').waitFor();
  await soon(() => main(page)).toContain('No spring that a plan was kept for has come yet.');
  await goTo(page, 'Tonight');
  await page.getByText(`${bees!.quantity} × 3 lb packages from Stony Ford Bees: order by 20 January 2027, 56 days left.`).waitFor();
  await page.getByRole('link', { name: 'To the order' }).first().click();
  // What was agreed may differ from the plan: a number that cannot be read is said, another price is what is entered.
  await page.getByRole('button', { name: 'Mark as ordered (Stony Ford Bees)' }).press('Enter');
  const agreed = page.getByRole('form', { name: 'Ordered from Stony Ford Bees' });
  const howMany = agreed.getByRole('textbox', { name: 'How many' });
  expect(await howMany.inputValue()).toBe(String(bees!.quantity));
  await howMany.fill('0');
  await agreed.getByText('Nothing is to be ordered: every line is 0.').waitFor();
  await howMany.fill(String(bees!.quantity));
  const price = agreed.getByRole('textbox', { name: 'Price each' });
  await price.fill('dear');
  await agreed.getByRole('button', { name: 'Enter this order' }).click();
  await agreed.getByText('Type a price, such as').waitFor();
  await price.fill('118');
  await agreed.getByText(`Together ${(bees!.quantity * 118).toLocaleString('en-US')}.`).waitFor();
  await expectAccessible(page);
  await price.press('Enter');
  await notice(page).getByText('Order to Stony Ford Bees: 1 entry in the book.').waitFor();
  await soon(() => cells(table(page, 'Ordered'), 'package').then((row) => row.slice(3, 7))).toEqual([String(bees!.quantity), (bees!.quantity * 118).toLocaleString('en-US'), '0', String(bees!.quantity)]);
  await soon(() => main(page)).toContain(`${bees!.quantity} colonies on order are counted as coming.`);
  await soon(async () => (await desk('orders.placed', {})).orders[0]?.plan).not.toBeNull();

  // A delivery ticks off a part; too many are refused; Undo brings it back.
  await page.getByRole('button', { name: 'Enter a delivery (package, Stony Ford Bees)' }).press('Enter');
  const came = page.getByRole('textbox', { name: 'Come today' });
  await came.fill('999');
  await came.press('Enter');
  await page.getByText('999 are too many.').waitFor();
  await came.fill('4');
  await came.press('Enter');
  await soon(() => cells(table(page, 'Ordered'), 'package').then((row) => row.slice(5, 7))).toEqual(['4', String(bees!.quantity - 4)]);
  await undoByNotice(page);
  await soon(() => cells(table(page, 'Ordered'), 'package').then((row) => row.slice(5, 7))).toEqual(['0', String(bees!.quantity)]);
  await expectAccessible(page);

  // Both lists as files, then on paper: the seller's list and the shed's.
  expect(await downloaded(page, 'Save the order (CSV)')).toContain('seller,what,quantity');
  expect(await downloaded(page, 'Save the equipment (CSV)')).toContain('deep box,');
  await page.getByRole('link', { name: 'Print the order' }).click();
  await page.getByRole('heading', { name: 'Order for spring 2027', level: 1 }).waitFor();
  await page.getByRole('heading', { name: 'Order to farm store' }).waitFor();
  await page.getByRole('heading', { name: 'Build list for the shed' }).waitFor();
  await page.getByText('Target 100 colonies, reached with 80 % confidence').waitFor();
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
    expect(file.match(/\/Type \/Page\b/g)?.length ?? 0).toBeGreaterThanOrEqual(2);
    expect(file).toMatch(new RegExp(`/MediaBox \\[0 0 ${box}`));
  }
  await page.emulateMedia({ media: null, colorScheme: null });
  await page.getByRole('link', { name: 'Back to the order' }).click();
  await opened.restart();
  await soon(() => wanted(page).inputValue()).toBe('100');
});

test('what cannot be reached names its limits and what can be; an expectation of one’s own moves the forecast, with its reason', async () => {
  const { page, desk } = await open(demo);
  await wanted(page).fill('130');
  const much = await desk('order.decide', { confidence: 0.8, target: 130 });
  expect(much.outcome).toBe('impossible');
  const limits = region(page, 'What stands in the way');
  await limits.waitFor({ timeout: 30_000 });
  for (const { sentence } of much.limits) await limits.getByText(sentence).waitFor();
  await page.getByText(`What follows is for ${much.reached}, not for 130.`).waitFor();
  await region(page, 'The order').getByRole('table').first().waitFor();

  await page.getByText('If you know better').click();
  await page.getByRole('button', { name: 'Keep this expectation' }).click();
  await page.getByText('Say in a few words why.').waitFor();
  await page.getByLabel('Where').selectOption({ label: 'North Slope' });
  await page.getByLabel('Loss you expect, %').fill('60');
  await page.getByLabel('Why').fill('Fed three weeks late, on the windy side');
  await page.keyboard.press('Enter');
  await notice(page).getByText('Your expectation for North Slope is kept.').waitFor();
  await soon(() => cells(table(page, 'By yard'), 'NS North Slope').then((row) => row.at(-1))).toBe('60 %');
  await page.getByRole('button', { name: 'Drop it (North Slope)' }).click();
  await soon(async () => (await desk('survival.views', {})).views).toEqual([]);
  await expectAccessible(page);

  // A target below what lives in any winter.
  await wanted(page).fill('20');
  await soon(() => main(page)).toContain('no bees need be bought');
});

test('an empty book offers the next step, and plans a first year from published rates and prices, saying so', async () => {
  const { page } = await open({
    width: 1024,
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
    },
  });
  await page.getByText('Once colonies are in the book').waitFor();
  await expectAccessible(page);
  await wanted(page).fill('6');
  await soon(() => main(page)).toContain('No colony is alive, so all 6 are to be bought.');
  await soon(() => main(page)).toContain('US average of 2021 (USDA NASS)');
  await page.getByRole('heading', { name: 'Nobody’s offer is kept' }).waitFor();
  await margin(page).or(page.getByRole('button', { name: 'Open the margin' })).first().waitFor();
  expect(await page.locator('main').innerHTML()).not.toMatch(/NaN|undefined|Infinity/);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
});
