import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { expectAccessible } from './support/axe.ts';
import { goTo } from './support/person.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow({ at: '/losses', ...options }));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

/**
 * Quarry: 12 wintered, 3 lost (one with its cause), 1 united in January. Larch Bend: 4 wintered, 1 lost; 1 lost in summer.
 * Under the survey's rule the united one counts as lost.
 */
const twoYards: WindowOptions = {
  first: async (desk) => {
    await desk('book.create', { name: 'Ossar Valley' });
    await desk('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
    await desk('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
    const label = (yard: string, at: number) => `${yard}-${String(at + 1).padStart(2, '0')}`;
    const install = (yard: string) => (_: unknown, at: number) => ({ date: '2025-04-24', entry: 'install' as const, yard, colony: label(yard, at), origin: 'package' });
    await desk('journal.enter', {
      rows: [
        ...Array.from({ length: 12 }, install('QY')),
        ...Array.from({ length: 5 }, install('LB')),
        { date: '2025-07-10', entry: 'loss', colony: 'LB-05', cause: 'queen failure' },
        { date: '2025-12-05', entry: 'loss', colony: 'QY-01', cause: 'starvation; cold' },
        { date: '2026-01-20', entry: 'loss', colony: 'QY-02' },
        { date: '2026-01-22', entry: 'combine', colony: 'QY-04', into: 'QY-05' },
        { date: '2026-02-14', entry: 'loss', colony: 'QY-03', cause: 'mites' },
        { date: '2026-03-01', entry: 'loss', colony: 'LB-01', cause: 'queen failure' },
      ],
    });
  },
};
const demo: WindowOptions = {
  first: async (desk) => {
    await desk('book.demo', { which: 'ossar' });
  },
};

const choose = (page: Page, name: string, value: string) => page.getByRole('combobox', { name }).selectOption(value);
async function season(page: Page, year = '2025'): Promise<void> {
  await choose(page, 'Season', year);
  await page.getByRole('heading', { name: `Season review, ${year}–${(Number(year) + 1) % 100}`, level: 1 }).waitFor();
  await expect.poll(() => page.locator('main [aria-busy=true]').count()).toBe(0);
}
const section = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const table = (page: Page, name: string | RegExp) => page.getByRole('table', { name });
/** Waits until it holds; the machine may be busy. */
const soon = <Value>(look: () => Value) => expect.poll(look, { timeout: 15_000 });
const margin = (page: Page) => page.getByRole('complementary', { name: 'Margin' });

/** The rows of a table as words, cell by cell; read in one go, for the table may change meanwhile. */
async function rows(of: Locator): Promise<string[][]> {
  const found = await of.locator('tr').evaluateAll((lines) => lines.map((line) => [...line.querySelectorAll('th, td')].map((cell) => cell.textContent ?? '')));
  return found.map((line) => line.map((text) => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim()));
}

const rowOf = async (of: Locator, name: string) => (await rows(of)).find((row) => row[0] === name);

test('both definitions, the yards and the few, counted by hand; figures open their colonies', async () => {
  const { page } = await open(twoYards);
  await season(page);
  const both = table(page, 'Loss by the two published definitions');
  await both.waitFor();
  const counts = (await rows(both)).slice(1).map((row) => row.slice(0, 4));
  expect(counts).toEqual([
    ['Winter, US survey rule', '16', '5', '31'],
    ['Winter, COLOSS rule', '16', '4', '25'],
    ['dead or empty', '16', '3', '19'],
    ['queen problem', '16', '1', '6'],
    ['natural disaster', '16', '0', '0'],
    ['Summer, US survey rule', '17', '1', '6'],
    ['Whole year, US survey rule', '17', '6', '35'],
  ]);
  await page.getByText('Left the wintered colonies alive during the winter: 1 united.').waitFor();
  const winter = table(page, 'Winter loss by yard');
  // Quarry: 3 dead and 1 united of 12; Larch Bend: 1 of 4, too few for the rate to lead.
  expect((await rowOf(winter, 'Quarry'))?.slice(0, 4)).toEqual(['Quarry', '12', '4', '33']);
  expect((await rowOf(winter, 'Larch Bend'))?.slice(0, 4)).toEqual(['Larch Bend', '4', '1', 'few25']);
  // Wilson for 4 of 12 (methods for colony losses, section 1b): 0.138 to 0.609.
  await winter.getByRole('img', { name: 'Quarry: 33 %, plausible from 14 to 61 %' }).waitFor();
  await page.getByRole('button', { name: 'As a table (Winter loss by yard)' }).click();
  expect((await rowOf(winter, 'Quarry'))?.[4]).toBe('(14–61)');

  // The line explains itself while the keyboard is on one of its figures, and the figure opens its colonies.
  await winter.getByRole('button', { name: /^1, show the colonies: Larch Bend: lost/ }).focus();
  await margin(page).getByRole('heading', { name: 'Larch Bend, 1 of 4' }).waitFor();
  await margin(page).getByText('With 4 colonies the rate alone says little').waitFor();
  await winter.getByRole('button', { name: /^4, show the colonies: Quarry: lost/ }).click();
  const behind = section(page, 'Colonies behind “Quarry: lost”');
  await behind.waitFor();
  await soon(async () => (await rows(behind)).slice(1)).toEqual([
    ['QY-01', 'QY', '24 April 2025', '5 December 2025', 'lost: starvation; cold'],
    ['QY-02', 'QY', '24 April 2025', '20 January 2026', 'lost'],
    ['QY-04', 'QY', '24 April 2025', '22 January 2026', 'united'],
    ['QY-03', 'QY', '24 April 2025', '14 February 2026', 'lost: mites'],
  ]);
  await behind.getByRole('button', { name: 'Close the list' }).click();
  await behind.waitFor({ state: 'detached' });
  await soon(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/Quarry: lost/);

  await choose(page, 'Loss over', 'summer');
  expect((await rowOf(table(page, 'Summer loss by yard'), 'Larch Bend'))?.slice(0, 4)).toEqual(['Larch Bend', '5', '1', 'few20']);

  // Taken out of the base instead; the choice is kept.
  await choose(page, 'United colonies', 'takenOut');
  await choose(page, 'Loss over', 'winter');
  await soon(() => rowOf(winter, 'Quarry')).toEqual(['Quarry', '11', '3', '27', expect.anything()]);
  await goTo(page, 'Book');
  await goTo(page, 'Losses');
  await soon(() => page.getByRole('combobox', { name: 'United colonies' }).inputValue()).toBe('takenOut');
});

test('few losses: no test, the counts stand alone; the ended stand with their cause and lead to their page', async () => {
  const { page } = await open(twoYards);
  await season(page);
  const died = section(page, 'When they died');
  await died.getByText('Of 16 colonies watched in the winter of 2025–26, 4 were lost by its end').waitFor();
  await died.getByText('One united colony is taken as leaving alive.').waitFor();
  await died.getByText('large enough to be compared, so nothing is').waitFor();
  await died.getByText('Too few for a curve: Larch Bend (1 of 4 lost).').waitFor();
  await died.getByText(/^Of 16 watched, by the end: 4 lost/).waitFor();
  await died.getByRole('checkbox', { name: 'count united colonies as lost' }).check();
  await died.getByText('5 were lost by its end').waitFor();
  const ended = table(page, 'Colonies that ended this season');
  await ended.waitFor();
  expect((await rows(ended)).slice(1)).toEqual([
    ['10 Jul', 'LB-05', 'Larch Bend', 'lost', 'queen failure'],
    ['5 Dec', 'QY-01', 'Quarry', 'lost', 'starvation; cold'],
    ['20 Jan', 'QY-02', 'Quarry', 'lost', '– look at the dead-out'],
    ['22 Jan', 'QY-04', 'Quarry', 'united', '–'],
    ['14 Feb', 'QY-03', 'Quarry', 'lost', 'mites'],
    ['1 Mar', 'LB-01', 'Larch Bend', 'lost', 'queen failure'],
  ]);
  await ended.getByRole('link', { name: 'QY-02', exact: true }).focus();
  await margin(page).getByText('No cause was entered for this loss').waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Colony QY-02', level: 1 }).waitFor();
});

test('a season that runs says so far, and the address carries the season', async () => {
  const { page } = await open(demo);
  await season(page, '2026');
  await table(page, 'Winter loss by yard, so far').waitFor();
  expect(await page.getByRole('combobox', { name: 'Season' }).locator('option').first().textContent()).toBe('2026–27, so far');
  expect(page.url()).toContain('season=2026');
  await season(page);
  await table(page, 'Winter loss by yard').waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'Season review, 2025–26', level: 1 }).waitFor();
});

