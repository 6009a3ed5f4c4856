import { readFile } from 'node:fs/promises';
import type { Locator } from 'playwright-core';
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

/** The row that begins with a name, as its cells' words. */
async function cells(section: Locator, table: string, name: string): Promise<string[]> {
  const row = section.getByRole('table', { name: table, exact: true }).getByRole('row').filter({ has: section.page().getByRole('rowheader', { name, exact: true }) });
  return (await row.first().locator('th, td').allTextContents()).map((text) => text.replaceAll(/[\u00a0\u2002]/g, ' ').replaceAll(/\s+/g, ' ').trim());
}

const rows: readonly Cells[] = [
  ...['A', 'B'].map((colony): Cells => ({ date: '2022-05-10', entry: 'install', yard: 'QY', colony, origin: 'nuc' })),
  { date: '2022-05-10', entry: 'install', yard: 'LB', colony: 'C', origin: 'package' },
  { date: '2022-05-10', entry: 'install', yard: 'LB', colony: 'D', origin: 'package' },
];
const harvests: readonly Cells[] = [
  { date: '2022-08-01', entry: 'harvest', yard: 'QY', colony: 'A', gross: '60', tare: '20', unit: 'lb' },
  { date: '2022-08-01', entry: 'harvest', yard: 'QY', colony: 'B', gross: '72', tare: '20', unit: 'lb' },
  { date: '2022-08-02', entry: 'harvest', yard: 'LB', gross: '130', tare: '40', unit: 'lb' },
];

test('no harvest, too few, and the demo’s yields by yard, age and season, with hours and printed figures, in pounds and kilograms', async () => {
  window = await openWindow({
    at: '/honey',
    first: async (desk) => {
      await desk('book.create', { name: 'Small' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
      await desk('journal.enter', { rows: [...rows] });
    },
  });
  const { page, desk } = window;
  const section = page.getByRole('region', { name: 'What the colonies yield' });
  const sentence = () => words(section.locator('.sentence'));
  await section.getByText('Enter a harvest for each colony').waitFor();
  expect(await section.getByRole('table').count()).toBe(0);

  // Two weighed colonies and a yard weighed together: words, what was weighed, and the printed figure of the year.
  await desk('journal.enter', { rows: [...harvests] });
  await page.reload();
  await soon(sentence).toBe('Only 2 colony-seasons were weighed; from 12 on yards are compared.');
  expect(await cells(section, 'Honey of a colony by yard', 'Quarry')).toEqual(['Quarry', '2', '46.0 (two, too few for a range)', '–']);
  expect(await cells(section, 'Honey of a colony by yard', 'Larch Bend')).toEqual(['Larch Bend', '–', '–', '90 of 2 (45.0 each)']);
  expect(await cells(section, 'Season by season', '2022')).toEqual(['2022', '182', '4', '45.5', '47.0', 'too few hours', '0 of 4']);
  await section.getByText('No hours of work are written down for 2022').waitFor();
  await section.getByLabel('Compare by').selectOption('source');
  await soon(sentence).toBe('Only 2 colony-seasons were weighed; from 12 on sources are compared.');
  await section.getByRole('button', { name: 'Show what was weighed' }).click();
  const small = section.getByRole('region', { name: 'All that was weighed' });
  await soon(() => small.getByRole('rowheader').allTextContents()).toEqual(['B', 'A']);
  expect(await section.getByRole('button', { name: 'Save as CSV' }).count()).toBe(0);

  await desk('book.demo', { which: 'ossar' });
  await page.reload();
  // Means, limits and pooled figures as R 4.2.2 has them from the exported journal (mean, t.test, lm, and methods of moments).
  const table = 'Honey of a colony by yard';
  await soon(sentence).toBe('The yards differ by more than chance makes likely. The most came from Kiln Field: 85 lb a colony (75 lb to 94 lb); all together 75 lb a colony over 198 colony-seasons.');
  expect(await cells(section, table, 'Kiln Field')).toEqual(['Kiln Field', '64', '88.4 (76.3–100.5)', '84.6 (75.2–93.9)', '', '–']);
  expect(await cells(section, table, 'North Slope')).toEqual(['North Slope', '34', '51.8 (43.0–60.5)', '58.7 (46.5–70.9)', '', '–']);
  await section.getByRole('img', { name: 'Kiln Field: 84.6 lb a colony, plausible from 75.2 to 93.9' }).waitFor();
  expect(await cells(section, 'Season by season', '2024')).toEqual(['2024', '3,995', '56', '71.3', '51.7', '15.4 (13.1–18.6)', '93 of 128']);
  await section.getByText('2024: USDA NASS, as reported by pnwag.net. For 2023, 2025 and 2026 no printed figure is held here.', { exact: false }).waitFor();
  await page.getByRole('complementary', { name: 'Margin' }).getByText('good and bad years are evened out first', { exact: false }).waitFor();
  await expectAccessible(page);

  const [file] = await Promise.all([page.waitForEvent('download'), section.getByRole('button', { name: 'Save as CSV' }).click()]);
  expect(file.suggestedFilename()).toBe('yields by yard.csv');
  const lines = (await readFile(await file.path(), 'utf8')).trim().split('\r\n');
  expect(lines[0]).toBe('group,colony_seasons,colonies,seasons,mean_lb,mean_low,mean_high,compared_lb,compared_low,compared_high,years_evened_out,pulled_to_the_whole,weighed_together_lb,weighed_together_colony_seasons');
  expect(lines[1]).toBe('Kiln Field,64,34,4,88.397,76.315,100.479,84.567,75.222,93.912,yes,yes,,');

  await section.getByLabel('Compare by').selectOption('queenAge');
  await section.getByRole('button', { name: '22, Older queens: colonies weighed: show them' }).click();
  const behind = section.getByRole('region', { name: 'Older queens: colonies weighed' });
  await soon(() => behind.getByRole('row').count()).toBe(23);
  await page.getByRole('complementary', { name: 'Margin' }).getByText('of the way to the mean of all', { exact: false }).waitFor();
  await behind.getByRole('button', { name: 'Close' }).click();
  await section.getByLabel('Compare by').selectOption('season');
  await soon(() => cells(section, 'Honey of a colony by season', '2021')).toEqual(['2021', '6', '28.8 (24.3–33.4)', '']);
  expect(await section.getByRole('combobox').count()).toBe(1);

  await desk('book.settings', { massUnit: 'kg' });
  await page.reload();
  await soon(() => cells(section, table, 'Kiln Field')).toEqual(['Kiln Field', '64', '40.1 (34.6–45.6)', '38.4 (34.1–42.6)', '', '–']);
  expect((await cells(section, 'Season by season', '2024')).slice(0, 5)).toEqual(['2024', '1,812', '56', '32.4', '23.5']);
});
