import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { expectAccessible } from './support/axe.ts';
import { words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const row = (date: string, entry: NonNullable<Cells['entry']>, more: Cells): Cells => ({ date, entry, ...more });

async function cells(page: Page, name: string): Promise<string[]> {
  const found = page.getByRole('table', { name: 'Costs and returns', exact: true }).getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
  return (await found.first().locator('th, td').allTextContents()).map((text) => text.trim());
}

test('a season’s account by line and yard, hours valued or not, the entries behind a figure, a file for the accountant, an empty season', async () => {
  window = await openWindow({
    at: '/book',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('journal.enter', {
        rows: [
          row('2025-05-01', 'note', { note: 'The first season' }),
          row('2025-05-02', 'purchase', { item: 'deep box', quantity: '10', price: '280' }),
          row('2026-04-24', 'install', { yard: 'QY', colony: 'A', origin: 'package', supplier: 'Sandel Road Bees', price: '174' }),
          row('2026-06-01', 'work', { yard: 'QY', hours: '2', people: '2', miles: '30', task: 'round' }),
          row('2026-08-01', 'purchase', { item: 'white sugar, 50 lb bag', quantity: '2', price: '75' }),
          row('2026-08-02', 'purchase', { item: 'honey jar, 1 lb', quantity: '60' }),
          row('2026-09-05', 'sale', { item: 'honey, 1 lb jar', quantity: '40', price: '420' }),
        ],
      });
    },
  });
  const { page } = window;
  await page.getByRole('link', { name: 'See costs and returns' }).click();
  await soon(() => words(page.locator('.sentence'))).toBe('2026–27 so far: 420.00 came in and costs were 292.00; 128.00 is left.');
  expect(await cells(page, 'Bees and queens')).toEqual(['Bees and queens', '174.00', '0.00', '174.00']);
  expect(await cells(page, 'All costs')).toEqual(['All costs', '189.00', '103.00', '292.00']);
  expect(await cells(page, 'Returns less costs')).toEqual(['Returns less costs', '−189.00', '317.00', '128.00']);
  expect(await cells(page, 'For each pound of honey, costs')).toEqual(['For each pound of honey, costs', '–', '', '–']);
  await page.getByText('No honey was weighed in these days, so there is nothing to divide by.').waitFor();
  await page.getByText('4 hours of work were written down and are not valued.').waitFor();
  await page.getByText('One purchase or sale has no price and is left out:').waitFor();
  await expectAccessible(page);

  await page.getByRole('checkbox', { name: 'Value the hours, at 18 an hour' }).check();
  await soon(() => cells(page, 'Hours')).toEqual(['Hours', '72.00', '0.00', '72.00']);
  await page.getByRole('button', { name: '364.00, All costs, Together: show the entries' }).click();
  const behind = page.getByRole('region', { name: 'What is behind: All costs, Together' });
  await soon(() => words(behind.getByRole('row').last())).toContain('364.00');
  expect(await words(behind)).toContain('deep box, part 2 of 10');
  await expectAccessible(page);
  // The words of an item are a guess; another line is chosen by hand, said, and taken back.
  expect(await words(behind.getByRole('combobox', { name: 'Line of white sugar, 50 lb bag' }).locator('option:checked'))).toBe('Feed (a guess)');
  await behind.getByRole('combobox', { name: 'Line of white sugar, 50 lb bag' }).selectOption('Containers');
  await behind.getByText('white sugar, 50 lb bag now stands under Containers, as you chose; its words speak for Feed.').waitFor();
  await soon(() => cells(page, 'Containers')).toEqual(['Containers', '0.00', '75.00', '75.00']);
  await behind.getByRole('button', { name: 'Take back the choice for white sugar, 50 lb bag' }).waitFor();
  await expectAccessible(page);
  await behind.getByRole('button', { name: 'Take back the choice', exact: true }).click();
  await soon(() => cells(page, 'Feed')).toEqual(['Feed', '0.00', '75.00', '75.00']);
  await behind.getByText('white sugar, 50 lb bag stands under Feed again, guessed from its words.').waitFor();
  // From the line’s own list the purchase leaves for the other; the sentence, and the way back, stay.
  await page.getByRole('button', { name: '75.00, Feed, Together: show the entries' }).click();
  const feed = page.getByRole('region', { name: 'What is behind: Feed, Together' });
  await feed.getByRole('combobox', { name: 'Line of white sugar, 50 lb bag' }).selectOption('Other');
  await soon(() => cells(page, 'Other')).toEqual(['Other', '0.00', '75.00', '75.00']);
  await feed.getByRole('button', { name: 'Take back the choice', exact: true }).click();
  await soon(() => cells(page, 'Feed')).toEqual(['Feed', '0.00', '75.00', '75.00']);
  await page.getByRole('button', { name: '364.00, All costs, Together: show the entries' }).click();

  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).click()]);
  const lines = (await readFile(await file.path(), 'utf8')).trim().split('\r\n');
  expect(lines[0]).toBe('date,kind,description,quantity,amount,category,yard,basis,entry');
  expect(lines.find((line) => line.includes('honey'))).toMatch(/^2026-09-05,sale,"honey, 1 lb jar",40,420,honey,,paid,\d+$/);
  expect(lines.find((line) => line.includes('package'))).toMatch(/^2026-04-24,install,package from Sandel Road Bees,1,-174,bees,QY,paid,\d+$/);

  await page.getByRole('combobox', { name: 'Equipment' }).selectOption('paid');
  await soon(() => cells(page, 'All costs')).toEqual(['All costs', '261.00', '75.00', '336.00']);
  await page.getByRole('combobox', { name: 'Season' }).selectOption({ label: '2025–26' });
  await soon(() => words(page.locator('.sentence'))).toBe('2025–26: 0.00 came in and costs were 280.00; 280.00 is lacking.');
  await page.getByText('No colony was kept in these days, so there is nothing to divide by.').waitFor();
  await behind.getByRole('link', { name: '2 May 2025' }).click();
  await page.getByRole('heading', { name: 'Purchase, 2 May 2025' }).waitFor();
});
