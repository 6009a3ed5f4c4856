import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, words, type ScreenName } from './support/person.ts';
import { sheetOn } from './roundSheet.ts';
import { closeBrowser, openWindow, type OpenedWindow } from './support/window.ts';

let window: OpenedWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const asOf = '2025-02-14';
const screens = ['Tonight', 'Yards', 'Colonies', 'Family lines', 'Losses', 'Honey', 'Stock and orders', 'Book'] satisfies ScreenName[];

async function openDemo(): Promise<OpenedWindow> {
  window = await openWindow({
    first: async (desk) => {
      await desk('book.demo', { which: 'ossar' });
    },
  });
  return window;
}
const banner = ({ page }: OpenedWindow) => page.locator('.looking');
async function lookAt({ page }: OpenedWindow, typed: string): Promise<void> {
  await page.keyboard.press('Alt+l');
  await page.getByRole('textbox', { name: 'Look at the operation as it was' }).waitFor();
  await page.keyboard.type(typed);
  await page.keyboard.press('Enter');
}

test('a day is chosen by keyboard, every screen says so and shows the operation as it was, and one key leads back', async () => {
  const opened = await openDemo();
  const { page, desk } = opened;
  const now = (await desk('book.status', {})).book;
  const then = (await desk('book.status', { asOf })).book;
  expect(then?.living).not.toBe(now?.living);
  const size = page.locator('.rail-size').first();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await expect.poll(() => words(size)).toContain(`${now?.living} colonies`);

  // What cannot be looked at is said where it was typed; Escape leaves the choice.
  await lookAt(opened, '13/13/2025');
  await page.getByText('This is no day yet').waitFor();
  await page.getByRole('textbox', { name: 'Look at the operation as it was' }).fill('2030-01-01');
  await page.keyboard.press('Enter');
  await page.getByText('1 January 2030 is still to come').waitFor();
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('form', { name: 'Look at another day' }).count()).toBe(0);

  await lookAt(opened, '2/14/2025');
  await expect.poll(() => words(banner(opened))).toContain('You are looking at 14 February 2025. Nothing can be entered.');
  for (const screen of screens) {
    await goTo(page, screen);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(() => words(banner(opened)), { message: screen }).toContain('You are looking at 14 February 2025. Nothing can be entered.');
    await expect.poll(() => words(page.locator('.page-as-of')), { message: screen }).toContain('as of 14 February 2025');
    // The other screens differ from their own tests by the banner alone.
    if (screen === 'Tonight' || screen === 'Book') await expectAccessible(page);
  }
  await expect.poll(() => words(size)).toContain(`${then?.living} colonies`);

  await goTo(page, 'Colonies');
  await expect.poll(() => words(page.getByRole('table').locator('tfoot'))).toContain(`${then?.living} colonies`);
  await goTo(page, 'Yards');
  const { yards } = await desk('yards.list', { asOf });
  for (const { name, living } of yards) await expect.poll(() => words(page.getByRole('row').filter({ hasText: name }).first())).toContain(String(living));

  // A colony that came later has no page then, and its page says why.
  const late = (await desk('colonies.list', { which: 'all' })).rows.find(({ start }) => start > asOf);
  await page.goto(`${new URL(page.url()).origin}/#/colonies/${late?.id}`);
  await page.getByText('What you ask for was not in the book on 14 February 2025.').waitFor();

  await page.keyboard.press('Alt+Shift+L');
  await expect.poll(() => banner(opened).count()).toBe(0);
  await page.getByRole('heading', { name: `Colony ${late?.label}`, level: 1 }).waitFor();
  await expect.poll(() => words(size)).toContain(`${now?.living} colonies`);
});

test('nothing can be entered while another day is looked at, and what was typed is there again today', async () => {
  const opened = await openDemo();
  const { page, desk } = opened;
  const before = (await desk('book.status', {})).book;

  // Typing on the round sheet, then a look back.
  const sheet = sheetOn(page);
  await sheet.ready();
  const [label = ''] = (await sheet.labels()).map(String);
  await sheet.isAt(label, 'bees');
  await page.keyboard.type('7');
  await lookAt(opened, '2025-02-14');
  await page.getByText('A round is entered today').waitFor();
  expect(await page.locator('.round-sheet').count()).toBe(0);

  // Every way in rests or is refused.
  await page.keyboard.press('Alt+z');
  await notice(page).getByText('You are looking at 14 February 2025, so nothing was entered or changed.').waitFor();
  await page.locator('h1').focus();
  await page.keyboard.press('Control+z');
  await notice(page).getByText('so nothing was entered or changed').waitFor();
  await goTo(page, 'Colonies');
  const enter = page.getByRole('button', { name: 'Enter a record' });
  await enter.waitFor();
  expect(await enter.isDisabled()).toBe(true);
  await page.keyboard.press('Alt+n');
  await page.getByRole('table').getByRole('link').first().click();
  await page.getByRole('heading', { name: /^Colony/, level: 1 }).waitFor();
  for (const button of [page.getByRole('button', { name: 'Enter a record' }), page.locator('.story-acts button').first()]) expect(await button.isDisabled()).toBe(true);
  await goTo(page, 'Yards');
  await page.getByRole('table').getByRole('link').first().click();
  await page.getByRole('table', { name: /stand/i }).waitFor();
  await page.getByRole('table', { name: /stand/i }).getByRole('link').first().focus();
  await page.keyboard.press('Alt+ArrowDown');
  await page.getByRole('alert').getByText('so nothing was entered or changed').waitFor();
  await goTo(page, 'Stock and orders');
  const movement = page.getByRole('button', { name: 'Enter this movement' });
  await movement.waitFor();
  expect(await movement.isDisabled()).toBe(true);
  await goTo(page, 'Book');
  await page.locator('input[type=file]').waitFor();
  expect(await page.locator('input[type=file]').isDisabled()).toBe(true);
  expect(await page.getByRole('button', { name: 'Close this book' }).or(page.getByRole('button', { name: 'Close the book' })).isDisabled()).toBe(false);

  const after = (await desk('book.status', {})).book;
  expect([after?.position, after?.entries]).toEqual([before?.position, before?.entries]);

  // The way back by keyboard alone, from the banner.
  await goTo(page, 'Tonight');
  await banner(opened).getByRole('button', { name: 'Back to today' }).focus();
  await page.keyboard.press('Enter');
  await sheet.ready();
  expect(await sheet.cell(label, 'bees').inputValue()).toBe('7');
});

test('another book is looked at today', async () => {
  const opened = await openDemo();
  const { page } = opened;
  await lookAt(opened, '2025-02-14');
  await banner(opened).waitFor();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('tiny');
  await page.keyboard.press('Enter');
  await expect.poll(() => banner(opened).count()).toBe(0);
  await expect.poll(() => words(page.locator('.rail-name'))).toBe((await opened.desk('book.status', {})).book?.name);
});
