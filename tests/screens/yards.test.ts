import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, words } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

/** A yard of four colonies with something done, and one without any. */
const twoYards: WindowOptions = {
  at: '/yards',
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
    await desk('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
    await desk('yard.details', { id: 2, access: null, notes: null, registration: null, renewal: '2026-12-05' });
    await desk('journal.enter', {
      rows: [
        ...['LB-1', 'LB-2', 'LB-3', 'LB-10'].map((colony) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2026' })),
        { date: '2026-09-01', entry: 'inspection', colony: 'LB-2', frames_bees: '8', frames_brood: '5.5', frames_stores: '2' },
        { date: '2026-09-01', entry: 'mites', colony: 'LB-2', mites: '4', bees: '300' },
        { date: '2026-09-01', entry: 'inspection', colony: 'LB-3', frames_bees: '7' },
        { date: '2026-09-01', entry: 'feed', colony: 'LB-10', feed: 'syrup 2:1', amount: '2', unit: 'gal' },
        { date: '2026-09-08', entry: 'stock', item: 'Deep box', quantity: '3', from: 'shed', to: 'LB' },
      ],
    });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

const table = ({ page }: OpenedWindow) => page.getByRole('table', { name: /^Colonies in stand order/ });
const standing = (opened: OpenedWindow) => table(opened).getByRole('rowheader').allTextContents();
const sheet = async ({ desk }: OpenedWindow) => (await desk('round.sheet', { yard: 1, day: '2026-11-25' })).rows.map(({ label }) => label);

test('the list of yards leads to a yard’s page that says what stands there and what was done', async () => {
  const opened = await open({ ...twoYards, at: '/tonight' });
  const { page } = opened;
  await goTo(page, 'Yards');
  const list = page.getByRole('table', { name: 'Yards' });
  expect(await words(list.getByRole('row', { name: /Larch Bend/ }))).toBe('Larch Bend LB 4 12 35 8 September 2026 –');
  expect(await words(list.getByRole('row', { name: /North Slope/ }))).toBe('North Slope NS 0 – – – 5 December 2026, in 10 days');
  await expectAccessible(page);
  await list.getByRole('link', { name: 'Larch Bend' }).press('Enter');
  await page.getByRole('heading', { name: 'Larch Bend', level: 1 }).waitFor();
  expect(await words(page.locator('.page-line'))).toBe('4 colonies stand there, with room for 12, 8 free; 35 minutes from home.');
  expect(await standing(opened)).toEqual(['LB-1', 'LB-2', 'LB-3', 'LB-10']);
  const needed = (await opened.desk('needs.list', { yard: 1 as never })).lines.filter(({ status, optional }) => status !== 'coming' && !optional).map(({ act }) => act);
  expect(needed).toContain('Wrap the hives');
  await expect.poll(() => words(page.getByRole('region', { name: 'What is due here' }))).toContain(`Needed here now: ${[...new Set(needed)].join('; ')}.`);
  expect(await words(table(opened).getByRole('row', { name: /LB-2/ }))).toBe('2 LB-2 white 2026 1 September 2026 8 5.5 2 4 in 300 0');
  expect(await words(page.getByRole('row', { name: /deep box/ }))).toBe('deep box 7');
  const visit = page.getByRole('listitem').filter({ hasText: '1 September 2026' }).first();
  await visit.getByText('Inspection (2), Mite count, Feed').press('Enter');
  expect(await words(visit)).toContain('LB-10: Fed 2 gal of syrup 2:1.');
  await expectAccessible(page);
});

test('the stand order is changed by keyboard, lasts beyond a restart, and the round follows it', async () => {
  const opened = await open({ ...twoYards, at: '/yards/1' });
  const { page } = opened;
  await table(opened).getByRole('link', { name: 'LB-1', exact: true }).focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Alt+ArrowUp');
  await page.keyboard.press('Alt+ArrowUp');
  await notice(page).getByText('LB-10 now stands 2nd of 4 at Larch Bend.').waitFor();
  expect(await standing(opened)).toEqual(['LB-1', 'LB-10', 'LB-2', 'LB-3']);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('LB-10');
  await page.keyboard.press('Alt+Home');
  await page.keyboard.press('Alt+ArrowUp');
  await notice(page).getByText('LB-10 now stands 1st of 4').waitFor();
  await expect.poll(() => sheet(opened)).toEqual(['LB-10', 'LB-1', 'LB-2', 'LB-3']);
  await opened.restart();
  await expect.poll(() => standing(opened)).toEqual(['LB-10', 'LB-1', 'LB-2', 'LB-3']);
  await goTo(page, 'Tonight');
  const round = page.getByRole('grid').or(page.locator('table.sheet'));
  await round.first().waitFor();
  await expect.poll(async () => (await words(round.first())).match(/LB-\d+/g)?.slice(0, 4)).toEqual(['LB-10', 'LB-1', 'LB-2', 'LB-3']);
});

test('a line is dragged to its place', async () => {
  const opened = await open({ ...twoYards, at: '/yards/1' });
  // What stands above the table is there, so that nothing moves beneath the pointer.
  await opened.page.getByText('Needed here now:').waitFor();
  const row = (name: string) => table(opened).getByRole('row', { name: new RegExp(`${name} `) });
  await row('LB-3').dragTo(row('LB-1'));
  await notice(opened.page).getByText('LB-3 now stands 1st of 4 at Larch Bend.').waitFor();
  expect(await standing(opened)).toEqual(['LB-3', 'LB-1', 'LB-2', 'LB-10']);
  await row('LB-1').dragTo(row('LB-10'));
  await notice(opened.page).getByText('LB-1 now stands 4th of 4').waitFor();
  expect(await sheet(opened)).toEqual(['LB-3', 'LB-2', 'LB-10', 'LB-1']);
});

test('a move that meets a colony that has left meanwhile is refused, and shows what is there', async () => {
  const opened = await open({ ...twoYards, at: '/yards/1' });
  await table(opened).waitFor();
  await opened.desk('journal.enter', { rows: [{ date: '2026-11-25', entry: 'loss', colony: 'LB-2' }] });
  await table(opened).getByRole('link', { name: 'LB-1', exact: true }).press('Alt+ArrowDown');
  await opened.page.getByRole('alert').getByText('A colony came or left meanwhile').waitFor();
  await expect.poll(() => standing(opened)).toEqual(['LB-1', 'LB-3', 'LB-10']);
});

test('access and registration are written in place, by keyboard; Escape leaves them as they were', async () => {
  const opened = await open({ ...twoYards, at: '/yards/1' });
  const { page } = opened;
  const change = page.getByRole('button', { name: 'Change access and registration' });
  await change.press('Enter');
  await page.keyboard.type('Gate code at the farm');
  await page.keyboard.press('Escape');
  expect((await opened.desk('yard.page', { id: 1 })).details.access).toBeNull();
  await expect.poll(() => change.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await page.keyboard.type('Gate code at the farm');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.type('OV-117');
  await page.keyboard.press('Tab');
  await page.keyboard.type('31.2.2027');
  await page.getByText('That is no day. Write it like 2027-06-30 or 6/30/2027').waitFor();
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  expect((await opened.desk('yard.page', { id: 1 })).details.access).toBeNull();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('3/31/2027');
  await page.keyboard.press('Enter');
  await notice(page).getByText('What is written down of Larch Bend is kept.').waitFor();
  expect((await opened.desk('yard.page', { id: 1 })).details).toEqual({ access: 'Gate code at the farm', notes: null, registration: 'OV-117', renewal: '2027-03-31' });
  await opened.restart();
  await page.getByText('Gate code at the farm').waitFor();
});

test('without a yard the page says what will be here, and an unknown yard is said to be unknown', async () => {
  const opened = await open({ at: '/yards', first: async (desk) => void (await desk('book.create', { name: 'Ossar Valley' })) });
  const { page } = opened;
  await page.getByText('Here will be your yards').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Go to Book' }).click();
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
  await page.evaluate(() => (location.hash = '/yards/7'));
  await page.getByText('There is no such yard in this book.').waitFor();
});
