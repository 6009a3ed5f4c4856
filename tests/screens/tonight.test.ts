import { parse } from 'csv-parse/sync';
import { afterAll, afterEach, expect, test } from 'vitest';
import { standardColumns } from '#shared/roundSheets.ts';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice } from './support/person.ts';
import { sheetOn, yardOf } from './roundSheet.ts';
import { closeBrowser, openWindow, today, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options?: WindowOptions) => (window = await openWindow({ at: '/tonight', ...options }));
const openYard = (colonies: number) => open({ first: (desk) => yardOf(desk, colonies) });
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/** The journal's rows of a day, as the export writes them. */
async function rowsOf(desk: OpenedWindow['desk'], day: string): Promise<Record<string, string>[]> {
  const { text } = await desk('export.journal', {});
  const rows: Record<string, string>[] = parse(text, { columns: true, bom: true });
  return rows.filter((row) => row['date'] === day);
}

const columnKeys = standardColumns.inspection;

test('a round of 14 colonies by keyboard alone: refused value, reload half way, a loss, undo and redo', async () => {
  const { page, desk } = await openYard(14);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');

  await sheet.typeDown(['8', '9', '7,5', '6', 'eight', '9', '3', '8', '8', '7', '5.5', '8', '9', '10']);
  await sheet.isAt('LB-01', 'brood');
  expect(await sheet.cell('LB-03', 'bees').inputValue()).toBe('7.5');
  expect(await sheet.cell('LB-05', 'bees').getAttribute('aria-invalid')).toBe('true');
  expect(await sheet.below('LB-05')).toBe('“eight” is no number of frames. Type it like 8 or 5.5.');
  await sheet.typeDown(['5', '6']);
  await sheet.draftKept();

  await page.reload();
  await sheet.isAt('LB-01', 'bees');
  expect((await sheet.row('LB-02')).slice(0, 3)).toEqual(['9', '6', '']);
  expect(await sheet.below('LB-05')).toContain('“eight”');
  expect(await rowsOf(desk, today)).toEqual([]);

  // The first row across: stores, eggs, queen, cells, temper, mites, sample, lost, note.
  for (let skip = 0; skip < 2; skip += 1) await page.keyboard.press('Tab');
  await sheet.typeAcross(['3', 'y', 'n', 'su', '2', '4', '', '', 'cells on two frames']);
  await sheet.isAt('LB-02', 'bees');
  expect(await sheet.row('LB-01')).toEqual(['8', '5', '3', 'yes', 'no', 'supersedure', '2', '4', '', '', 'cells on two frames']);

  await sheet.go('LB-07', 'act');
  await page.keyboard.type('starv; mites');
  await page.keyboard.press('ArrowLeft');
  await sheet.enter();
  await expect.poll(sheet.says).toBe('One cell cannot be read. Nothing is entered yet.');
  await sheet.isAt('LB-05', 'bees');
  await page.keyboard.type('8');

  // Three frames of bees on a colony that is lost: asked about, and entered when told so.
  await sheet.enter();
  await sheet.isAt('LB-07', 'act');
  expect(await sheet.below('LB-07')).toContain('Lost, yet 3 frames of bees');
  expect(await rowsOf(desk, today)).toEqual([]);
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 14 colonies: 14 inspections, 1 mite count, 1 loss.');

  const entered = await rowsOf(desk, today);
  expect(entered.filter((row) => row['entry'] === 'inspection')).toHaveLength(14);
  expect(entered.find((row) => row['colony'] === 'LB-01' && row['entry'] === 'mites')).toMatchObject({ mites: '4', bees: '300' });
  expect(entered.filter((row) => row['colony'] === 'LB-07').map((row) => [row['entry'], row['frames_bees'], row['cause']])).toEqual([
    ['inspection', '3', ''],
    ['loss', '', 'starvation;mites'],
  ]);
  await expect.poll(sheet.labels).toHaveLength(13);
  expect(await sheet.labels()).not.toContain('LB-07');
  await sheet.isAt('LB-01', 'bees');
  expect(await sheet.row('LB-01')).toEqual(columnKeys.map(() => ''));

  await page.locator('.notice-place').getByRole('button', { name: 'Undo' }).press('Enter');
  await expect.poll(sheet.labels).toContain('LB-07');
  expect(await rowsOf(desk, today)).toEqual([]);
  // The typing is back too, to be mended and entered again.
  await expect.poll(() => sheet.cell('LB-07', 'act').inputValue()).toBe('starvation; mites');
  expect((await sheet.row('LB-01')).at(-1)).toBe('cells on two frames');

  await page.getByRole('button', { name: 'Bring back: Round at Larch Bend, 14 colonies' }).press('Enter');
  await expect.poll(sheet.labels).not.toContain('LB-07');
  await expect.poll(() => sheet.cell('LB-01', 'bees').inputValue()).toBe('');
  expect(await rowsOf(desk, today)).toHaveLength(16);

  await page.reload();
  await sheet.ready();
  expect(await sheet.labels()).toHaveLength(13);
  expect(await page.getByText('Round at Larch Bend, 14 colonies').count()).toBe(1);
});

