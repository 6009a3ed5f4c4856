import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { expectAccessible } from './support/axe.ts';
import { notice, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow({ at: '/stock', ...options }));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const shed = (page: Page) => page.getByRole('table', { name: 'In the shed and elsewhere' });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });
const movement = (page: Page) => page.getByRole('form', { name: 'Enter a movement' });
const count = (page: Page) => page.getByRole('form', { name: 'Enter a count' });

/** The cells of the row that begins with a name, as words; read in one go, for the table may change meanwhile. */
async function cells(of: Locator, name: string): Promise<string[]> {
  const row = of.getByRole('row').filter({ has: of.page().getByRole('rowheader', { name, exact: true }) });
  const found = await row.first().locator('th, td').allTextContents();
  return found.map((text) => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim());
}

const stock = (date: string, quantity: string, item: string, from: string, to: string): Cells => ({ date, entry: 'stock', item, quantity, from, to });
const about = (date: string, entry: Cells['entry'], colony: string, more: Cells = {}): Cells => ({ date, entry: entry ?? 'note', yard: 'QY', colony, ...more });

const trial = (rows: readonly Cells[]): WindowOptions => ({
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
    if (rows.length > 0) await desk('journal.enter', { rows: [...rows] });
  },
});

const hives: readonly Cells[] = [
  stock('2026-03-01', '12', 'deep box', 'supplier', 'shed'), stock('2026-03-01', '120', 'deep frame', 'supplier', 'shed'), stock('2026-03-01', '6', 'stand', 'supplier', 'shed'),
  ...['A', 'B', 'C'].map((colony) => about('2026-04-20', 'install', colony, { origin: 'package' })),
  about('2026-10-02', 'loss', 'A', { cause: 'mites' }), about('2026-10-03', 'loss', 'B', { cause: 'disease' }),
  stock('2026-11-02', '8', 'stand', 'shed', 'LB'),
];

test('movements by keyboard: into the shed, between yards, taken back, refused at the fields, kept half typed', async () => {
  const opened = await open(trial([]));
  const { page } = opened;
  const form = movement(page);
  await page.getByText('No equipment is in the book yet').waitFor();
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Enter this movement' }).click();
  await form.getByText('Name the item.').waitFor();
  await form.getByText('Type how many, as a number above 0.').waitFor();
  await form.getByLabel('Item').focus();
  await page.keyboard.type('deep box');
  await page.keyboard.press('Tab');
  await page.keyboard.type('12');
  await page.keyboard.press('Enter');
  await soon(() => shed(page).count()).toBe(1);
  expect(await cells(shed(page), 'deep box')).toEqual(['deep box', '0', '12', '0', '0', '0', '12', '']);
  expect(await form.getByLabel('Item').evaluate((field) => field === document.activeElement)).toBe(true);

  for (const [quantity, from, to] of [['5', 'shed', 'QY'], ['2', 'QY', 'LB']] as const) {
    await form.getByLabel('Item').fill('deep box');
    await form.getByLabel('How many').fill(quantity);
    await form.getByLabel('From').selectOption(from);
    await form.getByLabel('To').selectOption(to);
    await form.getByRole('button', { name: 'Enter this movement' }).press('Enter');
    await soon(() => form.getByLabel('Item').inputValue()).toBe('');
  }
  await shed(page).getByRole('button', { name: 'deep box', exact: true }).press('Enter');
  await soon(() => cells(shed(page), 'LB')).toEqual(['LB', '0', '2', '0', '0', '0', '2', '']);
  expect([await cells(shed(page), 'shed'), await cells(shed(page), 'QY')]).toEqual([['shed', '0', '7', '0', '0', '0', '7', ''], ['QY', '0', '3', '0', '0', '0', '3', '']]);
  await page.getByText('12 came in, 0 went to scrap, 0 went away with bees: 12 there.').first().waitFor();
  const ruled = await shed(page).locator('tr.totals td').first().evaluate((cell) => getComputedStyle(cell).borderBottomStyle);
  expect(ruled).toBe('double');
  await undoByNotice(page);
  await soon(() => cells(shed(page), 'QY')).toEqual(['QY', '0', '5', '0', '0', '0', '5', '']);

  // Within one place only a state can be entered: those are to mend.
  await form.getByLabel('Item').fill('deep box');
  await form.getByLabel('How many').fill('2');
  await form.getByLabel('From').selectOption('shed');
  await form.getByLabel('To').selectOption('shed');
  await form.getByRole('button', { name: 'Enter this movement' }).click();
  await form.getByText('They come from and go to the same place').waitFor();
  await form.getByLabel('Item').fill('deep box, to mend');
  await form.getByLabel('Item').press('Enter');
  await soon(() => cells(shed(page), 'deep box')).toEqual(['deep box', '0', '10', '0', '2', '0', '12', '']);

  await form.getByLabel('Item').fill('medium super');
  await form.getByLabel('To').selectOption('QY');
  await soon(async () => (await opened.desk('draft.fetch', { key: 'stock movement' })).body ?? '').toContain('"to":"QY"');
  await opened.restart();
  await soon(() => movement(page).getByLabel('Item').inputValue()).toBe('medium super');
});

