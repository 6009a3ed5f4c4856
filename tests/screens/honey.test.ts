import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { expectAccessible } from './support/axe.ts';
import { notice, words } from './support/person.ts';
import { scanned } from './support/scanned.ts';
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

/** The first row that begins with a name, as its cells' words. */
async function cells(page: Page, table: string, name: string): Promise<string[]> {
  const found = page.getByRole('table', { name: table, exact: true }).getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
  return (await found.first().locator('th, td').allTextContents()).map((text) => text.replaceAll(/\s+/g, ' ').trim());
}
async function saved(page: Page, button: Locator): Promise<string[]> {
  const [file] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return (await readFile(await file.path(), 'utf8')).trim().split('\r\n');
}

test('from harvests to a lot, its water, weight, blend, jars, sale and labels; from the jar back and from the hive forward', async () => {
  window = await openWindow({
    at: '/honey',
    first: async (desk) => {
      await desk('book.create', { name: 'Ossar Valley' });
      await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
    },
  });
  const { page, desk } = window;
  await page.getByText('Here stand the lots of honey').waitFor();
  await page.getByRole('button', { name: 'Enter a harvest' }).click();
  const entry = page.getByRole('form', { name: 'Enter a record' });
  expect(await entry.getByLabel('What happened').inputValue()).toBe('harvest');
  await entry.getByRole('button', { name: 'Close the form' }).click();
  await desk('journal.enter', {
    rows: [
      ...['A', 'B'].map((colony) => row('2026-05-10', 'install', { yard: 'QY', colony, origin: 'nuc' })), row('2026-05-10', 'install', { yard: 'LB', colony: 'L', origin: 'nuc' }),
      row('2026-06-01', 'supers on', { colony: 'L', count: '2', box: 'medium' }), row('2026-07-01', 'treatment', { yard: 'QY', active_ingredient: 'formic acid', end_date: '2026-07-15' }),
      row('2026-08-08', 'harvest', { colony: 'A', gross: '80', tare: '20', unit: 'lb' }), row('2026-08-08', 'harvest', { colony: 'B', gross: '75', tare: '15', unit: 'lb' }),
      row('2026-09-05', 'supers off', { colony: 'L', count: '2', box: 'medium' }), row('2026-09-05', 'harvest', { yard: 'LB', gross: '260', tare: '60', unit: 'lb', moisture: '16.4', lot: 'Late 7/8' }),
    ],
  });
  await page.reload();
  await page.getByRole('heading', { name: 'Harvests in no lot' }).waitFor();

  // A new lot: nothing chosen is said; then both harvests go in.
  const making = page.getByRole('form', { name: 'Make a lot' });
  await making.getByRole('button', { name: 'Make the lot' }).click();
  await making.getByText('Choose at least one harvest.').waitFor();
  await making.getByLabel('Name of the lot').fill('late 7/8');
  await making.getByRole('button', { name: 'Choose all' }).click();
  await making.getByText('2 harvests chosen, 120 lb together.').waitFor();
  await making.getByRole('button', { name: 'Make the lot' }).click();
  await making.getByText('A lot has that name already.').waitFor();
  await making.getByLabel('Name of the lot').fill('Early 1');
  await making.getByRole('textbox', { name: 'Day' }).fill('8/8/2026');
  await expectAccessible(page);
  await making.getByRole('button', { name: 'Make the lot' }).click();
  await page.getByRole('heading', { name: 'Lot Early 1', level: 1 }).waitFor();

  const form = page.getByRole('form', { name: 'Write down what was done' });
  const keep = () => form.getByRole('button', { name: 'Write it down' }).click();
  const deed = (name: string) => form.getByLabel('What was done').selectOption({ label: name });
  const on = (day: string) => form.getByRole('textbox', { name: 'Day' }).fill(day);
  // Weighed: less than nothing is refused beside its field.
  await on('8/10/2026');
  await form.getByLabel('Full, lb').fill('8');
  await form.getByLabel('Empty, lb').fill('10');
  await keep();
  await form.getByText('Full weight must be more than empty weight.').waitFor();
  await form.getByLabel('Full, lb').fill('126');
  await keep();
  await soon(() => words(notice(page))).toContain('4 lb less than the account had');
  await soon(() => words(page.locator('.sentence').first())).toBe('The scale found 4 lb (3.3 %) less than came in: left in combs and cappings, or a scale that differs. 116 lb is left over in bulk.');

  // Water by the refractometer, corrected for its warmth; what no honey has is refused.
  await deed('water read');
  await form.getByLabel('Read by').selectOption({ label: 'per cent' });
  await form.getByLabel('Water, %').fill('60');
  await keep();
  await form.getByText('“60” is above 40 %, the most that makes sense here.').waitFor();
  await form.getByLabel('Read by').selectOption({ label: 'refractive index' });
  await form.getByLabel('Refractive index').fill('1.333');
  await form.getByLabel('Warmth of the honey').fill('20 C');
  await form.getByText('That reading lies outside the table').waitFor();
  await keep();
  // The refusal is said once, beside its field.
  await form.locator('.field-fault').filter({ hasText: 'That reading lies outside the table' }).waitFor();
  expect(await form.getByText('That reading lies outside the table').count()).toBe(1);
  await form.getByLabel('Refractive index').fill('1.4865');
  // 1.4865 at 77 °F stands for 1.4876 at 20 °C: 19.5 % by the table's rows at 1.4885 (19.2) and 1.4870 (19.8).
  await form.getByLabel('Warmth of the honey').fill('77');
  await form.getByText('1.4865 at 25.0 °C is 19.5 % water.').waitFor();
  await keep();
  await page.getByText('19.5 % water, as read.').waitFor();
  await page.getByText('It is over the 18.6 % of United States, grades A and B, by 0.9: as it is, it may not be sold as that there.').waitFor();
  await page.locator('.honey-water').getByText('US Standards for Grades of Extracted Honey, 1985', { exact: false }).waitFor();

  // A drier lot brings it down, by the Pearson square: 116 lb of 19.5 % and the 16.4 % lot to 18 %.
  await deed('another lot poured in');
  await on('9/10/2026');
  await form.getByLabel('From lot').selectOption('Late 7/8');
  await form.getByLabel('To bring this lot down to').fill('18');
  await form.getByText(/of lot Late 7\/8 \(16\.4\s%\) bring 116\slb of 19\.5\s% down to 18\.0\s%/).waitFor();
  await form.getByRole('button', { name: 'Take this amount' }).click();
  const poured = Number(await form.getByLabel('How much, lb').inputValue());
  expect(poured).toBeGreaterThan(100);
  expect(poured).toBeLessThan(116);
  await keep();
  await page.getByText('It is within the 18.6 % of United States, grades A and B.').waitFor();
  const all = 116 + poured;

  // More jars than honey are refused; then a hundred are filled, forty sold, and one deed is taken back.
  await deed('jars filled');
  await form.getByLabel('Size of a jar').fill('1 lb');
  await form.getByLabel('Jars', { exact: true }).fill('400');
  await keep();
  await form.getByText(/^That is .* more than was there\.$/).waitFor();
  await form.getByLabel('Jars', { exact: true }).fill('100');
  // Counted from the day of filling that stands in the form.
  expect(await form.getByLabel('Best before').inputValue()).toBe('2028-09-10');
  await keep();
  await soon(() => cells(page, 'Jars', '1 lb jar')).toEqual(['1 lb jar', '100', '0', '100', '10 September 2028']);
  await deed('sold');
  await form.getByLabel('What was sold').selectOption({ label: '1 lb jar' });
  await form.getByLabel('How many').fill('101');
  await keep();
  await form.getByText('That is 1 more of 1 lb than were filled.').waitFor();
  await form.getByLabel('How many').fill('40');
  await form.getByLabel('For all of it').fill('320');
  await on('9/12/2026');
  await keep();
  await soon(() => cells(page, 'Sales', '12 September 2026')).toEqual(['12 September 2026', 'honey, 1 lb jar', '40', '320']);
  await deed('lost or given away');
  await form.getByLabel('How much, lb').fill('5');
  await form.getByLabel('Why').fill('spilt');
  await keep();
  await soon(() => cells(page, 'The account', 'Lost')).toEqual(['Lost', '−5.0']);
  await page.getByRole('button', { name: /^Take back: 5\slb lost: spilt\.$/ }).click();
  const back = page.getByRole('form', { name: /^Take back: 5\slb lost: spilt\.$/ });
  await back.getByRole('button', { name: 'Take back' }).click();
  await back.getByText('Say why, in a word.').waitFor();
  await back.getByLabel('Why it is taken back').fill('found again');
  await back.getByRole('button', { name: 'Take back' }).click();
  await page.getByText('Taken back: found again.').waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('What was done');
  const account = await Promise.all(['Harvests, full', 'Less the same, empty', 'Harvested', 'Poured in from other lots', 'The scale found less', 'Filled into jars', 'Left over in bulk'].map((step) => cells(page, 'The account', step)));
  expect(account.map(([, figure]) => figure)).toEqual(['155.0', '−35.0', '120.0', poured.toFixed(1), '−4.0', '−100.0', (all - 100).toFixed(1)]);

  // Back to the hives: harvests, colonies and the treatment, with the days that lay between.
  expect(await cells(page, 'Harvests', '8 August 2026')).toEqual(['8 August 2026', 'Quarry', 'A', '80.0', '20.0', '60.0', '–', 'straight in']);
  expect(await cells(page, 'Harvests', '5 September 2026')).toEqual(['5 September 2026', 'Larch Bend', 'the yard together', '260.0', '60.0', '200.0', '16.4 %', 'Late 7/8']);
  expect(await cells(page, 'Treatments behind it', '1 July 2026')).toEqual(['1 July 2026', '15 July 2026', 'formic acid', 'Quarry', '2', 'off', '24']);
  await page.getByRole('heading', { name: '3 colonies behind this lot' }).waitFor();
  await expectAccessible(page);
  const lines = await saved(page, page.getByRole('button', { name: 'Save the trace as CSV' }));
  expect(lines[0]).toBe('direction,what,lot,date,yard,colony,lb,water_percent,days_to_harvest,detail,entry');
  expect(lines.find((line) => line.startsWith('back,harvest') && line.includes(',A,'))).toMatch(/^back,harvest,Early 1,2026-08-08,Quarry,A,60,,,,\d+$/);
  expect(lines.find((line) => line.startsWith('back,treatment'))).toMatch(/^back,treatment,Early 1,2026-07-01,Quarry,A,,,24,"formic acid, supers off",\d+$/);
  expect(lines.find((line) => line.startsWith('forward,jars'))).toBe('forward,jars,Early 1,,,,,,,"100 of 1 lb jar filled, 40 sold, 60 left, best before 2028-09-10",');
  expect(lines.find((line) => line.startsWith('forward,sale'))).toMatch(/^forward,sale,Early 1,2026-09-12,,,,,,"40 honey, 1 lb jar",\d+$/);

  // Labels on paper: both units, the lot, the day, the caution, and a code that leads back.
  await page.getByRole('link', { name: 'Labels for its jars' }).click();
  await page.getByText('100 labels on 9 sheets of 12.').waitFor();
  await page.getByText('Honey is not for infants under 12 months').waitFor();
  await page.getByLabel('Labels').fill('0');
  await page.getByText('Type a whole number of labels, up to 540.').waitFor();
  await page.getByLabel('Labels').fill('13');
  await page.getByLabel('Paper').selectOption('A4');
  await page.getByLabel('Your name and place').fill('Apiaries of the Ossar Valley, the long house by the upper mill, Ossar, Old Vale');
  await page.getByText('13 labels on 2 sheets of 12.').waitFor();
  await expectAccessible(page);
  await page.emulateMedia({ media: 'print' });
  const label = page.getByRole('article', { name: 'Label 13', exact: true });
  expect(await words(label)).toBe('Honey Net weight 1 lb (16 oz), 453 g Apiaries of the Ossar Valley, the long house by the upper mill, Ossar, Old Vale Lot Early 1 Best before 10 September 2028 Do not feed honey to infants under 12 months.');
  expect(await label.locator('.label-words').evaluate((own) => own.scrollHeight - own.clientHeight)).toBeLessThanOrEqual(1);
  expect(await scanned(page, label)).toBe('Outyard honey lot Early 1');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('link', { name: 'Back to lot Early 1' }).click();
  await page.getByRole('heading', { name: 'Lot Early 1', level: 1 }).waitFor();

  // The list by season; from a jar back, from a hive forward; another place's limit.
  await page.keyboard.press('Alt+8');
  await page.getByRole('heading', { name: 'From a jar’s lot back' }).waitFor();
  expect((await cells(page, 'Lots', 'Early 1')).slice(0, 5)).toEqual(['Early 1', '8 Aug 26', 'Quarry', '155.0', '120.0']);
  await soon(async () => (await cells(page, 'Lots', 'Early 1')).slice(6)).toEqual(['100', '60', (all - 100).toFixed(1), 'balances']);
  expect((await cells(page, 'Lots', 'Late 7/8')).at(-1)).toBe('not weighed');
  expect(await saved(page, page.getByRole('button', { name: 'Save as CSV' }))).toHaveLength(3);
  await page.getByLabel('Held against').selectOption('anz');
  await soon(() => words(notice(page))).toContain('Lots are held against: Australia and New Zealand.');
  await page.getByLabel('From', { exact: true }).selectOption({ label: 'a colony' });
  await page.getByRole('combobox', { name: 'Colony' }).fill('nobody');
  await page.getByText('No colony that gave honey is called “nobody”.').waitFor();
  await page.getByRole('combobox', { name: 'Colony' }).fill('l');
  await page.getByText('L: 1 harvest, 200 lb; 2 lots, 100 jars, 1 sale.').waitFor();
  expect((await cells(page, 'From the hives forward', 'Early 1')).slice(0, 4)).toEqual(['Early 1', 'Late 7/8', '200.0', '100 × 1 lb jar, 40 sold']);
  await expectAccessible(page);
  const jar = page.getByRole('form', { name: 'From a jar’s lot back' });
  await jar.getByLabel('Lot on the jar').fill('late');
  await page.keyboard.press('Enter');
  await jar.getByText('No lot of honey is called “late”. Is it Late 7/8?').waitFor();
  await jar.getByLabel('Lot on the jar').fill('Outyard honey lot late 7/8');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Lot Late 7/8', level: 1 }).waitFor();
  // As of a day before the jars, nothing can be written down, and what came later is not there.
  await page.keyboard.press('Alt+l');
  await page.getByRole('textbox', { name: 'Look at the operation as it was' }).waitFor();
  await page.keyboard.type('2026-09-06');
  await page.keyboard.press('Enter');
  await soon(() => cells(page, 'The account', 'Left over in bulk')).toEqual(['Left over in bulk', '200.0']);
  await soon(() => form.getByRole('button', { name: 'Write it down' }).isDisabled()).toBe(true);

  // Found by its name from any page.
  await page.keyboard.press('Control+k');
  await page.keyboard.type('LATE');
  await soon(() => words(page.locator('.find-choice[aria-selected=true]'))).toBe('Late 7/8 harvested 5 September 2026, Larch Bend');
  await page.keyboard.type(' nothing');
  await page.getByText('Nothing in this book and no command').waitFor();
  await page.keyboard.press('Escape');
  // What is not there is said, and is not to be printed.
  for (const [at, said] of [
    ['labels/NOPE', 'What you ask for was not in the book on 6 September 2026.'], ['labels/Early%201', 'No jars were filled from this lot yet.'], ['round/999/2026-09-06', 'What you ask for was not in the book'], ['round/1/soon', 'The address names no yard and day of this book.'],
    ['trip/2026-09-06', 'The plan has no trip on this day.'], ['tags/999', 'That yard is not in this book.'], ['tags/quarry', 'That yard is not in this book.'], ['treatments/1990', 'This book has no season “1990”.'], ['losses/1990', 'This book has no season “1990” to review.'], ['losses/last', 'This book has no season “last” to review.'],
  ] as const) {
    await page.evaluate((to) => {
      location.hash = `/print/${to}`;
    }, at);
    await page.getByText(said).first().waitFor();
    expect(await page.getByRole('button', { name: /^Print/ }).count(), at).toBe(0);
    await page.getByRole('link', { name: /^Back to/ }).waitFor();
  }
});

