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
  const row = page.getByRole('table', { name: table }).getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
  return (await row.first().locator('th, td').allTextContents()).map((text) => text.replaceAll(/[\u00a0\u2002]/g, ' ').replaceAll(/\s+/g, ' ').trim());
}

const about = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: 'QY', colony, ...more });
const wash = (date: string, colony: string, mites: number) => about(date, 'mites', colony, { mites: String(mites), bees: '300' });

test('what the counts say, what could be given, how to enter it, what it did, and the season on paper', async () => {
  window = await openWindow({
    at: '/needs/mites',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
      await desk('journal.enter', {
        rows: [
          ...['A', 'B', 'C', 'D', 'E'].map((colony) => about('2026-05-10', 'install', colony, { origin: 'nuc' })),
          { date: '2026-05-10', entry: 'install', yard: 'LB', colony: 'L', origin: 'nuc' },
          ...['A', 'B', 'C', 'D'].map((colony, at) => wash('2026-08-08', colony, [12, 15, 9, 14][at] ?? 0)),
          { date: '2026-08-15', entry: 'treatment', yard: 'QY', active_ingredient: 'formic acid', end_date: '2026-08-29', note: 'lot 12' },
          wash('2026-09-12', 'A', 3), wash('2026-11-10', 'A', 14), wash('2026-11-10', 'B', 12), wash('2026-11-10', 'C', 13), wash('2026-11-10', 'D', 15),
        ],
      });
    },
  });
  const { page } = window;
  await page.getByRole('link', { name: 'Mites', exact: true }).waitFor();
  await soon(() => words(page.locator('.sentence').first())).toBe('QY is likely above 2 mites in 100 bees; never counted: LB.');
  expect(await cells(page, 'Yards', 'QY Quarry')).toEqual(['QY Quarry', '10 Nov', '4 of 5', '4.5 (2.9–6.9)', '100 % likely above', '0', 'is there']);
  expect(await cells(page, 'Yards', 'LB Larch Bend')).toEqual(['LB Larch Bend', '– never counted', '0 of 1', '–', '–', '1 anew', '–']);
  await page.getByRole('button', { name: 'QY Quarry', exact: true }).focus();
  await page.getByRole('complementary', { name: 'Margin' }).getByText('Act from 2 in 100: rest, with brood.').waitFor();
  const yard = page.getByRole('region', { name: 'QY Quarry', exact: true });
  await yard.getByText('9 counts this season, one treatment.').waitFor();
  await yard.getByRole('button', { name: 'As a table' }).click();
  expect(await cells(page, 'QY Quarry', '12 September 2026')).toEqual(['12 September 2026', 'A', '3', '300', '1.0', '0.2–2.9']);
  await yard.getByText('Never counted: 1').waitFor();

  // The usual day of November is too cold for formic acid; a warm day that is typed is not.
  const fits = 'What could be given at QY Quarry';
  expect((await cells(page, fits, 'Formic acid'))[1]).toBe('✕ does not fit needs 50 to 85 °F; 46 °F expected');
  await page.getByLabel('Warmest of the day, °F').fill('14 C');
  await soon(async () => (await cells(page, fits, 'Formic acid'))[1]).toBe('✓ fits needs 50 to 85 °F; 57.2 °F expected');
  await page.getByLabel('Warmest of the day, °F').fill('warm');
  await page.getByText('“warm” is no number. Type it in °F, such as 75.').waitFor();
  await page.getByLabel('Warmest of the day, °F').fill('44');
  await soon(async () => (await cells(page, fits, 'Oxalic acid, dribbled'))[3]).toBe('? not known nobody has looked at the brood lately');
  await page.getByRole('combobox', { name: 'Brood' }).selectOption('no');
  await soon(async () => (await cells(page, fits, 'Oxalic acid, dribbled'))[0]).toBe('Oxalic acid, dribbled fits');
  await page.getByText('The label is the law', { exact: false }).first().waitFor();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Enter it (Oxalic acid, dribbled)' }).click();
  const form = page.getByRole('form', { name: 'Enter a record' });
  expect([await form.getByLabel('Active ingredient').inputValue(), await form.getByLabel('Yard').inputValue()]).toEqual(['oxalic acid', 'QY']);
  await form.getByRole('button', { name: /^Enter the record/ }).click();
  await soon(() => words(notice(page))).toContain('Treatment of 25 November 2026');
  await soon(() => words(page.locator('.sentence').first())).toBe('Treated since the last count: QY; never counted: LB.');
  expect((await cells(page, 'Before and after', 'formic acid')).slice(1)).toEqual(['1 of 1', '1', '4.0, 1.0', '75 % (7 – 95)']);

  await page.getByRole('link', { name: 'Print the treatments of a season' }).click();
  await page.getByRole('heading', { name: 'Treatments 2026–27' }).waitFor();
  expect(await cells(page, 'Treatments 2026–27', 'QY')).toEqual(['QY', 'every colony, 5', 'formic acid', '15 August 2026', '29 August 2026', 'none', '4.0', '1.0', 'lot 12']);
  await expectAccessible(page);
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).click()]);
  const text = await readFile(await file.path(), 'utf8');
  expect(text.split('\r\n')[1]).toMatch(/^QY,5,every colony,formic acid,2026-08-15,2026-08-29,0,4,1,1,lot 12,\d+$/);
  await page.getByRole('combobox', { name: 'Season' }).selectOption({ label: '2026–27' });
});