test('what the desk refuses stands under its row, with nothing lost and nothing entered', async () => {
  const { page, desk } = await openYard(4);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await sheet.typeDown(['8', '7', '6', '5', '4', '4']);
  // Sold from another window, after this sheet was laid out.
  await desk('journal.enter', { rows: [{ date: '2026-11-20', entry: 'sale', yard: 'LB', colony: 'LB-03', price: '180' }] });
  await sheet.enter();
  await sheet.isAt('LB-03', 'bees');
  expect(await sheet.below('LB-03')).toContain('LB-03');
  await expect.poll(sheet.says).toContain('One row was refused, so nothing is entered yet.');
  expect(await rowsOf(desk, today)).toEqual([]);
  expect((await sheet.row('LB-02')).slice(0, 2)).toEqual(['7', '4']);
  await expectAccessible(page);
  // Emptied, the rest goes in.
  await page.keyboard.press('Delete');
  await page.locator('.round-below').waitFor({ state: 'detached' });
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toContain('Round at Larch Bend, 3 colonies');
  expect(await rowsOf(desk, today)).toHaveLength(3);
});

test('a value out of the ordinary is asked about, kept with Enter, and asked again when it changes', async () => {
  const { page, desk } = await openYard(2);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('55');
  await page.keyboard.press('Enter');
  expect(await sheet.below('LB-01')).toContain('55 frames of bees is more than two ten-frame boxes hold');
  expect(await sheet.cell('LB-01', 'bees').getAttribute('aria-invalid')).toBeNull();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.locator('.round-below').waitFor({ state: 'detached' });
  await sheet.isAt('LB-02', 'bees');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.type('44');
  expect(await sheet.below('LB-01')).toContain('44 frames');
  await sheet.enter();
  await expect.poll(sheet.says).toContain('One value is out of the ordinary. Press Ctrl Enter again');
  expect(await rowsOf(desk, today)).toEqual([]);
  await page.keyboard.type('4.4');
  await sheet.enter();
  await expect.poll(async () => (await rowsOf(desk, today)).map((row) => row['frames_bees'])).toEqual(['4.4']);
});

test('keys of the sheet: Ctrl D repeats, Escape takes back, arrows move, Tab meets every cell', async () => {
  const { page } = await openYard(3);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('8');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Control+d');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Control+d');
  await page.keyboard.type('3');
  await page.keyboard.press('Escape');
  expect(await sheet.cell('LB-03', 'bees').inputValue()).toBe('');
  expect(await sheet.cell('LB-02', 'bees').inputValue()).toBe('8');
  await page.keyboard.press('Control+Home');
  for (const label of ['LB-01', 'LB-02', 'LB-03']) {
    for (const column of columnKeys) {
      await sheet.isAt(label, column);
      await page.keyboard.press('Tab');
    }
  }
  await sheet.go('LB-03', 'note');
  await page.keyboard.press('Enter');
  await expect.poll(sheet.says).toBe('End of the sheet. Ctrl Enter enters the round.');
  await page.keyboard.press('Shift+Tab');
  await sheet.isAt('LB-03', 'act');
});

test('the day goes by keys or as typed; a day to come is asked about; typing under a wrong day is brought over', async () => {
  const { page, desk } = await openYard(2);
  const sheet = sheetOn(page);
  const day = page.getByLabel('Day', { exact: false }).first();
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('8');
  await sheet.draftKept();

  await day.focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(sheet.says).toBe('Thu 26 November 2026 is still to come; today is 25 November 2026. You can print its sheet; a round is entered once it is done.');
  await page.keyboard.press('Enter');
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('6');
  await sheet.enter();
  await expect.poll(sheet.says).toContain('If the round is done and the day is right, press Ctrl Enter again.');
  expect(await rowsOf(desk, '2026-11-26')).toEqual([]);
  await page.keyboard.press('Escape');
  await day.focus();
  await page.keyboard.press('y');
  await expect.poll(() => day.inputValue()).toBe('11/24/2026');
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => day.inputValue()).toBe('11/23/2026');
  await page.keyboard.type('11/31/2026');
  await page.keyboard.press('Enter');
  await expect.poll(sheet.says).toContain('“11/31/2026” is no day.');
  await sheet.enter();
  expect(await rowsOf(desk, '2026-11-23')).toEqual([]);
  await day.fill('2026-11-22');
  // With a day half typed Ctrl Enter only takes the day.
  await page.keyboard.press('Control+Enter');
  await page.getByRole('heading', { name: 'Larch Bend, round of 22' }).waitFor();
  await sheet.ready();
  await page.getByRole('button', { name: 'Bring it to this day' }).press('Enter');
  await expect.poll(() => sheet.cell('LB-01', 'bees').inputValue()).toBe('8');
  await sheet.enter();
  await expect.poll(async () => (await rowsOf(desk, '2026-11-22')).map((row) => row['frames_bees'])).toEqual(['8']);
  await page.getByText('1 colony has entries on this day already').waitFor();

  await day.focus();
  await page.keyboard.press('t');
  await page.getByRole('heading', { name: 'Larch Bend, round of 25' }).waitFor();
  await sheet.ready();
  expect(await sheet.cell('LB-01', 'bees').inputValue()).toBe('');
  expect(await page.getByText('Typed, not entered yet').count()).toBe(0);
});

