import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });

/** The row that begins with a name, as its cells' words. */
async function cells(page: Page, table: string, name: string): Promise<string[]> {
  const row = page.getByRole('table', { name: table, exact: true }).getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
  return (await row.first().locator('th, td').allTextContents()).map((text) => text.replaceAll(/\s+/g, ' ').trim());
}

const about = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: 'QY', colony, ...more });

test('stores against winter, syrup by yard, supers with their caution, a weak colony, the winter list, and the way to a feed round', async () => {
  window = await openWindow({
    at: '/needs/stores',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('journal.enter', {
        rows: [
          ...['A', 'B', 'C', 'D'].map((colony) => about('2026-05-10', 'install', colony, { origin: 'opening', queen_year: '2026' })),
          about('2026-06-10', 'supers on', 'A', { box: 'medium', count: '1' }),
          about('2026-09-20', 'inspection', 'A', { frames_bees: '9', frames_stores: '8', eggs: 'yes' }),
          about('2026-09-20', 'inspection', 'B', { frames_bees: '3', eggs: 'yes' }),
          about('2026-09-20', 'stores', 'C', { weight: '92', unit: 'lb' }),
          about('2026-11-20', 'stores', 'C', { weight: '80', unit: 'lb' }),
        ],
      });
    },
  });
  const { page } = window;
  // On 5 October: 56 of 90 lb in A are 34 short, 5 gallons with 36.9 lb of sugar.
  await page.getByRole('button', { name: /^as of/ }).click();
  await page.getByRole('textbox', { name: /evening of/ }).fill('2026-10-05');
  await page.getByRole('button', { name: 'Look at that day' }).click();
  await soon(() => words(page.locator('.sentence').first())).toContain('1 of 2 colonies that are told of are short of their winter stores (90 lb): 5 gal of 2:1 by 15 October, with 37 lb of sugar.');
  expect(await cells(page, 'Yards', 'QY Quarry')).toEqual(['QY Quarry', '4', '2', '1', '34', '5 gal of 2:1', '37', '1', 'Enter feed at QY']);
  expect((await cells(page, 'Colonies', 'A')).slice(1)).toEqual(['56', '20 Sep', '15', '–', '56', '90', 'feed 5 gal of 2:1']);
  expect((await cells(page, 'Colonies', 'D')).at(-1)).toBe('nothing told');
  await page.getByRole('region', { name: 'Supers that may be taken' }).getByText('1.9 and 2.9 times', { exact: false }).waitFor();
  expect((await cells(page, 'Supers that may be taken', 'A'))[2]).toBe('take and feed, or leave some');
  await page.getByText('Into A: 9 frames of bees on 20 September 2026, queenright.').waitFor();
  expect(await cells(page, 'The winter list', 'A')).toEqual(['A', 'to do', '–', 'done', 'done', '–', '–', '–']);
  await page.getByRole('link', { name: 'A', exact: true }).first().focus();
  await page.getByRole('complementary', { name: 'Margin' }).getByText('34 lb short of 90 lb.', { exact: false }).waitFor();
  expect(await page.getByRole('button', { name: 'Enter feed at QY' }).isDisabled()).toBe(true);
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).click()]);
  const csv = await readFile(await file.path(), 'utf8');
  expect(csv.split('\r\n')).toHaveLength(6);
  expect(csv).toContain('QY,D,,,,,,,,90,not told');
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Print the list' }).click();
  await page.getByRole('heading', { level: 1, name: 'Stores and winter, 5 October 2026' }).waitFor();
  expect((await cells(page, 'QY Quarry', 'A'))[4]).toBe('feed 5 gal of 2:1');
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.getByRole('link', { name: 'Back to the stores' }).click();
  await expectAccessible(page);

  // Today: what was done is written down as work, and the feed round of the yard is opened.
  await page.getByRole('button', { name: 'Back to today' }).click();
  await page.getByRole('button', { name: 'QY Quarry' }).click();
  await page.getByRole('button', { name: 'entrances reduced' }).click();
  await soon(() => words(notice(page))).toContain('written down as work');
  await soon(async () => (await cells(page, 'The winter list', 'D'))[5]).toBe('done');
  await page.getByRole('button', { name: 'Enter feed at QY' }).click();
  await page.getByRole('heading', { level: 1 }).filter({ hasText: /Quarry|Tonight|round/i }).waitFor();
  await soon(() => page.locator('select').evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value))).toContain('feed');
});