const yieldRows: readonly Cells[] = [
  ...['A', 'B'].map((colony): Cells => ({ date: '2022-05-10', entry: 'install', yard: 'QY', colony, origin: 'nuc' })),
  { date: '2022-05-10', entry: 'install', yard: 'LB', colony: 'C', origin: 'package' },
  { date: '2022-05-10', entry: 'install', yard: 'LB', colony: 'D', origin: 'package' },
];
const yieldHarvests: readonly Cells[] = [
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
      await desk('journal.enter', { rows: [...yieldRows] });
    },
  });
  const { page, desk } = window;
  const section = page.getByRole('region', { name: 'What the colonies yield' });
  const sentence = () => words(section.locator('.sentence'));
  await section.getByText('Enter a harvest for each colony').waitFor();
  expect(await section.getByRole('table').count()).toBe(0);

  // Two weighed colonies and a yard weighed together: words, what was weighed, and the printed figure of the year.
  await desk('journal.enter', { rows: [...yieldHarvests] });
  await page.reload();
  await soon(sentence).toBe('Only 2 colony-seasons were weighed; from 12 on yards are compared.');
  expect(await cells(page, 'Honey of a colony by yard', 'Quarry')).toEqual(['Quarry', '2', '46.0 (two, too few for a range)', '–']);
  expect(await cells(page, 'Honey of a colony by yard', 'Larch Bend')).toEqual(['Larch Bend', '–', '–', '90 of 2 (45.0 each)']);
  expect(await cells(page, 'Season by season', '2022')).toEqual(['2022', '182', '4', '45.5', '47.0', 'too few hours', '0 of 4']);
  await section.getByText('No hours of work are written down for 2022').waitFor();
  await section.getByLabel('Compare by').selectOption('source');
  await soon(sentence).toBe('Only 2 colony-seasons were weighed; from 12 on sources are compared.');
  await section.getByRole('button', { name: 'Show what was weighed' }).click();
  const small = section.getByRole('region', { name: 'All that was weighed' });
  await soon(() => small.getByRole('rowheader').allTextContents()).toEqual(['B', 'A']);
  expect(await section.getByRole('button', { name: 'Save the yields as CSV' }).count()).toBe(0);

  await desk('book.demo', { which: 'ossar' });
  await page.reload();
  // Means, limits and pooled figures as R 4.2.2 has them from the exported journal (mean, t.test, lm, and methods of moments).
  const table = 'Honey of a colony by yard';
  await soon(sentence).toBe('The yards differ by more than chance makes likely. The most came from Kiln Field: 85 lb a colony (75 lb to 94 lb); all together 75 lb a colony over 198 colony-seasons.');
  expect(await cells(page, table, 'Kiln Field')).toEqual(['Kiln Field', '64', '88.4 (76.3–100.5)', '84.6 (75.2–93.9)', '', '–']);
  expect(await cells(page, table, 'North Slope')).toEqual(['North Slope', '34', '51.8 (43.0–60.5)', '58.7 (46.5–70.9)', '', '–']);
  await section.getByRole('img', { name: 'Kiln Field: 84.6 lb a colony, plausible from 75.2 to 93.9' }).waitFor();
  expect(await cells(page, 'Season by season', '2024')).toEqual(['2024', '3,995', '56', '71.3', '51.7', '17.0 (16.0–18.2)', '93 of 128']);
  await section.getByText('2024: USDA NASS, as reported by pnwag.net. For 2023, 2025 and 2026 no printed figure is held here.', { exact: false }).waitFor();
  await page.getByRole('complementary', { name: 'Margin' }).getByText('good and bad years are evened out first', { exact: false }).waitFor();
  await expectAccessible(page);

  const lines = await saved(page, section.getByRole('button', { name: 'Save the yields as CSV' }));
  expect(lines[0]).toBe('group,colony_seasons,colonies,seasons,mean_lb,mean_low,mean_high,compared_lb,compared_low,compared_high,years_evened_out,pulled_to_the_whole,weighed_together_lb,weighed_together_colony_seasons');
  expect(lines[1]).toBe('Kiln Field,64,34,4,88.397,76.315,100.479,84.567,75.222,93.912,yes,yes,,');

  await section.getByLabel('Compare by').selectOption('queenAge');
  await section.getByRole('button', { name: '22, Older queens: colonies weighed: show them' }).click();
  const behind = section.getByRole('region', { name: 'Older queens: colonies weighed' });
  await soon(() => behind.getByRole('row').count()).toBe(23);
  await page.getByRole('complementary', { name: 'Margin' }).getByText('of the way to the mean of all', { exact: false }).waitFor();
  await behind.getByRole('button', { name: 'Close' }).click();
  await section.getByLabel('Compare by').selectOption('season');
  await soon(() => cells(page, 'Honey of a colony by season', '2021')).toEqual(['2021', '6', '28.8 (24.3–33.4)', '']);
  expect(await section.getByRole('combobox').count()).toBe(1);

  await desk('book.settings', { massUnit: 'kg' });
  await page.reload();
  await soon(() => cells(page, table, 'Kiln Field')).toEqual(['Kiln Field', '64', '40.1 (34.6–45.6)', '38.4 (34.1–42.6)', '', '–']);
  expect((await cells(page, 'Season by season', '2024')).slice(0, 5)).toEqual(['2024', '1,812', '56', '32.4', '23.5']);
});