test('the account balances in every line, its total is ruled double, and a count opens its colonies', async () => {
  const { page } = await open(demo);
  await season(page);
  const account = table(page, 'The season’s account');
  await account.waitFor();
  const heads = (await rows(account))[1]!.map((head) => head.replaceAll('\u00ad', ''));
  const first = heads.findIndex((head) => ['Moved out', 'Sold', 'Given', 'United', 'Absconded', 'Lost, summer'].includes(head));
  const end = heads.indexOf('End');
  const lines = (await rows(account)).slice(2).map((row) => row.map(Number));
  expect(lines).toHaveLength(7);
  for (const line of lines) {
    const sum = (from: number, to: number) => line.slice(from, to).reduce((total, count) => total + count, 0);
    expect(line[1]! + sum(2, first) - sum(first, end)).toBe(line[end]);
  }
  await page.getByText(/^It balances: /).waitFor();
  expect(await account.locator('tfoot td').first().evaluate((cell) => getComputedStyle(cell).borderBottomStyle)).toBe('double');
  await account.getByRole('button', { name: /Quarry: lost, winter/ }).click();
  const behind = section(page, 'Colonies behind “Quarry: lost, winter”');
  await behind.getByRole('link').first().waitFor();
  expect(await behind.getByRole('link').count()).toBe(lines[5]![heads.indexOf('Lost, winter')]);
});

