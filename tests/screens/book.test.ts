import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { chooseRecords, goTo, notice, undoByNotice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

const sample = fileURLToPath(new URL('../reference/data/ossar-journal.csv', import.meta.url));
const newBook: WindowOptions = {
  at: '/book',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions = newBook) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const status = async (from: OpenedWindow) => (await from.desk('book.status', {})).book;

test('the sample is looked at, entered, taken back and entered again; a second time it changes nothing', async () => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, sample);
  const counts = page.getByRole('table', { name: 'Every row of the file is counted once' });
  await counts.waitFor();
  const figures = (await counts.locator('td').allTextContents()).map((text) => Number(text.replaceAll(',', '')));
  const [entered = 0, repeats = 0, toSortOut = 0, read = 0] = figures;
  expect(entered + repeats + toSortOut).toBe(read);
  expect(entered).toBeGreaterThan(600);
  expect((await status(opened))?.entries).toBe(0);
  await expectAccessible(page);

  await page.getByRole('button', { name: /^Enter \d+ records$/ }).click();
  await notice(page).getByText(/entered from ossar-journal.csv/).waitFor();
  expect((await status(opened))?.entries).toBe(entered);

  await undoByNotice(page);
  await expect.poll(async () => (await status(opened))?.living).toBe(0);

  await chooseRecords(page, sample);
  await page.getByRole('button', { name: /^Enter \d+ records$/ }).click();
  await notice(page).getByText(/entered from ossar-journal.csv/).waitFor();
  await chooseRecords(page, sample);
  await page.getByText('There is nothing new to enter; its rows to sort out wait in the book already.').waitFor();
  await opened.restart();
  await expect.poll(() => words(page.locator('dl').first())).toContain(`Entries ${entered}, `);
  expect((await status(opened))?.entries).toBe(entered);
});

test('rows that cannot be read are listed with line, column, value and what would mend them; the others are entered', async () => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, {
    name: 'evening.csv',
    text: [
      'date,entry,yard,colony,origin,mites,bees',
      '2026-04-24,install,LB,LB-01,package,,',
      '2026-02-30,install,LB,LB-02,package,,',
      '2026-05-02,mites,LB,LB-01,,-4,300',
      '2026-05-02,mites,LB,LB-09,,4,300',
      '2026-04-24,install,LB,LB-01,package,,',
      '',
    ].join('\r\n'),
  });
  const list = page.getByRole('group', { name: 'To sort out' });
  await list.waitFor();
  const rows = await list.getByRole('row').allTextContents();
  expect(rows).toHaveLength(4);
  expect(rows[1]).toContain('3');
  expect(rows[1]).toContain('date');
  expect(rows[1]).toContain('2026-02-30');
  expect(rows[2]).toContain('-4');
  expect(rows[3]).toContain('LB-09');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Enter 1 record' }).click();
  await notice(page).getByText('1 record entered from evening.csv.').waitFor();
  expect((await status(opened))?.living).toBe(1);
});

test.each([
  ['empty.csv', ''],
  ['picture.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0xff, 0xfe])],
  ['letter.csv', 'Dear neighbour,\nthe bees flew well this year.\n'],
])('%s cannot be read: a sentence, and nothing is entered', async (name, text) => {
  const opened = await open();
  const { page } = opened;
  await chooseRecords(page, { name, text });
  await page.getByRole('alert').first().waitFor();
  expect((await words(page.getByRole('alert').first())).length).toBeGreaterThan(20);
  expect(await page.getByRole('button', { name: /^Enter/ }).count()).toBe(0);
  expect((await status(opened))?.entries).toBe(0);
});

test('yards are written down and changed by keyboard', async () => {
  const opened = await open();
  const { page } = opened;
  await page.getByRole('button', { name: 'Add a yard' }).press('Enter');
  for (const [typed, key] of [['LB', 'Tab'], ['Larch Bend', 'Tab'], ['20', 'Tab'], ['x', 'Enter']] as const) {
    await page.keyboard.type(typed);
    await page.keyboard.press(key);
  }
  await page.getByText('“x” is no number. Type it in min, such as 20. Leave it empty if it is not known.').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('99999');
  await page.getByText('“99999” is above 1,440 min, the most that makes sense here.').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('35');
  await page.keyboard.press('Enter');
  await notice(page).getByText('The yard Larch Bend is in the book.').waitFor();
  expect(await words(page.getByRole('row', { name: /LB/ }))).toContain('LB Larch Bend 20 35 0');
  // The next yard is one press away.
  await expect.poll(() => page.locator(':focus').innerText()).toBe('Add a yard');

  await page.getByRole('button', { name: 'Change Larch Bend' }).press('Enter');
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator(':focus').getAttribute('aria-label')).toBe('Change Larch Bend');
  await page.getByRole('button', { name: 'Change Larch Bend' }).click();
  await page.getByRole('textbox', { name: 'Room for' }).fill('');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await status(opened))?.yards[0]?.room).toBeNull();
  await expectAccessible(page);
});

test('a second yard of the same code is refused beside what was typed', async () => {
  const { page } = await open({
    ...newBook,
    first: async (desk) => {
      await newBook.first?.(desk);
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
    },
  });
  await page.getByRole('button', { name: 'Add a yard' }).click();
  await page.getByRole('textbox', { name: 'Code' }).fill('lb');
  await page.getByRole('textbox', { name: 'Name of the yard' }).fill('Long Bank');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').getByText('already a yard').waitFor();
  expect(await page.getByRole('textbox', { name: 'Name of the yard' }).inputValue()).toBe('Long Bank');
});

test('name, day order and mass unit are kept with the book', async () => {
  const opened = await open();
  const { page } = opened;
  await page.getByLabel('Name', { exact: true }).fill('Ossar Valley East');
  await page.keyboard.press('Enter');
  await page.locator('.rail-name').getByText('Ossar Valley East').waitFor();
  await page.getByLabel('Days with slashes').selectOption('day-first');
  await page.getByLabel('Honey and stores in').selectOption('kg');
  await expect.poll(async () => (await status(opened))?.massUnit).toBe('kg');
  await opened.restart();
  expect(await status(opened)).toMatchObject({ name: 'Ossar Valley East', dateOrder: 'day-first', massUnit: 'kg' });
});

test('the journal is taken out as a file that brings the same records into another book', async () => {
  const opened = await open({
    at: '/book',
    first: async (desk) => {
      await desk('book.demo', { which: 'tiny' });
    },
  });
  const { page } = opened;
  const before = await status(opened);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export the journal' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/\.csv$/);
  const text = await readFile((await saved.path())!, 'utf8');
  await opened.desk('book.create', { name: 'Second' });
  await page.reload();
  await chooseRecords(page, { name: 'journal.csv', text });
  await page.getByRole('button', { name: /^Enter \d+ records$/ }).click();
  await notice(page).getByText('entered from journal.csv').waitFor();
  const after = await status(opened);
  expect(after).toMatchObject({ entries: before?.entries, living: before?.living });
});

test('checking the book says that it is sound', async () => {
  const { page } = await open({
    at: '/book',
    first: async (desk) => {
      await desk('book.demo', { which: 'tiny' });
    },
  });
  await page.getByRole('button', { name: 'Check the book' }).click();
  await page.getByText(/The book is sound: \d+/).waitFor();
  await goTo(page, 'Colonies');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Colonies');
});
