import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { dayFirst, unitsInHeaders, workbook } from '../exchange/threeSheets.ts';
import { sheetOn } from './roundSheet.ts';
import { expectAccessible } from './support/axe.ts';
import { pdfText } from './support/pdfText.ts';
import { chooseRecords, goTo, notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

const colonies = 40;
const labels = Array.from({ length: colonies }, (_, at) => `OO-${String(at + 1).padStart(2, '0')}`);
/** Forty colonies in one yard, and another yard that is in the neighbour's spreadsheets only. */
const twoYards: WindowOptions = {
  at: '/tonight',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'OO', name: 'Old Orchard', room: 60, minutes: 10 });
    await desk('journal.enter', { title: 'Forty packages', rows: labels.map((colony) => ({ date: '2026-04-20', entry: 'install', yard: 'OO', colony, origin: 'package', queen_year: '2026' })) });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions = twoYards) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const entries = async ({ desk }: OpenedWindow) => (await desk('book.status', {})).book?.entries;

/** Brings in what the sheet page shows, once its questions are answered. */
async function bringIn(page: Page, records: string): Promise<void> {
  await page.getByRole('button', { name: /^See what \d+ rows? would enter$/ }).press('Enter');
  await page.getByRole('button', { name: `Enter ${records}`, exact: true }).press('Enter');
  await notice(page).getByText(`${records} entered from`).waitFor();
}

