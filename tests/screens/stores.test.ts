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

test('stores against winter, syrup by yard, supers with their caution, a weak colony, the winter list, the way to a feed round; and space and swarms', async () => {
  window = await openWindow({
    at: '/needs/stores',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('journal.enter', {
        rows: [
          ...['A', 'B', 'C', 'D'].map((colony) => about('2026-05-10', 'install', colony, { origin: 'opening', queen_year: '2026' })),
          { date: '2026-03-01', entry: 'stock', item: 'medium super', quantity: '4', from: 'supplier', to: 'shed' },
          about('2026-05-20', 'inspection', 'A', { frames_bees: '18', frames_brood: '8', eggs: 'yes', queen_cells: 'none' }),
          about('2026-05-20', 'inspection', 'B', { frames_bees: '20', queen_cells: 'swarm' }),
          about('2026-05-20', 'inspection', 'C', { frames_bees: '8', queen_cells: 'none' }),
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

  // Today: too late to feed; what was done is written down as work, and the feed round of the yard is opened.
  await page.getByRole('button', { name: 'Back to today' }).click();
  await soon(async () => (await cells(page, 'The winter list', 'A'))[1]).toBe('short');
  await page.getByText('liquid feed is past its day, 15 October 2026', { exact: false }).waitFor();
  await page.getByRole('button', { name: 'QY Quarry' }).click();
  const reduced = page.getByRole('button', { name: 'entrances reduced' });
  await reduced.press('Enter');
  await soon(() => words(notice(page))).toContain('written down as work');
  expect(await reduced.evaluate((one) => one === document.activeElement)).toBe(true);
  await soon(async () => (await cells(page, 'The winter list', 'D'))[5]).toBe('done');
  await page.getByRole('button', { name: 'Enter feed at QY' }).click();
  await page.getByRole('heading', { level: 1 }).filter({ hasText: /Quarry|Tonight|round/i }).waitFor();
  await soon(() => page.locator('select').evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value))).toContain('feed');

  // Space and swarms by keyboard alone: in November calmly nothing; on 25 May what wants room, what may swarm, what may be split.
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Needs' }).press('Enter');
  await page.getByRole('navigation', { name: 'Pages of what needs doing' }).getByRole('link', { name: 'Space and swarms' }).press('Enter');
  await soon(() => words(page.locator('.sentence').first())).toBe('Boxes are added from 15 April to 20 July; this is not the time.');
  expect(await page.getByRole('table').count()).toBe(0);
  await expectAccessible(page);
  await page.keyboard.press('Alt+l');
  await page.getByRole('textbox', { name: /evening of|as it was/ }).fill('2026-05-25');
  await page.keyboard.press('Enter');
  await soon(() => words(page.locator('.sentence').first())).toBe('2 colonies want a box now. 1 is at high swarm risk. Splits are made until 3 July at the latest.');
  expect(await cells(page, 'Yards', 'QY Quarry')).toEqual(['QY Quarry', '4', '2', '0', '1', '1', '1', '1', 'Enter supers at QY']);
  expect(await page.getByRole('button', { name: 'Enter supers at QY' }).isDisabled()).toBe(true);
  // 18 of 20 frames are 90 %, and with one medium 67 %; 20 of 20 want two. Risk: season 1, packed 2, swarm cells 4.
  const colonies = page.getByRole('table', { name: 'Room and swarm risk' });
  expect(await colonies.getByRole('rowheader').allTextContents()).toEqual(['B', 'A', 'D']);
  expect((await cells(page, 'Room and swarm risk', 'A')).slice(1)).toEqual(['18 of 20', '90 %', '20 May', 'add 1 medium', 'some, 3 points', '27 May', 'may be split']);
  expect((await cells(page, 'Room and swarm risk', 'B')).slice(1)).toEqual(['20 of 20', '100 %', '20 May', 'add 2 mediums', 'high, 7 points', '25 May', '–']);
  expect((await cells(page, 'Room and swarm risk', 'D')).slice(4, 6)).toEqual(['nothing told', 'not all told']);
  await colonies.getByRole('link', { name: 'B', exact: true }).focus();
  const margin = page.getByRole('complementary', { name: 'Margin' });
  for (const says of ['+4: Swarm cells on 20 May 2026.', 'Swarm risk: high, 7 points', 'Swarm risk: swarm cells at the last look: 4 points. House choice']) await soon(() => words(margin)).toContain(says);
  await page.getByRole('checkbox', { name: /Only those/ }).press('Space');
  expect((await cells(page, 'Room and swarm risk', 'C')).slice(4, 6)).toEqual(['enough', 'low, 1 point']);
  expect(await cells(page, 'Boxes and supers wanted', 'QY')).toEqual(['QY', 'medium super of 10 frames', '3', '0', '3', '0']);
  expect(await page.locator('.caution').allTextContents()).toEqual([expect.stringContaining('1.9 and 2.9 times')]);
  expect(await cells(page, 'The last days to split', 'a ripe cell')).toEqual(['a ripe cell', '21', '22 June 2026', 'still time']);
  expect((await cells(page, 'Colonies that may be split', 'A')).slice(1)).toEqual(['18', '8', '20 May', 'some, 3 points']);
  await page.getByRole('button', { name: 'QY Quarry' }).press('Enter');
  expect(await page.getByRole('combobox', { name: 'Yard' }).evaluate((one) => (one as HTMLSelectElement).selectedOptions[0]?.text)).toBe('QY Quarry');
  const [list] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).press('Enter')]);
  const lines = (await readFile(await list.path(), 'utf8')).split('\r\n');
  expect(lines[2]).toMatch(/^QY,B,20,20,100,2026-05-20,add,medium,2,/);
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Print the list' }).press('Enter');
  await page.getByText('Take along: 3 medium supers of 10 frames.').waitFor();
  expect((await cells(page, 'QY Quarry', 'A'))[4]).toBe('add 1 medium');
  await page.emulateMedia({ colorScheme: 'light' });
  await page.getByRole('link', { name: 'Back to space and swarms' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Space and swarms' }).waitFor();
  await expectAccessible(page);
});
