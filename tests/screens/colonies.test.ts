import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { notice, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

const emptyBook: WindowOptions = {
  at: '/colonies',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
  },
};
const larchBend = { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 };

/** Three colonies with something to tell, one of them ended. */
const threeColonies: WindowOptions = {
  at: '/colonies',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', larchBend);
    await desk('yard.keep', { code: 'NS', name: 'Nördlicher Hang', room: 12, minutes: 55 });
    await desk('journal.enter', {
      rows: [
        { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-02', origin: 'package', supplier: 'Sandel Road Bees', queen_year: '2025' },
        { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-10', origin: 'nuc', queen_year: '2024' },
        { date: '2025-06-03', entry: 'split', colony: 'LB-10', new_colony: 'NS-01', to_yard: 'NS', queen: 'stays', new_queen: 'cell' },
        { date: '2025-08-20', entry: 'mites', colony: 'LB-02', mites: '4', bees: '300', method: 'alcohol wash' },
        { date: '2025-09-01', entry: 'inspection', colony: 'LB-02', frames_bees: '8', frames_brood: '5.5', frames_stores: '2', eggs: 'yes' },
        { date: '2026-02-11', entry: 'loss', colony: 'LB-10', cause: 'starvation' },
      ],
    });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const list = (opened: OpenedWindow) => opened.page.getByRole('table', { name: /^Colonies/ });
const labels = async (opened: OpenedWindow) => list(opened).getByRole('rowheader').locator('a').allTextContents();
const living = async (opened: OpenedWindow) => (await opened.desk('colonies.list', { which: 'living' })).rows.map(({ label }) => label);

test('six packages are installed in one go, by keyboard, and taken back', async () => {
  const opened = await open(emptyBook);
  const { page } = opened;
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Install colonies' }).press('Enter');
  expect(await page.getByLabel('What happened').evaluate((field) => field === document.activeElement)).toBe(true);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('4/24/2026');
  await page.getByText('Fri 24 April 2026').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.type('LB');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await notice(page).getByText('The yard LB is in the book.').waitFor();
  await page.keyboard.type('LB-01..LB-06');
  await page.getByText('6 colonies: LB-01, LB-02').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.type('package');
  await expectAccessible(page);
  await page.keyboard.press('Control+Enter');
  await notice(page).getByText(/6/).waitFor();
  expect(await living(opened)).toEqual(['LB-01', 'LB-02', 'LB-03', 'LB-04', 'LB-05', 'LB-06']);
  await undoByNotice(page);
  await expect.poll(() => living(opened)).toEqual([]);
});

test('a label already alive is refused at its field, with nothing typed lost and nothing entered', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await page.getByRole('button', { name: 'Enter a record' }).click();
  await page.getByLabel('Yard · needed').fill('LB');
  await page.getByLabel('Colony · needed').fill('LB-01, LB-02');
  await page.getByLabel('Origin').selectOption('package');
  await page.getByLabel('Note').fill('from the swarm box');
  await page.getByRole('button', { name: /Enter 2 records/ }).click();
  const colony = page.getByLabel('Colony · needed');
  await expect.poll(() => colony.getAttribute('aria-invalid')).toBe('true');
  await expect.poll(() => colony.evaluate((field) => field === document.activeElement)).toBe(true);
  expect(await words(page.locator('.field-fault'))).toContain('LB-02');
  expect(await page.getByLabel('Note').inputValue()).toBe('from the swarm box');
  await expectAccessible(page);
  expect(await living(opened)).toEqual(['LB-02', 'NS-01']);
  await colony.fill('LB-01');
  await page.keyboard.press('Enter');
  await expect.poll(() => living(opened)).toEqual(['LB-01', 'LB-02', 'NS-01']);
});

test('what was typed and not entered is back after the program was closed', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await page.getByRole('button', { name: 'Enter a record' }).click();
  await page.getByLabel('What happened').selectOption('loss');
  await page.getByLabel('Colony · needed').fill('NS-01');
  await page.getByLabel('weak in autumn').check();
  await expect.poll(async () => (await opened.desk('draft.fetch', { key: 'entry ' })).body ?? '').toContain('weak in autumn');
  await opened.restart();
  await page.getByRole('button', { name: 'Enter a record' }).click();
  await page.getByText('What you had typed is back.').waitFor();
  expect(await page.getByLabel('Colony · needed').inputValue()).toBe('NS-01');
  expect(await page.getByLabel('weak in autumn').isChecked()).toBe(true);
  await page.getByRole('button', { name: 'Clear it' }).click();
  expect(await page.getByLabel('Colony · needed').inputValue()).toBe('');
});

test('treatments and suspected disease carry their caution where the act is chosen', async () => {
  const { page } = await open(threeColonies);
  await page.getByRole('button', { name: 'Enter a record' }).click();
  await page.getByLabel('What happened').selectOption('treatment');
  await page.getByText('The label is the law').waitFor();
  await expectAccessible(page);
  await page.getByLabel('What happened').selectOption('loss');
  expect(await page.getByText('bee inspector').count()).toBe(0);
  await page.getByLabel('disease').check();
  await page.getByText('call your local bee inspector before doing anything').waitFor();
});

test('the list is searched, narrowed and sorted without the mouse, and explains the line it is on', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await list(opened).waitFor();
  expect(await labels(opened)).toEqual(['LB-02', 'NS-01']);
  await page.keyboard.press('/');
  await page.keyboard.type('NORDLICHER');
  await expect.poll(() => labels(opened)).toEqual(['NS-01']);
  await page.keyboard.press('Escape');
  await page.getByLabel('Show').selectOption('all');
  await expect.poll(() => labels(opened)).toEqual(['LB-02', 'LB-10', 'NS-01']);
  await page.getByRole('button', { name: 'Colony' }).press('Enter');
  await expect.poll(() => labels(opened)).toEqual(['NS-01', 'LB-10', 'LB-02']);
  expect(await page.getByRole('columnheader', { name: 'Colony' }).getAttribute('aria-sort')).toBe('descending');
  await list(opened).getByRole('link', { name: 'NS-01' }).focus();
  await page.keyboard.press('End');
  const margin = page.getByRole('complementary', { name: 'Margin' });
  await margin.getByText('4 in 300 bees, 1.3 in 100').waitFor();
  await margin.getByText('Anything from 0.4 to 3.4 in 100').waitFor();
  await margin.getByText('8 frames of bees, 5.5 of brood, 2 of stores').waitFor();
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Colony LB-02', level: 1 }).waitFor();
});