test('an evening: a round, a strike and its undo, the lines on paper, three spreadsheets, a row sorted out, an import taken back', async () => {
  const opened = await open();
  const { page } = opened;

  // The round of the yard.
  const sheet = sheetOn(page);
  await sheet.isAt('OO-01', 'bees');
  await sheet.typeDown(['8', '7', '6']);
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toContain('Round at Old Orchard, 3 colonies');
  expect(await entries(opened)).toBe(colonies + 3);

  // One look was another colony's: struck, then undone, told in the colony's story.
  await page.getByRole('link', { name: 'Round at Old Orchard, 3 colonies' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Round at Old Orchard, 3 colonies' }).waitFor();
  const lines = page.getByRole('table', { name: 'Its entries' });
  await expect.poll(() => lines.getByRole('row').count()).toBe(4);
  await expectAccessible(page);
  await lines.getByRole('link', { name: 'OO-03' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'OO-03' }).waitFor();
  await page.getByRole('button', { name: /^Strike the entry of 25.November 2026/ }).press('Enter');
  await page.getByLabel('Why it is struck').fill('it was OO-13');
  await page.keyboard.press('Enter');
  await expect.poll(() => words(page.locator('.story'))).toContain('struck: it was OO-13');
  await page.getByRole('heading', { level: 1 }).focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => words(page.locator('.story'))).not.toContain('struck');

  // As it was on the evening after the packages came: the same colony, without this evening's round.
  await page.keyboard.press('Alt+l');
  await page.getByRole('textbox', { name: 'Look at the operation as it was' }).waitFor();
  await page.keyboard.type('2026-04-21');
  await page.keyboard.press('Enter');
  await expect.poll(() => words(page.locator('.looking'))).toContain('You are looking at 21 April 2026. Nothing can be entered.');
  await expect.poll(() => words(page.locator('.story'))).not.toContain('frames of bees');
  await page.keyboard.press('Alt+Shift+L');
  await expect.poll(() => words(page.locator('.story'))).toContain('6 frames of bees');

  // The family lines, on paper to the last colony.
  await goTo(page, 'Family lines');
  await page.getByRole('link', { name: 'Print' }).press('Enter');
  const sheets = page.getByRole('region', { name: /, sheet \d+ of \d+$/ });
  await expect.poll(() => sheets.count()).toBe(3);
  const printed = pdfText(await page.pdf({ preferCSSPageSize: true }));
  expect(printed).toHaveLength(3);
  expect(labels.filter((label) => !printed.some((text) => text.includes(label)))).toEqual([]);
  expect(printed[2]).toContain(labels.at(-1));
  await page.getByRole('link', { name: 'Back to Family lines' }).press('Enter');

  // The sheet to write on in the yard, to the last colony.
  await goTo(page, 'Tonight');
  await page.getByRole('link', { name: 'Print this sheet' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: /^Old Orchard/ }).waitFor();
  const field = pdfText(await page.pdf({ preferCSSPageSize: true }));
  expect(field.length).toBeGreaterThan(1);
  expect(labels.filter((label) => !field.some((text) => text.includes(label)))).toEqual([]);
  expect(field.at(-1)).toContain(labels.at(-1));
  await page.goBack();

  // Three spreadsheets of a neighbour's yard, each shaped otherwise: a workbook with two sheets,
  await goTo(page, 'Book');
  await chooseRecords(page, { name: 'bees.xlsx', text: workbook() });
  await page.getByRole('heading', { name: 'Read a spreadsheet', level: 1 }).waitFor();
  await bringIn(page, '3 records');
  await page.getByLabel('Sheet', { exact: true }).selectOption('Inspections');
  await page.getByLabel('Weather becomes').selectOption('Note');
  await bringIn(page, '2 records');
  await page.getByRole('button', { name: 'Done with this file' }).press('Enter');
  // one with days first and decimal commas,
  await chooseRecords(page, { name: 'durchsicht.csv', text: dayFirst });
  await bringIn(page, '3 records');
  await page.getByRole('group', { name: 'What was brought in from durchsicht.csv' }).getByText('1 row could not be entered').waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Done with this file' }).press('Enter');
  // and one with units in its headers, whose days can be read both ways.
  await chooseRecords(page, { name: 'honey.csv', text: unitsInHeaders });
  await page.getByLabel('Days are written').selectOption('month-first');
  await page.getByLabel('Sold to becomes').selectOption('left out');
  await bringIn(page, '2 records');
  expect(await entries(opened)).toBe(colonies + 3 + 10);

  // The row that could not stand has waited; it is mended and entered, by keyboard alone.
  await page.keyboard.press('Control+k');
  await page.getByRole('dialog').getByRole('combobox').waitFor();
  await page.keyboard.type('sort out');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'To sort out' }).waitFor();
  const mend = page.getByRole('button', { name: 'Mend line 5 of durchsicht.csv' });
  expect(await words(page.getByRole('row').filter({ has: mend }))).toContain('5 Datum 31/06/2026');
  await mend.press('Enter');
  const form = page.getByRole('form', { name: 'Line 5 of durchsicht.csv' });
  await expect.poll(() => form.evaluate((node) => node.contains(document.activeElement) && (document.activeElement as HTMLInputElement).value)).toBe('31/06/2026');
  expect(await form.getByRole('button', { name: 'Enter this row' }).isDisabled()).toBe(true);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('2026-06-30');
  await form.getByText('It would stand: 30 June 2026, LB-01').waitFor();
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await notice(page).getByText('Sorted out: line 5 of durchsicht.csv: 1 entry in the book.').waitFor();
  await page.getByText('Nothing waits to be sorted out.').waitFor();
  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).press('Enter');
  await mend.waitFor();
  await page.locator('.notice-place').getByRole('button', { name: 'Bring back' }).press('Enter');
  await mend.waitFor({ state: 'detached' });
  expect(await entries(opened)).toBe(colonies + 3 + 11);

  // An import that others rest on stays; another is taken back whole, with what that does said first.
  await goTo(page, 'Tonight');
  await page.getByRole('link', { name: 'Take back: Import of honey.csv' }).waitFor();
  await page.getByRole('link', { name: 'All that was entered' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'What was entered' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Import of bees.xlsx, Inspections' }).press('Enter');
  await page.getByRole('button', { name: 'Take this import back…' }).press('Enter');
  const group = page.getByRole('group', { name: 'If it is taken back:' });
  await expect.poll(() => words(group)).toContain('2 entries no longer count. 2 colonies are again as before.');
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Take this import back…');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Take back 2 entries' }).press('Enter');
  await notice(page).getByText('Undone: Import of bees.xlsx, Inspections (2 entries).').waitFor();
  await page.getByText('This was taken back and no longer counts.').waitFor();
  expect(await entries(opened)).toBe(colonies + 3 + 9);
  const hives = (await opened.desk('journal.recent', { limit: 50 })).gestures.find(({ title }) => title === 'Import of bees.xlsx, Hive list');
  await page.goto(page.url().replace(/#.*/, `#/acts/${hives?.id}`));
  await page.getByRole('button', { name: 'Take this import back…' }).press('Enter');
  await page.getByRole('group', { name: 'If it is taken back:' }).getByText(/could then not stand/).waitFor();
  expect(await page.getByRole('button', { name: /^Take back \d/ }).count()).toBe(0);
});

