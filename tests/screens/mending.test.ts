import { afterAll, afterEach, expect, test } from 'vitest';
import { sheetOn, yardOf } from './roundSheet.ts';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

/** A colony looked at twice and wrongly written down as lost. */
const wronglyLost: WindowOptions = {
  at: '/colonies/1',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
    await desk('journal.enter', {
      rows: [
        { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'LB-02', origin: 'package', queen_year: '2025' },
        { date: '2025-06-01', entry: 'inspection', colony: 'LB-02', frames_bees: '80', frames_brood: '5' },
        { date: '2025-09-01', entry: 'inspection', colony: 'LB-02', frames_bees: '8' },
      ],
    });
    await desk('journal.enter', { title: 'A loss', rows: [{ date: '2026-02-14', entry: 'loss', colony: 'LB-02', cause: 'starvation' }] });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const living = async (opened: OpenedWindow) => (await opened.desk('colonies.list', { which: 'living' })).rows.map(({ label }) => label);

test('a strike shows what it does first, is undone and brought back by keys, also after a restart', async () => {
  const opened = await open(wronglyLost);
  const { page } = opened;
  await page.getByRole('button', { name: /^Strike the entry of 14.February 2026/ }).press('Enter');
  expect(await words(page.locator('.consequence'))).toBe('If it is struck: Colony LB-02 is alive after 14 February 2026.');
  expect(await living(opened)).toEqual([]);
  await expectAccessible(page);
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
  await page.keyboard.type('it was LB-12');
  // In the text field the keys are the field's own.
  await page.keyboard.press('Control+z');
  expect(await living(opened)).toEqual([]);
  expect((await opened.desk('journal.recent', { limit: 10 })).gestures).toHaveLength(2);
  await page.getByLabel('Why it is struck').fill('it was LB-12');
  await page.keyboard.press('Enter');
  await expect.poll(() => living(opened)).toEqual(['LB-02']);
  await expect.poll(() => words(page.locator('.story'))).toContain('struck: it was LB-12');
  // The keyboard stays with the entry that was struck.
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('struck: it was LB-12');

  await page.getByRole('heading', { level: 1 }).focus();
  await page.keyboard.press('Control+z');
  await notice(page).getByText('Undone: Struck').waitFor();
  expect(await living(opened)).toEqual([]);
  expect(await page.locator('.notice-place').getByRole('button', { name: 'Bring back' }).count()).toBe(1);
  await opened.restart();
  await page.keyboard.press('Control+Shift+Z');
  await notice(page).getByText('Brought back: Struck').waitFor();
  expect(await living(opened)).toEqual(['LB-02']);
  await page.keyboard.press('Control+z');
  await expect.poll(() => living(opened)).toEqual([]);
  await page.keyboard.press('Control+y');
  await expect.poll(() => living(opened)).toEqual(['LB-02']);
  await page.keyboard.press('Control+y');
  await notice(page).getByText('There is nothing to redo.').waitFor();
});

test('a wrong cell is replaced, with what follows shown first; both entries stay readable', async () => {
  const opened = await open(wronglyLost);
  const { page } = opened;
  await page.getByRole('button', { name: /^Replace the entry of 1.June 2025/ }).press('Enter');
  const bees = page.getByRole('textbox', { name: 'Frames of bees' });
  expect(await bees.inputValue()).toBe('80');
  expect(await page.getByRole('button', { name: 'Replace this entry' }).isDisabled()).toBe(true);
  await bees.fill('many');
  await expect.poll(() => bees.getAttribute('aria-invalid')).toBe('true');
  await bees.fill('8');
  await expect.poll(() => bees.getAttribute('aria-invalid')).toBe('false');
  await expect.poll(() => words(page.locator('.consequence'))).toBe('With this in its place: Colony LB-02 has other figures in its inspections. 2 later entries of it stand.');
  await expectAccessible(page);
  await page.getByLabel('Why it is replaced').press('Enter');
  await page.getByText('Say why in a word or two').waitFor();
  await page.getByLabel('Why it is replaced').fill('a slip of the key');
  await page.keyboard.press('Enter');
  await notice(page).getByText('Replaced: inspection of 1 June 2025.').waitFor();
  await expect.poll(() => page.locator('.story s').count()).toBe(1);
  const story = await words(page.locator('.story'));
  expect(story).toContain('struck: a slip of the key');
  expect(story).toContain('In its place, 1 June 2025:');
  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => page.locator('.story s').count()).toBe(1);
  await expect.poll(async () => (await words(page.locator('.story'))).includes('In its place')).toBe(false);
});

