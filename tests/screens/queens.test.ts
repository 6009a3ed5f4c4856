import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** A mother with a daughter by a walk-away split; a treatment, swarm cells and a registration that ask for something. */
const book: WindowOptions = {
  at: '/colonies/1',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
    await desk('yard.details', { id: 1, access: null, notes: null, registration: 'R 12', renewal: '2026-12-20' });
    await desk('journal.enter', {
      rows: [
        { date: '2024-04-24', entry: 'install', yard: 'LB', colony: 'LB-1', origin: 'nuc', queen_year: '2024', queen_source: 'Tarn' },
        { date: '2024-06-10', entry: 'inspection', colony: 'LB-1', frames_brood: '6', temper: '2' },
        { date: '2024-07-10', entry: 'inspection', colony: 'LB-1', frames_brood: '8', temper: '2', eggs: 'yes' },
        { date: '2024-07-20', entry: 'harvest', colony: 'LB-1', gross: '60', tare: '15', unit: 'lb' },
        { date: '2024-08-01', entry: 'mites', colony: 'LB-1', mites: '6', bees: '300' },
        { date: '2025-05-20', entry: 'split', colony: 'LB-1', new_colony: 'LB-2', queen: 'stays', new_queen: 'walk-away', queen_year: '2025' },
        { date: '2025-06-12', entry: 'inspection', colony: 'LB-2', eggs: 'yes' },
        { date: '2026-11-20', entry: 'inspection', colony: 'LB-2', queen_cells: 'swarm' },
      ],
    });
  },
};

test('from a colony to its queen, to her daughter and to the daughter’s colony by keyboard; the page explains its figures', async () => {
  const opened = await open(book);
  const { page } = opened;
  await page.getByRole('table', { name: 'Queens' }).getByRole('link', { name: 'green 2024' }).press('Enter');
  await page.getByRole('heading', { name: 'Queen, green 2024', level: 1 }).waitFor();
  expect(await words(page.locator('.sentence'))).toBe('Came with LB-1, Tarn, on 24 April 2024.');
  const did = page.getByRole('table', { name: 'How her colonies did' });
  expect(await words(did.getByRole('row', { name: /^Frames of brood/ }))).toBe('Frames of brood at a look 7.0 (0.0–19.7) 2 looks Only 2 looks: a first impression.');
  expect(await words(did.getByRole('row', { name: /^Mites/ }))).toContain('2.0 (0.7–4.3) 1 wash, 6 in 300 One wash; it tells of its own day.');
  expect(await words(did.getByRole('row', { name: /^Winters/ }))).toContain('2 of 2 100 % (34–100)');
  expect(await words(page.getByRole('table', { name: 'Honey under her' }))).toContain('2024–25 45.0 1');
  expect(await words(page.getByRole('region', { name: 'Mother' }))).toContain('not in the record');
  await expectAccessible(page);
  await page.getByRole('region', { name: 'Daughters' }).getByRole('link').press('Enter');
  await page.getByRole('heading', { name: 'Queen, blue 2025', level: 1 }).waitFor();
  expect(await words(page.getByRole('region', { name: 'Mother' }).getByRole('link'))).toBe('green 2024 of LB-1');
  await page.getByRole('table', { name: 'Where she was' }).getByRole('link', { name: 'LB-2' }).press('Enter');
  await page.getByRole('heading', { name: 'Colony LB-2', level: 1 }).waitFor();

  // What was due: the line takes the keyboard, and the margin tells the record, the days and the source.
  const due = page.getByRole('table', { name: 'What was due and done' });
  expect(await words(due.getByRole('row').nth(1))).toContain('Look again for swarm cells Swarm cells were seen on 20 November 2026. 20 Nov 26 – 27 Nov 26 due now');
  expect(await words(due.getByRole('row').nth(2))).toContain('10 Jun 25 – 17 Jun 25 done 12 Jun 25. Looked at: eggs seen.');
  await due.getByRole('row').nth(2).focus();
  const margin = page.getByRole('complementary', { name: 'Margin' });
  await expect.poll(() => words(margin)).toContain('Walk-away split: look for eggs from day: 21 days');
  expect(await words(margin)).toContain('(read, weak source)');
  await expectAccessible(page);
  await page.evaluate(() => (location.hash = '/queens/99'));
  await page.getByText('There is no such queen in this book.').waitFor();
  await page.evaluate(() => (location.hash = '/queens/none'));
  await page.getByText('There is no such queen in this book.').waitFor();
});

test('the number behind a rule is changed in the margin, and the line follows; the yard says what is due; the find box leads to a queen', async () => {
  const opened = await open({ ...book, at: '/colonies/2' });
  const { page } = opened;
  const due = page.getByRole('table', { name: 'What was due and done' });
  await due.waitFor();
  const margin = page.getByRole('complementary', { name: 'Margin' });
  await margin.getByText('The numbers behind it').press('Enter');
  await margin.getByRole('button', { name: 'Change (Swarm cells seen: look again within)' }).press('Enter');
  await margin.getByRole('textbox', { name: 'Swarm cells seen: look again within' }).fill('4');
  await page.keyboard.press('Enter');
  await expect.poll(() => words(due)).toContain('20 Nov 26 – 24 Nov 26 overdue');

  await page.evaluate(() => (location.hash = '/yards/1'));
  const here = page.getByRole('region', { name: 'What is due here' });
  await here.getByText('overdue').waitFor();
  expect((await here.getByRole('listitem').all()).length).toBe(2);
  expect(await words(here)).toMatch(/Look again for swarm cells, overdue: LB-2.*Renew the registration of the yard R 12 is to be renewed by 20 December 2026/);
  await expectAccessible(page);

  await page.keyboard.press('Control+k');
  await page.keyboard.type('green 2024 tarn');
  await page.getByRole('option', { name: /Queen of 2024, green/ }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Queen, green 2024', level: 1 }).waitFor();
});