test('rows that wait: what can stand now goes in at once, one is set aside and brought back, all by keyboard; a large act is read in parts', async () => {
  const opened = await open({
    at: '/book',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
    },
  });
  const { page } = opened;
  await page.goto(`${page.url()}/sort-out`);
  await page.getByText('Nothing waits to be sorted out.').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Bring records in' }).press('Enter');
  const rows = Array.from({ length: 420 }, (_, at) => `2026-04-24,install,LB,C-${at + 1},package`);
  await chooseRecords(page, { name: 'large.csv', text: ['date,entry,yard,colony,origin', ...rows, '2026-05-02,queen,,N-1,', '2026-05-03,move,,N-2,', '2026-13-01,gift,,C-1,', '2026-05-05,absconded,,N-9,', ''].join('\n') });
  await page.getByRole('button', { name: 'Enter 420 records' }).press('Enter');
  await page.getByRole('link', { name: 'See what was entered' }).press('Enter');
  await page.getByText('1 to 200 of 420').waitFor();
  for (let turn = 0; turn < 2; turn += 1) await page.getByRole('button', { name: 'Later entries' }).press('Enter');
  await page.getByText('401 to 420 of 420').waitFor();
  await page.getByRole('link', { name: 'C-420', exact: true }).waitFor();
  await page.getByRole('link', { name: 'To sort out' }).press('Enter');

  const open3 = page.getByRole('button', { name: 'Mend line 423 of large.csv' });
  await open3.press('Enter');
  await page.getByRole('button', { name: 'Set aside' }).press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
  await page.keyboard.press('Enter');
  await page.getByText('Say why in a word or two').waitFor();
  await page.keyboard.type('it was the neighbour’s');
  await page.keyboard.press('Enter');
  await notice(page).getByText('Line 423 of large.csv is set aside.').waitFor();
  await open3.waitFor({ state: 'detached' });
  // The keyboard goes on to the next row.
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Mend line 424 of large.csv');
  await page.getByLabel('Show').selectOption('aside');
  await expectAccessible(page);
  await expect.poll(() => words(page.getByRole('row').nth(1))).toContain('it was the neighbour’s (25 November 2026)');
  await page.getByRole('button', { name: 'Bring back line 423 of large.csv' }).press('Enter');
  await page.getByText('No row is set aside.').waitFor();
  await page.getByLabel('Show').selectOption('waiting');
  await open3.waitFor();

  await page.keyboard.press('Escape');
  await opened.desk('journal.enter', { rows: [{ date: '2026-04-25', entry: 'install', yard: 'LB', colony: 'N-9', origin: 'nuc' }] });
  const { rows: kept } = await opened.desk('sortOut.list', { which: 'waiting', from: 0, limit: 9 });
  const first = kept[0];
  expect(first).toMatchObject({ line: 422, column: 'what', ready: null });
  // Mended to another kind of entry; a cell that kind has no place for is named.
  await page.reload();
  await page.getByText('Can be entered now. 5 May 2026, N-9').waitFor();
  await page.getByRole('button', { name: 'Enter 1 row that can stand now' }).press('Enter');
  await notice(page).getByText('Sorted out: 1 row as typed: 1 entry in the book.').waitFor();
  await page.getByRole('button', { name: 'Mend line 422 of large.csv' }).press('Enter');
  await page.getByLabel('What happened').selectOption('Note');
  await page.getByText('“note” needs note').waitFor();
  await page.getByRole('textbox', { name: /^Note/ }).fill('queen seen, label not read');
  await page.getByText('No colony called “N-1” is recorded').first().waitFor();
  await page.getByLabel(/^Colony/).fill('N-9');
  await page.getByText('It would stand:').waitFor();
  await page.getByRole('button', { name: 'Enter this row' }).press('Enter');
  await notice(page).getByText('Sorted out: line 422 of large.csv').waitFor();
  expect(await opened.desk('sortOut.counts', {})).toEqual({ waiting: 2, ready: 0, aside: 0, entered: 2 });

  // A record for a day to come is asked about once.
  await page.keyboard.press('Alt+n');
  await page.getByRole('heading', { name: 'Enter a record' }).waitFor();
  await page.getByLabel('What happened').selectOption('Note');
  await page.getByLabel('Day', { exact: true }).fill('2026-12-03');
  await page.getByRole('textbox', { name: /^Note/ }).fill('queens ordered');
  await page.keyboard.press('Control+Enter');
  await page.getByText('3 December 2026 is still to come; today is 25 November 2026.').waitFor();
  expect((await opened.desk('export.journal', {})).text).not.toContain('queens ordered');
  await page.keyboard.press('Control+Enter');
  await notice(page).getByText('Note of 3 December 2026: 1 entry in the book.').waitFor();
});
