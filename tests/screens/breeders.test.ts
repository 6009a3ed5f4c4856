import { readFile } from 'node:fs/promises';
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

const row = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: 'QY', colony, ...more });
/** Pounds of the mother’s colony and of her two daughters’. */
const pounds = { A: [62, 58, 60], B: [51, 49, 50], C: [20, 22, 18] };

test('who wants a new queen and why, a queen’s days, and the breeders by the person’s own weights', async () => {
  window = await openWindow({
    at: '/needs/queens',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('journal.enter', {
        rows: [
          ...Object.entries(pounds).flatMap(([mother, crop]) => [
            row('2025-04-10', 'install', mother, { origin: 'nuc', queen_year: mother === 'C' ? '2024' : '2025' }),
            ...[1, 2].map((at) => row('2025-05-20', 'split', mother, { new_colony: `${mother}${at}`, queen: 'stays', new_queen: 'walk-away' })),
            ...crop.map((lb, at) => row('2026-07-20', 'harvest', at === 0 ? mother : `${mother}${at}`, { gross: String(lb), tare: '0', unit: 'lb' })),
          ]),
          row('2026-08-01', 'inspection', 'C', { temper: '5' }), row('2026-08-10', 'inspection', 'C', { temper: '4' }),
        ],
      });
    },
  });
  const { page } = window;
  const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
  const wanted = page.getByRole('table', { name: 'New queens wanted' });
  await wanted.waitFor();
  expect(await words(page.getByRole('region', { name: 'New queens wanted' }).locator('.sentence'))).toContain('1 of 9 colonies wants a new queen; queens are replaced from');
  expect(await words(wanted)).toContain('QY Quarry 1 of 9 C green 2024 Fierce at the last two looks that noted it: 4 of 5 or more. temper 5, 4 The queen is in her third summer or older. queen of 2024');
  await wanted.getByRole('link', { name: 'C', exact: true }).focus();
  await soon(() => words(page.getByRole('complementary', { name: 'Margin' }))).toContain('1 August 2026: Temper 5 of 5.');

  // Weekdays as a wall calendar has them: 4 May 2026 is a Monday.
  const days = page.getByRole('region', { name: 'A queen’s days' });
  await days.getByRole('textbox', { name: 'Day' }).fill('2026-05-04');
  await soon(() => words(days.getByRole('row', { name: /^emerges/ }))).toBe('emerges Sat 16 May 2026 12');
  const [file] = await Promise.all([page.waitForEvent('download'), days.getByRole('button', { name: 'Save as CSV' }).click()]);
  expect((await readFile(await file.path(), 'utf8')).split('\r\n').slice(0, 3)).toEqual(['step,from,until', 'cell sealed,2026-05-08,2026-05-08', 'emerges,2026-05-16,2026-05-16']);
  await days.getByRole('combobox', { name: 'Counted from' }).selectOption({ label: 'a mated queen in a cage' });
  await soon(() => words(days.getByRole('row', { name: /^out of the cage/ }))).toBe('out of the cage Wed 6 May 2026 – Sat 9 May 2026 2–5');
  await days.getByRole('textbox', { name: 'Day' }).fill('soon');
  await soon(() => days.getByRole('table').count()).toBe(0);

  const breeders = page.getByRole('region', { name: 'Queens to raise daughters from' });
  const ranked = async () => (await breeders.getByRole('rowheader').allTextContents()).map((text) => text.slice(0, 1));
  await soon(ranked).toEqual(['A', 'B', 'C']);
  expect(await words(breeders.locator('.sentence'))).toBe('The first can be told apart from every other.');
  await breeders.getByText('Few mites: Nothing of it is in the record.').waitFor();
  await expectAccessible(page);
  await breeders.getByRole('combobox', { name: 'Honey' }).selectOption('nothing');
  await soon(() => words(breeders.locator('.sentence'))).toBe('No ranking can be made yet from what is weighed in:');
  await breeders.getByRole('button', { name: 'Weigh as before' }).click();
  await soon(ranked).toEqual(['A', 'B', 'C']);
  await breeders.getByRole('rowheader').first().getByRole('link').press('Enter');
  await page.getByRole('heading', { name: 'Queen, blue 2025', level: 1 }).waitFor();
});
