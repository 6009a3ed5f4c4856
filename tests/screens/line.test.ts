import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { chooseRecords, goTo, notice, startBook, words, type ScreenName } from './support/person.ts';
import { sheetOn } from './roundSheet.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

const sample = fileURLToPath(new URL('../reference/data/ossar-journal.csv', import.meta.url));

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('the whole line: records in, losses with intervals, a round by keyboard, the account moves, an order on paper, all still there after a restart', async () => {
  window = await openWindow();
  const { page, desk } = window;
  await startBook(page, 'Ossar Valley');
  await chooseRecords(page, sample);
  await page.getByRole('button', { name: /^Enter \d+ records$/ }).click();
  await notice(page).getByText(/entered from ossar-journal.csv/).waitFor();

  // The last full winter, against the counts kept beside the sample.
  const expected = JSON.parse(readFileSync(new URL('../reference/data/ossar-expected.json', import.meta.url), 'utf8')) as {
    season_yard: { season: number; yard: string; at_1_oct: number; lost_winter: number }[];
  };
  const winter = expected.season_yard.filter((row) => row.season === 2025);
  const sum = (key: 'at_1_oct' | 'lost_winter') => winter.reduce((total, row) => total + row[key], 0);
  await goTo(page, 'Losses');
  await expect.poll(() => words(page.locator('main')), { timeout: 15_000 }).toContain(`You wintered ${sum('at_1_oct')} colonies and lost ${sum('lost_winter')}`);
  expect(await words(page.locator('main'))).toMatch(/anything from \d+ to \d+ in 100 fits/);

  // A round on the sheet by keyboard alone: a look and a loss.
  const before = await desk('losses.review', { united: 'lost', season: 2026 });
  const living = (await desk('book.status', {})).book?.living ?? 0;
  await goTo(page, 'Tonight');
  const sheet = sheetOn(page);
  await sheet.ready();
  const [first = '', second = ''] = (await sheet.labels()).map(String);
  await sheet.isAt(first, 'bees');
  await sheet.typeDown(['7']);
  await sheet.go(second, 'act');
  await page.keyboard.type('starv; mites');
  await sheet.enter();
  await notice(page).getByText('Round at LB, 2 colonies').waitFor();
  await expect.poll(async () => (await desk('book.status', {})).book?.living).toBe(living - 1);

  await goTo(page, 'Losses');
  const after = await desk('losses.review', { united: 'lost', season: 2026 });
  const total = (review: typeof after) => review.ledger.find((row) => row.yard === 'all');
  expect(total(after)).toEqual({ ...total(before), lostWinter: (total(before)?.lostWinter ?? 0) + 1, closing: (total(before)?.closing ?? 0) - 1 });
  await expect.poll(() => words(page.locator('main')), { timeout: 15_000 }).toContain(`have lost ${total(after)?.lostWinter} so far`);

  // Target and confidence, and the order on paper.
  await goTo(page, 'Stock and orders');
  await page.getByRole('link', { name: 'Order before spring' }).click();
  await page.getByRole('textbox', { name: 'Colonies wanted' }).fill('70');
  await page.getByRole('textbox', { name: 'How sure, %' }).fill('90');
  const plan = await desk('order.decide', { target: 70, confidence: 0.9 });
  const said = plan.sentences.find((sentence) => sentence.startsWith('To have 70'))?.replaceAll('\u00a0', ' ') ?? '';
  expect(said).toContain('To have 70 with a confidence of 90 in 100: order');
  await expect.poll(() => words(page.locator('main')), { timeout: 30_000 }).toContain(said);
  await expect.poll(async () => (await desk('order.kept', {})).target).toBe(70);
  await page.getByRole('link', { name: 'Print the order' }).or(page.getByRole('button', { name: 'Print the order' })).click();
  await page.getByRole('heading', { name: 'Order for spring 2027' }).waitFor();
  expect(await words(page.locator('body'))).toContain('Target 70 colonies, reached with 90 % confidence');
  expect((await page.pdf({ format: 'Letter' })).subarray(0, 5).toString('latin1')).toBe('%PDF-');

  await page.getByRole('link', { name: 'Back to the order' }).click();
  await window.restart();
  expect((await desk('book.status', {})).book?.living).toBe(living - 1);
  await expect.poll(() => words(page.locator('main')), { timeout: 30_000 }).toContain(said);
  await goTo(page, 'Tonight');
  await expect.poll(() => words(page.locator('main')), { timeout: 15_000 }).toContain('Round at');
});

test('every screen of the demo is open to everyone, on light and dark paper', async () => {
  window = await openWindow({
    first: async (desk) => {
      await desk('book.demo', { which: 'ossar' });
    },
  });
  const { page } = window;
  for (const screen of ['Tonight', 'Yards', 'Colonies', 'Family lines', 'Losses', 'Honey', 'Stock and orders', 'Book'] satisfies ScreenName[]) {
    await goTo(page, screen);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.getByRole('table').first().waitFor();
    await expectAccessible(page);
  }
});