test('the list shows the colonies as they were on an earlier day', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await page.getByRole('button', { name: /^as of/ }).click();
  await page.keyboard.type('5/1/2025');
  await page.keyboard.press('Enter');
  await expect.poll(() => labels(opened)).toEqual(['LB-02', 'LB-10']);
});

test('a colony’s page tells its story, and takes a record for it', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await list(opened).getByRole('link', { name: 'LB-02' }).click();
  await page.getByRole('heading', { name: 'Colony LB-02' }).waitFor();
  expect(await words(page.locator('main'))).toContain('blue 2025');
  expect(await words(page.getByRole('table', { name: 'Mite counts' }))).toContain('4 300 1.3 0.4–3.4');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Enter a record' }).click();
  expect(await page.getByLabel('Colony · needed').inputValue()).toBe('LB-02');
  await page.getByLabel('Frames of bees', { exact: true }).fill('many');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByLabel('Frames of bees', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  await page.getByLabel('Frames of bees', { exact: true }).fill('9');
  await page.keyboard.press('Enter');
  await page.getByRole('list').getByText(/9 frames of bees/).waitFor();
});

test('descent leads from a split to its mother and back; a struck entry stays to be read', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await list(opened).getByRole('link', { name: 'NS-01' }).click();
  await page.getByRole('link', { name: 'LB-10' }).click();
  await page.getByRole('heading', { name: 'Colony LB-10' }).waitFor();
  expect(await words(page.locator('.page-line'))).toBe('Lost on 11 February 2026, at Larch Bend.');
  expect(await page.getByRole('link', { name: 'NS-01' }).count()).toBe(1);
  await page.getByRole('button', { name: /^Strike the entry of 11.February 2026/ }).press('Enter');
  await page.keyboard.press('Enter');
  await page.getByText('Say why in a word or two').waitFor();
  await page.keyboard.type('it was LB-02');
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await page.locator('s').waitFor();
  expect(await words(page.locator('main'))).toContain('struck: it was LB-02');
  expect(await words(page.locator('.page-line'))).toContain('in the book since');
  await undoByNotice(page);
  await expect.poll(() => words(page.locator('.page-line'))).toContain('Lost on 11 February 2026');
});

test('an entry that others rest on is not struck, and the page says which', async () => {
  const opened = await open(threeColonies);
  const { page } = opened;
  await list(opened).getByRole('link', { name: 'LB-02' }).click();
  await page.getByRole('button', { name: /^Strike the entry of 24.April 2025/ }).click();
  const said = page.locator('.consequence');
  expect(await words(said)).toContain('Nothing is changed: 2 entries could then not stand.');
  expect(await words(said)).toContain('20 August 2025');
  expect(await words(said)).toContain('1 September 2025');
  expect(await page.getByRole('button', { name: 'Strike this entry' }).count()).toBe(0);
  await page.getByRole('button', { name: 'Leave it as it is' }).press('Enter');
  expect(await living(opened)).toContain('LB-02');
});

test('an address of no colony says so', async () => {
  const { page } = await open({ ...threeColonies, at: '/colonies/999' });
  await page.getByText('There is no such colony in this book.').waitFor();
  await page.getByRole('link', { name: 'All colonies' }).click();
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Colonies');
});

test('a thousand colonies: only those in sight are drawn, and the keyboard reaches the last', async () => {
  const opened = await open({
    at: '/colonies',
    first: async (desk) => {
      await desk('book.create', { name: 'Large' });
      await desk('yard.keep', larchBend);
      await desk('journal.enter', {
        rows: Array.from({ length: 1000 }, (_, at) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony: `LB-${String(at + 1).padStart(4, '0')}`, origin: 'package' })),
      });
    },
  });
  const { page } = opened;
  await list(opened).waitFor();
  expect(await list(opened).getByRole('row').count()).toBeLessThan(80);
  expect(await list(opened).getAttribute('aria-rowcount')).toBe('1002');
  await list(opened).getByRole('link', { name: 'LB-0001' }).focus();
  await page.keyboard.press('End');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('LB-1000');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('LB-0999');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Colony LB-0999' }).waitFor();
  await page.goBack();
  await list(opened).getByRole('link', { name: 'LB-0999' }).waitFor();
  expect(await words(list(opened).locator('tfoot'))).toContain('1,000 colonies');
});

test('at 1024 pixels the margin folds away first, and comes when asked', async () => {
  const { page } = await open({ ...threeColonies, width: 1024 });
  const margin = page.getByRole('complementary', { name: 'Margin' });
  expect(await margin.count()).toBe(0);
  await page.getByRole('button', { name: 'Open the margin' }).click();
  await margin.waitFor();
  await page.getByRole('button', { name: 'Fold the margin' }).click();
  await expect.poll(() => margin.count()).toBe(0);
});