test('grouping, curve, test, pairs and the colonies behind a group, by one winter and by all', async () => {
  const opened = await open(demo);
  const { page } = opened;
  await season(page);
  const died = section(page, 'When they died');
  const picture = died.getByRole('img', { name: /^Share of colonies alive/ });
  await picture.waitFor();
  await died.getByRole('checkbox', { name: 'Quarry' }).check();
  await soon(() => picture.locator('.chart-name').allTextContents()).toContain('Quarry');
  expect(await picture.locator('.chart-quiet').allTextContents()).toContain('Jan');
  const names = await picture.locator('.chart-name').evaluateAll((texts) => texts.map((text) => text.getBoundingClientRect().top));
  names.sort((a, b) => a - b).forEach((top, at) => expect(top - (names[at - 1] ?? -Infinity)).toBeGreaterThan(12));

  await choose(page, 'By', 'queenAge');
  await died.getByText('Lost by age of the queen:').waitFor();
  await died.getByText(/^Drawn but not compared: .*year not known \(not on record\)\.$/).waitFor();
  await choose(page, 'Winters', 'all');
  await died.getByText(/compared within each of \d winters/).waitFor();
  const part = await opened.desk('losses.survival', { season: null, axis: 'winter', by: 'queenAge', united: 'alive' });
  const compared = part.test?.kind === 'made' ? part.test.groups.length : 0;
  expect(compared).toBe(part.groups.length - 1);
  await died.getByText('days since the winter’s first day').waitFor();
  const groups = died.getByRole('table', { name: 'The groups in figures' });
  for (const { label, colonies, losses } of part.groups) await soon(async () => (await rowOf(groups, label))?.slice(1, 3)).toEqual([String(colonies), String(losses)]);
  await died.getByText(/^Log-rank: chi-square/).waitFor();
  await died.getByRole('button', { name: 'Compare the groups pair by pair' }).click();
  await soon(async () => (await rows(died.getByRole('table', { name: 'Pair by pair' }))).length).toBe(1 + (compared * (compared - 1)) / 2);
  await died.getByRole('button', { name: /older queen: lost/ }).click();
  const lost = part.groups.find(({ key }) => key === 'older');
  await soon(() => section(page, 'Colonies behind “older queen: lost”').getByRole('link').count()).toBe(lost?.losses);

  await choose(page, 'Counted from', 'start');
  await died.getByText('belongs to one winter').waitFor();
  await choose(page, 'By', 'source');
  await died.getByText('years since the colony’s start').waitFor();
  await died.getByRole('button', { name: /^As a table \(Colonies alive, by source/ }).click();
  expect((await rows(died.getByRole('table', { name: /^Colonies alive/ }))).length).toBeGreaterThan(10);
});

test('an empty book says what will be here, and the screen is accessible then', async () => {
  const { page } = await open({
    first: async (desk) => {
      await desk('book.create', { name: 'New book' });
    },
  });
  await page.getByText('Once colonies are in the book').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Bring records in on the Book page' }).click();
  await page.getByRole('heading', { name: 'Book', level: 1 }).waitFor();
});

test('the review prints whole, with the book’s name, black on white, without rail and margin', async () => {
  const { page } = await open(demo);
  await season(page);
  await page.locator('.chart-line').first().waitFor();
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await page.getByText('Ossar Valley').last().isVisible()).toBe(true);
  expect(await page.locator('.rail').isVisible()).toBe(false);
  expect(await page.locator('.margin').isVisible()).toBe(false);
  const picture = page.locator('.review-figure .chart-line');
  expect(await picture.first().evaluate((drawn) => getComputedStyle(drawn).stroke)).toBe('rgb(0, 0, 0)');
  const dashes = await picture.evaluateAll((lines) => lines.map((drawn) => drawn.getAttribute('stroke-dasharray')));
  expect(new Set(dashes).size).toBe(dashes.length);
  expect(dashes.length).toBeGreaterThan(1);
});

