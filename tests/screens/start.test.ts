import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, startBook } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options?: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('the first start offers a demo, a new book, a book there is, and records', async () => {
  const { page } = await open();
  for (const heading of ['Open a book', 'Look around first', 'Start a book', 'Import records']) {
    expect(await page.getByRole('heading', { name: heading }).count(), heading).toBe(1);
  }
  await expectAccessible(page);
});

test('what looks for faults of access finds them: a button without a name, and words too faint on dark paper alone', async () => {
  const { page } = await open();
  await page.evaluate(() => document.querySelector('main, body')?.insertAdjacentHTML('beforeend', '<button id="planted" type="button"></button>'));
  await expect(expectAccessible(page)).rejects.toThrow('on light paper');
  await page.evaluate(() => {
    document.querySelector('#planted')?.remove();
    document.querySelector('main, body')?.insertAdjacentHTML('beforeend', '<style>@media (prefers-color-scheme: dark) { #faint { color: #333; background: #222; } }</style><p id="faint">Faint words</p>');
  });
  await expect(expectAccessible(page)).rejects.toThrow('on dark paper');
});

test('a book without a name is not started; with one it is, and closing leads back to it', async () => {
  const { page } = await open();
  const section = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Start a book' }) });
  await section.getByRole('button', { name: 'Start the book' }).click();
  await section.getByText('Give the book a name first.').waitFor();
  await startBook(page, 'Ossar Valley');
  await page.getByRole('button', { name: 'Close this book' }).click();
  await page.getByRole('button', { name: 'Ossar Valley', exact: true }).click();
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
  expect(await page.locator('.rail-name').textContent()).toBe('Ossar Valley');
});

test('a file that is no book is refused with a sentence, and the page stays', async () => {
  const { page, folder } = await open();
  const path = join(folder, 'letter.outyard');
  await writeFile(path, 'Dear sirs, this is a letter and no book of bees.');
  await page.getByLabel('A book elsewhere').fill(path);
  await page.getByRole('button', { name: 'Open this book' }).click();
  await page.getByRole('alert').first().waitFor();
  expect(await page.getByRole('alert').first().textContent()).toMatch(/not .*book|no .*book/i);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Open the small book' }).click();
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
});

test('the demo opens, and says that its records are invented', async () => {
  const { page } = await open();
  await page.getByRole('button', { name: 'Open the small book' }).click();
  await page.getByText('Invented records').waitFor();
  await goTo(page, 'Colonies');
  await page.getByRole('row').nth(3).waitFor();
  expect(await page.locator('.rail-size').first().textContent()).toMatch(/colon/);
});

test('records chosen at the start are looked at in a new book before anything is entered', async () => {
  const window = await open();
  const { page } = window;
  const section = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Import records' }) });
  await section.getByLabel('File of records').setInputFiles({
    name: 'spring.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('date,entry,yard,colony,origin\n2026-04-24,install,LB,LB-01,package\n'),
  });
  await section.getByLabel('Name of the operation').fill('Ossar Valley');
  await section.getByRole('button', { name: 'Start the book and look at the file' }).click();
  await page.getByRole('button', { name: 'Enter 1 record' }).waitFor();
  expect((await window.desk('book.status', {})).book?.entries).toBe(0);
  await page.getByRole('button', { name: 'Enter 1 record' }).click();
  await page.getByRole('status').getByText('1 record entered from spring.csv.').waitFor();
  expect((await window.desk('book.status', {})).book?.living).toBe(1);
});