test('a half-typed sheet is still there after another screen, and after the program was closed', async () => {
  const window = await openYard(2);
  const { page } = window;
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await page.keyboard.type('7');
  // Left at once, before the pause after which drafts are kept.
  await goTo(page, 'Colonies');
  await page.getByRole('heading', { name: 'Colonies', level: 1 }).waitFor();
  await goTo(page, 'Tonight');
  await sheet.ready();
  expect(await sheet.cell('LB-01', 'bees').inputValue()).toBe('7');
  await page.getByLabel(/^Sample/).fill('250');
  await sheet.draftKept();
  await window.restart();
  await sheet.ready();
  expect(await sheet.cell('LB-01', 'bees').inputValue()).toBe('7');
  expect(await page.getByLabel(/^Sample/).inputValue()).toBe('250');
});

test('the margin tells of the colony and the cell', async () => {
  const { page } = await open({
    first: async (desk) => {
      await yardOf(desk, 2);
      await desk('journal.enter', {
        rows: [
          { date: '2026-11-20', entry: 'inspection', yard: 'LB', colony: 'LB-01', eggs: 'no' },
          { date: '2026-08-18', entry: 'inspection', yard: 'LB', colony: 'LB-02', frames_bees: '9', eggs: 'yes' },
          { date: '2026-08-18', entry: 'mites', yard: 'LB', colony: 'LB-02', mites: '4', bees: '300' },
        ],
      });
    },
  });
  const sheet = sheetOn(page);
  const margin = page.getByRole('complementary', { name: 'Margin' });
  await sheet.isAt('LB-01', 'bees');
  await margin.getByText('No mite count before this day.').waitFor();
  await page.keyboard.press('ArrowDown');
  await margin.getByRole('heading', { name: 'LB-02, frames of bees' }).waitFor();
  await margin.getByText('white 2026').waitFor();
  await margin.getByText('4 mites in 300 bees, 1.3 in 100').waitFor();
  // The exact 95 % interval of 4 in 300, by summing both binomial tails to 2.5 %: 0.364 to 3.378 in 100.
  await margin.getByText('Anything from 0.4 to 3.4 in 100 fits').waitFor();
  await margin.getByText('18 August 2026').first().waitFor();
  await margin.getByText('No eggs on 20 November: look for eggs or the queen.').waitFor({ state: 'detached' });
  await page.keyboard.press('ArrowUp');
  await margin.getByText('No eggs on 20 November: look for eggs or the queen.').waitFor();
});

test('an empty book says what will be here and offers the next step', async () => {
  const { page } = await open({ first: (desk) => desk('book.create', { name: 'Ossar Valley' }).then(() => undefined) });
  await page.getByText('there are no colonies yet').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'import records' }).click();
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
});

test('an operation of one yard with 500 colonies is typed and entered like any other', async () => {
  const { page, desk } = await openYard(500);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await sheet.typeDown(['8', '7', '6']);
  await page.keyboard.press('Control+End');
  await sheet.isAt('LB-500', 'note');
  await page.keyboard.type('last of all');
  await sheet.enter();
  await expect.poll(() => notice(page).textContent()).toBe('Round at Larch Bend, 4 colonies: 3 inspections, 1 note.');
  expect((await rowsOf(desk, today)).map((row) => row['colony'])).toEqual(['LB-01', 'LB-02', 'LB-03', 'LB-500']);
});

test('the sheet with its sentences is open to everyone, on light and dark paper', async () => {
  const { page } = await openYard(14);
  const sheet = sheetOn(page);
  await sheet.isAt('LB-01', 'bees');
  await sheet.typeDown(['x', '55', '8']);
  await sheet.go('LB-04', 'act');
  await page.keyboard.type('m');
  await expectAccessible(page);
  // Nothing but the sheet itself scrolls.
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(800);
});
