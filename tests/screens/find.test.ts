import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { backToToday, commands, findCommand } from '../../renderer/commands/commands.ts';
import { shortcutText } from '../../renderer/commands/shortcut.ts';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { sheetOn, yardOf } from './roundSheet.ts';
import { closeBrowser, openWindow, today, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options?: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** The Find box as a person meets it. */
function boxOn(page: Page) {
  const dialog = page.getByRole('dialog');
  const input = dialog.getByRole('combobox');
  return {
    dialog,
    input,
    open: async () => {
      await page.keyboard.press('Control+k');
      await input.waitFor();
    },
    chosen: () => words(dialog.locator('[role=option][aria-selected=true]')),
    lines: async () => Promise.all((await dialog.getByRole('option').all()).map((option) => words(option))),
    /** Finds by words and takes the first line. */
    take: async (text: string) => {
      await page.keyboard.press('Control+k');
      await input.waitFor();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      await dialog.waitFor({ state: 'detached' });
    },
  };
}

const long = `Ω${'w'.repeat(78)}!`;
/** First by its label. */
const topOfSheet = 'Bjørn 🐝';
async function mixedYard(desk: OpenedWindow['desk']): Promise<void> {
  await yardOf(desk, 3);
  await desk('journal.enter', {
    rows: ['Große Linde', 'Bjørn 🐝', 'כוורת שלוש', long].map((colony) => ({ date: '2026-05-01', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2025', queen_source: 'Kestrel Farm' })),
  });
  await desk('journal.enter', {
    title: 'Notes',
    rows: [
      { date: '2026-06-01', entry: 'note', yard: 'LB', colony: 'LB-02', note: 'Laying workers, très faible' },
      { date: '2026-06-02', entry: 'note', yard: 'LB', note: 'the gate is broken' },
      { date: '2026-10-02', entry: 'loss', yard: 'LB', colony: 'LB-03', cause: 'mites' },
    ],
  });
}

test('Ctrl K from a cell of the sheet finds a colony; Escape goes back to the cell; arrows choose, Enter opens', async () => {
  const { page } = await open({ at: '/tonight', first: mixedYard });
  const sheet = sheetOn(page);
  const box = boxOn(page);
  await sheet.isAt(topOfSheet, 'bees');
  await page.keyboard.type('8');
  await box.open();
  await page.keyboard.type('lb-0');
  await expect.poll(box.chosen).toBe('LB-01 Larch Bend');
  await page.keyboard.press('ArrowDown');
  await expect.poll(box.chosen).toBe('LB-02 Larch Bend');
  await page.keyboard.press('ArrowDown');
  await expect.poll(box.chosen).toContain('LB-03 Larch Bend, 24 April 2026 to 2 October 2026, lost');
  const active = await box.input.getAttribute('aria-activedescendant');
  expect(await page.locator(`[id="${active}"]`).getAttribute('aria-selected')).toBe('true');
  await page.keyboard.press('Escape');
  await box.dialog.waitFor({ state: 'detached' });
  await sheet.isAt(topOfSheet, 'bees');
  expect(await sheet.cell(topOfSheet, 'bees').inputValue()).toBe('8');

  await box.take('LB-02');
  await page.getByRole('heading', { level: 1, name: 'LB-02' }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
});

test('labels with spaces, other letters, emoji, 80 characters and right to left are found however they are typed', async () => {
  const { page } = await open({ at: '/losses', first: mixedYard });
  const box = boxOn(page);
  for (const [typed, label] of [['GROSSE', 'Große Linde'], ['bjorn', 'Bjørn 🐝'], ['🐝', 'Bjørn 🐝'], ['כוורת', 'כוורת שלוש'], ['ωwww', long]] as const) {
    await box.open();
    await page.keyboard.insertText(typed);
    await expect.poll(box.chosen).toBe(`${label} Larch Bend`);
    expect(await box.dialog.locator('[aria-selected=true] bdi').first().textContent()).toBe(label);
    expect(await box.dialog.evaluate((dialog) => [...dialog.querySelectorAll('.find-list, .find-choice')].every((part) => part.scrollWidth <= part.clientWidth))).toBe(true);
    if (label === long || label === 'כוורת שלוש') await expectAccessible(page);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: label }).waitFor();
  }
});

test('notes, queens and yards are found too; nothing found says what would mend it', async () => {
  const { page } = await open({ at: '/colonies', first: mixedYard });
  const box = boxOn(page);
  await page.getByRole('button', { name: 'Find' }).press('Enter');
  await box.input.waitFor();
  await page.keyboard.type('tres faible');
  await expect.poll(box.chosen).toBe('Note: Laying workers, très faible 1 June 2026, LB-02');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Note, 1 June 2026' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'LB-02' }).click();
  await page.getByRole('heading', { level: 1, name: 'LB-02' }).waitFor();

  await box.take('gate broken');
  await page.getByText('Note on Larch Bend: the gate is broken').waitFor();
  await box.open();
  await page.keyboard.type('kestrel 2025');
  await expect.poll(box.lines).toContain('Queen of 2025, blue, Kestrel Farm in Große Linde, since 1 May 2026');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('larch');
  await expect.poll(box.chosen).toContain('Larch Bend LB, 6 alive');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('zzzz');
  await box.dialog.getByText('Nothing in this book and no command has “zzzz” in it.').waitFor();
  await page.keyboard.press('Enter');
  await expectAccessible(page);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('larch');
  await expect.poll(box.chosen).toContain('Larch Bend LB');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /Larch Bend/ }).waitFor();
});

test('every command that can be given is in the box, and does what it says', async () => {
  const { page, desk } = await open({ at: '/tonight', first: mixedYard });
  const box = boxOn(page);
  const sheet = sheetOn(page);
  await sheet.isAt(topOfSheet, 'bees');
  await page.evaluate(() => {
    globalThis.print = () => {
      document.documentElement.dataset['printed'] = location.hash;
    };
  });
  await box.open();
  const shown = await box.lines();
  const told = commands.filter((command) => command !== findCommand && command !== backToToday).map(({ name, shortcut }) => (shortcut ? `${name} ${shortcutText(shortcut)}` : name));
  expect(shown).toEqual(told);
  await expectAccessible(page);
  await page.keyboard.press('Escape');

  await page.keyboard.type('7');
  await box.take('enter the round');
  await expect.poll(() => notice(page).textContent()).toContain('Round at Larch Bend, 1 colony');
  await box.take('undo');
  await expect.poll(async () => (await desk('export.journal', {})).text.includes(today)).toBe(false);
  await box.take('redo');
  await expect.poll(async () => (await desk('export.journal', {})).text.includes(today)).toBe(true);
  await page.keyboard.press('Alt+z');
  await expect.poll(async () => (await desk('export.journal', {})).text.includes(today)).toBe(false);
  await page.keyboard.press('Alt+Shift+Z');
  await expect.poll(async () => (await desk('export.journal', {})).text.includes(today)).toBe(true);

  for (const [keys, heading] of [['Alt+2', 'Yards'], ['Alt+3', 'Colonies'], ['Alt+4', 'Family lines'], ['Alt+7', 'Book'], ['Alt+1', /Larch Bend, round/]] as const) {
    await page.keyboard.press(keys);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
  }
  await box.take('print the order');
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset['printed'])).toBe('#/print/orders');
  await box.take('print the loss');
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset['printed'])).toBe('#/print/losses');
  await box.take('check the book');
  await page.getByText('The book is sound').waitFor();
  const saved = page.waitForEvent('download');
  await box.take('export');
  expect((await saved).suggestedFilename()).toContain('.csv');
  await page.keyboard.press('Alt+1');
  await sheet.ready();
  await box.take('bring records');
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('type'))).toBe('file');
  await page.keyboard.press('Alt+n');
  await page.getByRole('heading', { name: 'Enter a record' }).waitFor();
  await box.take('dark paper');
  expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe('dark');
  expect(await page.getByLabel('Paper').inputValue()).toBe('dark');
  await box.take('paper as the computer');
  const margin = page.getByRole('complementary', { name: 'Margin' });
  await page.keyboard.press('Alt+m');
  await margin.waitFor({ state: 'hidden' });
  await box.take('margin');
  await margin.waitFor();
  await box.take('close this book');
  await page.getByRole('heading', { level: 1, name: 'Outyard' }).waitFor();
  await box.take('tiny');
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
});

test('a line typed and taken in one go is that of the whole text; the help page has every command and is a key or a link away', async () => {
  const { page } = await open({ at: '/tonight', first: mixedYard });
  const box = boxOn(page);
  await sheetOn(page).ready();
  // Typed and taken in one go: the line of the whole text is opened, not that of the first letters.
  await box.take('lb-02');
  await page.getByRole('heading', { level: 1, name: 'LB-02' }).waitFor();
  await page.keyboard.press('F1');
  await page.getByRole('heading', { level: 1, name: 'All commands and keys' }).waitFor();
  for (const { name } of commands) await page.getByRole('cell', { name, exact: true }).waitFor();
  await expectAccessible(page);
  // Ctrl Enter means the round only where there is one.
  await page.keyboard.press('Control+Enter');
  expect(await notice(page).textContent()).toBe('');
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Colonies' }).click();
  await page.getByRole('link', { name: 'All commands and keys' }).click();
  await page.getByRole('heading', { level: 1, name: 'All commands and keys' }).waitFor();
});
