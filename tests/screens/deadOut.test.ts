import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { closeBrowser, openWindow, today, type OpenedWindow, type WindowOptions } from './support/window.ts';

const twoColonies: WindowOptions = {
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
    await desk('journal.enter', {
      rows: [
        { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-01', origin: 'package', queen_year: '2025' },
        { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-02', origin: 'package' },
        { date: '2025-09-10', entry: 'mites', colony: 'LB-01', mites: '24', bees: '300' },
      ],
    });
    await desk('journal.enter', { rows: [{ date: '2026-02-14', entry: 'loss', colony: 'LB-02', note: 'Found on a mild day.' }] });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('a loss with a look at the dead-out, by keyboard alone, from the Find box to the entry', async () => {
  const opened = await open({ ...twoColonies, at: '/tonight' });
  const { page, desk } = opened;
  await page.keyboard.press('Control+k');
  await page.keyboard.type('dead-out');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Look at a dead-out', level: 1 }).waitFor();
  await expect.poll(() => words(page.getByRole('region', { name: 'Lost without a cause' }))).toContain('LB-02');
  await expectAccessible(page);
  const field = page.getByRole('combobox', { name: 'Colony' });
  await expect.poll(() => field.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.type('lb-9');
  await page.keyboard.press('Enter');
  await page.getByText('No colony is called lb-9.').waitFor();
  await field.fill('lb-01');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Dead-out: LB-01' }).waitFor();
  const form = page.getByRole('form', { name: 'Dead-out: LB-01' });
  await form.waitFor();

  // Tab from group to group, arrows within: a handful of dead bees, stores beside, mite droppings.
  await expect.poll(() => page.evaluate(() => document.activeElement?.closest('fieldset')?.querySelector('legend')?.textContent)).toMatch(/^In front/);
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  const ticked = await form.locator('.signs label:has(input:checked)').allInnerTexts();
  expect(ticked.map((text) => text.trim())).toEqual(['only a handful of dead bees', 'stores beside the cluster', 'white specks of mite droppings in the brood cells']);
  const mites = form.locator('.dead-out-causes').getByRole('checkbox', { name: /^mites/ });
  await mites.waitFor();
  expect(await mites.isChecked()).toBe(false);
  expect(await words(page.locator('.margin'))).toContain('24 mites in 300 bees');
  await mites.focus();
  await expect.poll(() => words(page.locator('.margin'))).toContain('Rule: from memory');
  await expectAccessible(page);
  await page.keyboard.press('Space');

  // Typing is kept: the window is closed in the middle.
  await expect.poll(async () => (await desk('draft.fetch', { key: 'dead-out 1' })).body ?? '').toContain('"taken":["mites"]');
  await opened.restart();
  await page.getByText('What you had ticked is back.').waitFor();
  expect(await mites.isChecked()).toBe(true);
  await page.keyboard.press('Control+Enter');
  await notice(page).getByText('Dead-out: LB-01').waitFor();
  await page.getByRole('heading', { name: 'Colony LB-01' }).waitFor();
  await expect.poll(() => words(page.locator('.story'))).toContain('Lost: mites.');
  expect(await words(page.locator('.story'))).toContain('Dead-out: only a handful of dead bees; stores beside the cluster; white specks of mite droppings in the brood cells.');
  expect((await desk('colony.story', { id: 1 })).colony).toMatchObject({ how: 'lost', end: today, causes: ['mites'] });
  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await desk('colony.story', { id: 1 })).colony.how).toBe('alive');
});

test('signs of foulbrood stop the look; a recorded loss takes the signs up and keeps its words, twice', async () => {
  const { page, desk } = await open({ ...twoColonies, at: '/colonies/2' });
  await page.getByRole('link', { name: 'Look at the dead-out' }).press('Enter');
  const form = page.getByRole('form', { name: 'Dead-out: LB-02' });
  await form.getByRole('checkbox', { name: 'sunken or pierced brood cappings' }).check();
  await form.getByRole('alert').getByText('call your local bee inspector before doing anything').waitFor();
  expect(await form.locator('.dead-out-causes').count()).toBe(0);
  await expectAccessible(page);
  await form.getByRole('button', { name: /^Write down the signs, cause as it stands/ }).click();
  await notice(page).getByText('Replaced: loss of 14 February 2026.').waitFor();
  const colony = await desk('deadOut.open', { id: 2 });
  expect(colony.loss).toMatchObject({ causes: ['unknown'], words: 'Found on a mild day.', signs: ['brood-sunken'] });
  expect(colony.end).toBe('2026-02-14');

  // The inspector found none of it: a second look.
  await page.getByRole('link', { name: 'Look at the dead-out' }).click();
  await form.getByRole('checkbox', { name: 'sunken or pierced brood cappings' }).uncheck();
  await form.getByRole('checkbox', { name: 'no stores left' }).check();
  await form.getByRole('checkbox', { name: 'bees head first in empty cells' }).check();
  await form.getByRole('checkbox', { name: /^starvation/ }).check();
  await expect.poll(() => words(page.locator('.consequence'))).toContain('With this in its place:');
  await form.getByRole('button', { name: /^Put the look into the recorded loss/ }).click();
  await expect.poll(async () => (await desk('deadOut.open', { id: 2 })).loss).toMatchObject({ causes: expect.arrayContaining(['starvation']) as unknown, words: 'Found on a mild day.', signs: ['heads-in-cells', 'stores-none'] });
  expect((await desk('colony.story', { id: 2 })).entries.filter(({ kind, struck }) => kind === 'loss' && struck).map(({ struckReason }) => struckReason)).toEqual(['looked at the dead-out', 'looked at the dead-out']);
});