test('a misspelt item is asked about by keyboard, both ways; whole things are counted whole; a movement has its own day', async () => {
  const opened = await open(trial(hives));
  const { page } = opened;
  const form = movement(page);
  await shed(page).waitFor();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('movement of equipment');
  await page.getByRole('option', { name: /Enter a movement of equipment/ }).first().waitFor();
  await page.keyboard.press('Enter');
  await soon(() => form.getByLabel('Item').evaluate((field) => field === document.activeElement)).toBe(true);
  await page.keyboard.type('Deap boxes');
  await page.keyboard.press('Tab');
  await page.keyboard.type('1.5');
  await page.keyboard.press('Enter');
  const use = form.getByRole('button', { name: 'It is deep box' });
  await form.getByText('There is no item “deap box”. Nearest: deep box.').waitFor();
  await soon(() => use.evaluate((button) => button === document.activeElement)).toBe(true);
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await form.getByText('“1.5” is no whole number, and deep boxes are counted whole. Write 1 or 2.').waitFor();
  expect(await form.getByLabel('Item').inputValue()).toBe('deep box');
  await soon(() => form.getByLabel('How many').evaluate((field) => field === document.activeElement)).toBe(true);
  await form.getByLabel('How many').fill('2');
  await form.getByLabel('Day').fill('2026-12-24');
  await page.keyboard.press('Enter');
  await form.getByText('is still to come').waitFor();
  // Emptied for another day, it stays empty under the typing, though nothing typed is today.
  await form.getByLabel('Day').press('Control+a');
  await page.keyboard.press('Delete');
  await form.getByText('Wed 25 November 2026').waitFor();
  await page.keyboard.type('2026-11-21');
  expect(await form.getByLabel('Day').inputValue()).toBe('2026-11-21');
  await page.keyboard.press('Enter');
  await soon(() => cells(shed(page), 'deep box')).toEqual(['deep box', '1', '11', '2', '0', '0', '14', '']);
  expect((await opened.desk('export.journal', {})).text).toContain('2026-11-21,stock');
  expect(await form.getByLabel('Day').inputValue()).toBe('2026-11-21');

  // The other way: it is a thing of its own, and is not asked about again.
  const counting = count(page);
  await counting.getByLabel('Item').fill('feedr');
  await counting.getByLabel('Counted').fill('1.5');
  await counting.getByText('There is no item “feedr”. Nearest: feeder.').or(counting.getByText('feedrs are counted whole')).first().waitFor();
  await counting.getByLabel('Counted').fill('3');
  await counting.getByLabel('Counted').press('Enter');
  await soon(() => counting.getByRole('button', { name: 'It is feeder' }).evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await soon(() => shed(page).getByRole('button', { name: 'feedr', exact: true }).count()).toBe(1);
  await counting.getByLabel('Item').fill('feedr');
  await counting.getByLabel('Counted').fill('4');
  await counting.getByText('The book has 3 feedrs in the shed').waitFor();
});

test('a file with misspelt items is entered once each was said by keyboard, and what was said can be changed', async () => {
  const opened = await open({ ...trial(hives), at: '/book' });
  const { page } = opened;
  const lines = ['date,entry,item,quantity,from,to', '2026-11-01,stock,deap box,2,supplier,shed', '2026-11-02,stock,"Deap boxes, to mend",1,supplier,shed', '2026-11-03,stock,super,1,supplier,shed'];
  await page.locator('input[type=file]').setInputFiles({ name: 'shed.csv', mimeType: 'text/csv', buffer: Buffer.from(lines.join('\n')) });
  const enter = page.getByRole('button', { name: 'Enter 3 records' });
  await enter.waitFor();
  expect(await enter.isDisabled()).toBe(true);
  await expectAccessible(page);
  const box = page.getByRole('group', { name: 'There is no item “deap box”. Nearest: deep box.' });
  await box.getByText('2 rows, on lines 2, 3.').waitFor();
  await box.getByRole('radio').first().focus();
  await page.keyboard.press('Space');
  const part = page.getByRole('group', { name: 'There is no item “super”. Nearest: medium super, shallow super.' });
  await soon(() => box.getByLabel('it is deep box').isChecked()).toBe(true);
  expect(await enter.isDisabled()).toBe(true);
  await part.getByLabel('it is medium super').check();
  await soon(() => enter.isEnabled()).toBe(true);
  // With the arrows on to the next answer, as in any choice.
  await part.getByLabel('it is medium super').focus();
  await page.keyboard.press('ArrowDown');
  await soon(() => part.getByLabel('it is shallow super').isChecked()).toBe(true);
  await enter.press('Enter');
  await notice(page).getByText('3 records entered from shed.csv.').waitFor();
  const { items } = await opened.desk('stock.table', {});
  expect(items.filter(({ item }) => item === 'deep box' || /deap|super/.test(item)).map(({ item, free, toMend }) => [item, free, toMend])).toEqual([['deep box', 11, 1], ['shallow super', 1, 0]]);
});

test('hives take their parts; dead-outs are looked over; what is below nothing is mended; a count shows its difference first', async () => {
  const opened = await open(trial(hives));
  const { page } = opened;
  await shed(page).waitFor();
  expect(await cells(shed(page), 'deep box')).toEqual(['deep box', '1', '9', '2', '0', '0', '12', '']);
  expect(await words(page.locator('.shed .sentence'))).toContain('2 hives without bees to be checked');

  const below = page.getByRole('region', { name: 'More taken than was there' });
  expect(await words(below)).toContain('8 × stand from the shed to Larch Bend.');
  expect((await cells(shed(page), 'stand'))[2]).toBe('3');
  await expectAccessible(page);
  await below.getByRole('button', { name: 'Strike this entry' }).click();
  await below.getByRole('textbox').fill('those were the pallets');
  await below.getByRole('textbox').press('Enter');
  await soon(() => below.count()).toBe(0);

  const deadOuts = page.getByRole('region', { name: 'Hives without bees, to be checked' });
  await deadOuts.getByText('call the bee inspector first').waitFor();
  await deadOuts.getByRole('button', { name: 'Look over the hive of A' }).press('Enter');
  const check = page.getByRole('form', { name: 'Look over the hive of A' });
  expect(await check.getByLabel('deep box, To mend').evaluate((field) => field === document.activeElement)).toBe(true);
  await check.getByLabel('deep frame, To mend').fill('1');
  await check.getByLabel('deep frame, Scrap').fill('20');
  await check.getByLabel('deep frame, Scrap').press('Enter');
  await check.getByText('are more than that').waitFor();
  await check.getByLabel('deep frame, Scrap').fill('3');
  await expectAccessible(page);
  await check.getByRole('button', { name: 'Enter the check' }).click();
  await soon(() => cells(shed(page), 'deep frame')).toEqual(['deep frame', '10', '96', '10', '1', '0', '117', '0']);
  await notice(page).getByText('Hive of A looked over').waitFor();

  await deadOuts.getByRole('button', { name: 'Look over the hive of B' }).click();
  const sick = page.getByRole('form', { name: 'Look over the hive of B' });
  await sick.getByRole('button', { name: 'Enter the check' }).click();
  await sick.getByText('Disease is written down for B.').waitFor();
  await sick.getByLabel('The bee inspector has seen it').check();
  await sick.getByRole('button', { name: 'Enter the check' }).press('Enter');
  await soon(() => deadOuts.count()).toBe(0);

  const form = count(page);
  await form.getByRole('button', { name: 'Enter this count' }).click();
  await form.getByText('Type how many you counted, 0 or more.').waitFor();
  await form.getByLabel('Item').fill('deep boxes');
  await form.getByLabel('Counted').fill('9');
  await form.getByText('The book has 11 deep boxes in the shed, you counted 9: 2 are missing and will be written off.').waitFor();
  expect((await opened.desk('stock.table', {})).counts).toEqual([]);
  await form.getByLabel('Note').fill('two lent to a neighbour');
  await form.getByLabel('Note').press('Enter');
  await soon(() => cells(shed(page), 'deep box')).toEqual(['deep box', '1', '9', '0', '0', '0', '10', '']);
  await page.getByText('9 deep boxes, shed: −2 against 11 in the book').waitFor();
  await undoByNotice(page);
  await soon(() => cells(shed(page), 'deep box')).toEqual(['deep box', '1', '11', '0', '0', '0', '12', '']);
});

test('the demo’s equipment explains itself in the margin', async () => {
  const opened = await open({ first: async (desk) => void (await desk('book.demo', { which: 'ossar' })) });
  const { page } = opened;
  const table = await opened.desk('stock.table', {});
  const frames = table.items.find(({ item }) => item === 'deep frame')!;
  await shed(page).getByRole('button', { name: 'deep frame', exact: true }).click();
  await margin(page).getByText('Comb by the year it was built').waitFor();
  expect(await words(margin(page))).toContain(`${frames.comb!.drawn.toLocaleString('en-US')} drawn`);
  expect((await cells(shed(page), 'deep frame')).at(-1)).toBe(String(frames.due));
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  expect(await page.locator('main').innerHTML()).not.toMatch(/NaN|undefined|Infinity/);
});
