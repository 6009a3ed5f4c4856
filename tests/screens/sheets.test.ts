import { afterAll, afterEach, expect, test } from 'vitest';
import { dayFirst, unitsInHeaders, workbook } from '../exchange/threeSheets.ts';
import { expectAccessible } from './support/axe.ts';
import { chooseRecords, notice, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async () =>
  (window = await openWindow({
    at: '/book',
    first: async (desk) => {
      await desk('book.create', { name: 'Larch Bend' });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
      await desk('journal.enter', {
        rows: ['LB-01', 'LB-02'].map((colony) => ({ date: '2026-04-01', entry: 'install', yard: 'LB', colony, origin: 'package' })),
      });
    },
  }));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const entries = async (from: OpenedWindow) => (await from.desk('book.status', {})).book?.entries;

test('a workbook leads to the page of its columns; one left open is asked about, and each sheet is entered as one step', async () => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, { name: 'bees.xlsx', text: workbook() });
  await page.getByRole('heading', { name: 'Read a spreadsheet', level: 1 }).waitFor();
  expect(new URL(page.url()).hash).toBe('#/book/sheet');
  await page.getByLabel('Sheet', { exact: true }).selectOption('Inspections');
  await page.getByText('Say what “Weather” becomes, or leave it out.').waitFor();
  expect(await page.getByRole('button', { name: /^See what/ }).count()).toBe(0);
  expect(await page.getByLabel('Frames of stores becomes').inputValue()).toBe('frames_stores');
  const sample = page.getByRole('table', { name: 'The first rows as they will be read' });
  expect(await words(sample.getByRole('row').nth(1))).toBe('3 2026-05-02 Inspection LB-01 8 4.5 3.5 yes calm');
  await expectAccessible(page);

  await page.getByLabel('Weather becomes').selectOption('Note');
  await page.getByText('Weather: sunny; Remarks: calm').waitFor();
  await page.getByRole('button', { name: 'See what 2 rows would enter' }).click();
  await page.getByRole('button', { name: 'Enter 2 records' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Enter 2 records' }).click();
  await notice(page).getByText('2 records entered from bees.xlsx, Inspections.').waitFor();
  expect(await entries(opened)).toBe(4);
  await undoByNotice(page);
  await expect.poll(() => entries(opened)).toBe(2);
});

test('days first, decimal commas and semicolons are read as they are; what cannot be read is listed with its line', async () => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, { name: 'durchsicht.csv', text: dayFirst });
  await page.getByRole('heading', { name: 'Read a spreadsheet', level: 1 }).waitFor();
  expect(await page.getByLabel('Days are written').inputValue()).toBe('day-first');
  expect(await page.getByLabel('Decimals are written').inputValue()).toBe('comma');
  await page.getByRole('button', { name: 'See what 4 rows would enter' }).click();
  await page.getByRole('button', { name: 'Enter 3 records' }).click();
  await notice(page).getByText('3 records entered from durchsicht.csv. 1 row still to sort out').waitFor();
  const list = page.getByRole('group', { name: 'To sort out' });
  expect(await words(list.getByRole('row').nth(1))).toContain('5 Datum 31/06/2026');
  const { text } = await opened.desk('export.journal', {});
  expect(text).toContain('8.5,4.5,1.25');

  await page.getByRole('button', { name: 'Done with this file' }).click();
  await chooseRecords(page, { name: 'again.csv', text: dayFirst });
  await page.getByText('Columns with these names were read before; the same choices are set.').waitFor();
});

test('units from the headers; days that can be read both ways are asked, by keyboard alone', async () => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, { name: 'honey.csv', text: unitsInHeaders });
  await page.getByText('Every day can be read month first and day first. Say which it is.').waitFor();
  expect(await page.getByLabel('Unit of Honey (kg)').inputValue()).toBe('kg');
  expect(await page.getByLabel('Unit of Empty bucket (lbs)').inputValue()).toBe('lb');
  await page.getByLabel('Days are written').focus();
  await page.keyboard.type('month');
  await page.getByLabel('Sold to becomes').focus();
  await page.keyboard.type('left');
  const see = page.getByRole('button', { name: 'See what 2 rows would enter' });
  await see.waitFor();
  expect(await words(page.getByRole('table', { name: 'The first rows as they will be read' }).getByRole('row').nth(1))).toContain('2026-07-08 Harvest LB');
  await expectAccessible(page);
  await see.press('Enter');
  await page.getByRole('button', { name: 'Enter 2 records' }).press('Enter');
  await notice(page).getByText('2 records entered from honey.csv.').waitFor();
  expect(await entries(opened)).toBe(4);
  await page.getByRole('button', { name: 'Done with this file' }).press('Enter');
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
});

test('a kind chosen by hand guesses the columns for it; what no column says is filled in once', async () => {
  const { page } = await open();
  await chooseRecords(page, { name: 'list.csv', text: 'Hive,Yard,Since\nLB-09,LB,spring\n' });
  await page.getByRole('heading', { name: 'Read a spreadsheet', level: 1 }).waitFor();
  await page.getByLabel('Each row is').selectOption('Install');
  await page.getByRole('heading', { name: 'The same for every row' }).waitFor();
  await page.getByLabel('Day', { exact: true }).fill('4/20/2026');
  await page.getByLabel('Origin', { exact: true }).selectOption('opening');
  await page.getByLabel('Since becomes').selectOption('Note');
  await page.getByRole('button', { name: 'See what 1 row would enter' }).click();
  await page.getByRole('button', { name: 'Enter 1 record' }).click();
  await notice(page).getByText('1 record entered from list.csv.').waitFor();
});

test('what is no spreadsheet stays on the book’s page with a sentence, and the page without a file leads back', async () => {
  const { page } = await open();
  await chooseRecords(page, { name: 'picture.xlsx', text: Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10]) });
  await page.getByRole('alert').getByText('picture.xlsx is not an XLSX file').waitFor();
  await page.goto(page.url().replace('#/book', '#/book/sheet'));
  await page.getByRole('link', { name: 'To the book' }).click();
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
});