test.each([1280, 853])('the screen is accessible and does not run over its width at %i px, with a list open', async (width) => {
  const { page } = await open({ ...demo, width });
  await season(page);
  await table(page, 'Winter loss by yard').waitFor();
  await page.locator('.chart-line').first().waitFor();
  await table(page, 'Winter loss by yard').getByRole('button', { name: /All yards: lost/ }).click();
  await section(page, 'Colonies behind “All yards: lost”').getByRole('link').first().waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await expectAccessible(page);
});

test('no figure is undefined anywhere, in any season, period and grouping', async () => {
  const { page } = await open(demo);
  await page.getByRole('combobox', { name: 'Season' }).locator('option').first().waitFor({ state: 'attached' });
  const seasons = await page.getByRole('combobox', { name: 'Season' }).locator('option').evaluateAll((options) => options.map((option) => (option as HTMLOptionElement).value));
  expect(seasons.length).toBeGreaterThanOrEqual(6);
  expect(seasons).toEqual(seasons.toSorted((a, b) => Number(b) - Number(a)));
  const clean = async () => expect(await page.locator('main').innerHTML()).not.toMatch(/NaN|undefined|null|Infinity/);
  for (const one of seasons) {
    await season(page, one);
    for (const period of ['winter', 'summer', 'year']) {
      await choose(page, 'Loss over', period);
      await page.locator('.rates').first().waitFor();
      await clean();
    }
    for (const by of ['yard', 'source', 'queenAge', 'line', 'treated', 'mites', 'stores']) {
      await choose(page, 'By', by);
      await page.locator('.review-stale').waitFor({ state: 'detached' });
      await clean();
    }
  }
});