test('a day that others contradict is refused before anything is done', async () => {
  const { page } = await open(wronglyLost);
  await page.getByRole('button', { name: /^Replace the entry of 24.April 2025/ }).press('Enter');
  await page.getByLabel('Day', { exact: true }).fill('2025-07-01');
  await expect.poll(() => words(page.locator('.consequence'))).toContain('1 entry could then not stand');
  expect(await words(page.locator('.consequence'))).toContain('1 June 2025');
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('form', { name: 'Replace this entry' }).count()).toBe(0);
});

test('a day still to come is asked about once before it takes another entry’s place', async () => {
  const { page } = await open(wronglyLost);
  await page.getByRole('button', { name: /^Replace the entry of 14.February 2026/ }).press('Enter');
  await page.getByLabel('Day', { exact: true }).fill('2027-02-14');
  await page.getByLabel('Why it is replaced').fill('the year');
  await page.keyboard.press('Enter');
  await page.getByText('still to come; today is').waitFor();
  expect(await page.getByLabel('Day', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  await page.getByLabel('Why it is replaced').press('Enter');
  await notice(page).getByText('Replaced: loss of 14 February 2026.').waitFor();
});

test('on the round sheet the undo keys are the cell’s, then the book’s, and never bring old typing into a cell', async () => {
  const opened = await open({ at: '/tonight', first: (desk) => yardOf(desk, 3) });
  const { page } = opened;
  const sheet = sheetOn(page);
  const entries = async () => (await opened.desk('book.status', {})).book?.entries;
  await sheet.isAt('LB-01', 'bees');
  await sheet.typeDown(['8', '7']);
  await sheet.enter();
  await notice(page).getByText('Round at Larch Bend, 2 colonies').waitFor();
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('5');
  await page.keyboard.press('Control+z');
  expect(await sheet.cell('LB-01', 'bees').inputValue()).toBe('');
  await page.keyboard.press('Control+y');
  expect(await sheet.cell('LB-01', 'bees').inputValue()).toBe('5');
  await page.keyboard.press('Control+z');
  expect(await entries()).toBe(5);
  // Nothing is typed any more: the round itself is taken back, and its typing is on the sheet again.
  await page.keyboard.press('Control+z');
  await notice(page).getByText('Undone: Round at Larch Bend, 2 colonies').waitFor();
  await expect.poll(() => sheet.cell('LB-01', 'bees').inputValue()).toBe('8');
  expect(await entries()).toBe(3);
  // With typing on the sheet nothing more of the book is taken back, and no cell changes.
  await page.keyboard.press('Control+z');
  expect([await sheet.cell('LB-01', 'bees').inputValue(), await sheet.cell('LB-02', 'bees').inputValue(), await entries()]).toEqual(['8', '7', 3]);
  await page.keyboard.press('Control+Shift+Z');
  await expect.poll(entries).toBe(5);
  await expect.poll(() => sheet.cell('LB-01', 'bees').inputValue()).toBe('');

  // A message's button goes when it is pressed; the keyboard stays with the message, and goes back once that is closed.
  const message = page.locator('.notice-place');
  await message.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Enter');
  await message.getByRole('button', { name: 'Bring back' }).waitFor();
  await expect.poll(() => message.evaluate((node) => node.contains(document.activeElement))).toBe(true);
  await message.getByRole('button', { name: 'Close this message' }).press('Enter');
  // Back to where it was, or to the page's head where that cell was drawn anew; never nowhere.
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toMatch(/^(INPUT|H1)$/);
});
