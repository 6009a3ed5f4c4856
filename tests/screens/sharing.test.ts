import { readFileSync } from 'node:fs';
import { day, dayInWords } from '#shared/days.ts';
import { afterAll, afterEach, expect, test } from 'vitest';
import { paperLayout } from '#shared/paperLayout.ts';
import { expectAccessible } from './support/axe.ts';
import { goTo, notice, words } from './support/person.ts';
import { pdfText } from './support/pdfText.ts';
import { closeBrowser, openWindow, type OpenedWindow, type WindowOptions } from './support/window.ts';

const demo: WindowOptions = {
  first: async (desk) => {
    await desk('book.demo', { which: 'ossar' });
  },
};

let window: OpenedWindow | undefined;
const open = async (options: WindowOptions) => (window = await openWindow(options));
afterEach(async () => {
  await window?.close();
  window = undefined;
});
afterAll(closeBrowser);

test('answers are copied one by one and all together, for any season and quarter', async () => {
  const { page, desk } = await open({ ...demo, at: '/losses' });
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: new URL(page.url()).origin });
  const copied = () => page.evaluate(() => navigator.clipboard.readText());
  await page.getByRole('link', { name: 'Answers for loss surveys' }).press('Enter');
  await page.getByRole('heading', { name: 'Answers for loss surveys', level: 1 }).waitFor();
  const first = await desk('losses.answers', {});
  expect(first.sheets.map(({ running }) => running)).toEqual([false, false, false]);
  const [turnover, wintering] = first.sheets;
  const atRisk = turnover!.rows.find(({ key }) => key === 'atRisk')!.cells.map(({ text }) => text);
  await page.getByRole('button', { name: /^Copy: At risk, Colonies through the year/ }).press('Enter');
  await notice(page).getByText('Copied: At risk.').waitFor();
  expect(await copied()).toBe(atRisk.join('\t'));
  await page.getByRole('button', { name: 'Copy all answers' }).press('Enter');
  await notice(page).getByText('Copied: Answers for loss surveys.').waitFor();
  const all = await copied();
  for (const { title } of first.sheets) expect(all).toContain(`\n\n${title}\n`);
  expect(all).toContain(`Winter loss: All: ${wintering!.rows.find(({ key }) => key === 'rate')!.cells[0]!.text}`);
  await expectAccessible(page);

  // A running season, and one without records: said, not filled with noughts.
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2026');
  await page.getByRole('columnheader', { name: 'Winter, so far' }).waitFor();
  expect(await words(page.locator('main'))).toContain('so far to 25 November 2026');
  await page.getByRole('combobox', { name: 'Quarter' }).selectOption({ index: (await desk('losses.answers', {})).quarters.length - 1 });
  await page.getByText(/^Not known: The book begins on/).waitFor();
  expect(await page.locator('main').innerHTML()).not.toMatch(/NaN|undefined|Infinity/);
});

test('the review goes on paper page by page, into files, and into one page to send', async () => {
  const { page, desk } = await open({ ...demo, at: '/losses' });
  const kept = 'Feed the weak ones by the end of August.';
  await desk('losses.keepNotes', { season: 2025, text: kept });
  await page.getByRole('combobox', { name: 'Season' }).selectOption('2025');
  await page.getByRole('heading', { name: 'Season review, 2025–26' }).waitFor();
  await page.getByRole('button', { name: 'Print or share' }).press('Enter');
  const paper = await desk('losses.paper', { season: 2025, united: 'lost' });
  const parts = paper.sections.flatMap((section) => section.parts);
  await page.getByRole('heading', { name: paper.sections.at(-1)!.title }).waitFor();
  await expectAccessible(page);
  expect(paper.sections.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  for (const { number, title } of paper.sections) expect(await page.getByRole('heading', { name: `${number} ${title}`, exact: true, level: 2 }).count(), title).toBe(1);
  for (const { title } of parts) if (title !== '') expect(await page.getByRole('heading', { name: title, exact: true, level: 3 }).count(), title).toBe(1);
  expect(await page.locator('svg.drawing').count()).toBe(parts.flatMap(({ drawings }) => drawings).length);

  await page.getByText('Tables as CSV files').click();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'losses-2025-ended.csv' }).press('Enter');
  const csv = readFileSync(await (await saved).path(), 'utf8');
  const ended = parts.flatMap(({ tables }) => tables).find(({ key }) => key === 'ended')!;
  expect(csv.trimEnd().split('\n')).toHaveLength(ended.rows.length + 1);
  const sent = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as one HTML file' }).press('Enter');
  const html = readFileSync(await (await sent).path(), 'utf8');
  expect(html).toContain('<svg class="drawing"');
  expect(html).not.toMatch(/<script|<link|<img|https?:/);

  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  const looks = await page.evaluate(() => ({
    ink: getComputedStyle(document.querySelector('.review-paper h1')!).color,
    ground: getComputedStyle(document.body).backgroundColor,
    heads: [...document.querySelectorAll('thead')].map((head) => getComputedStyle(head).display),
    wide: Math.max(...[...document.querySelectorAll('table')].map((table) => table.scrollWidth - document.documentElement.clientWidth)),
    last: [...document.querySelectorAll('tbody tr')].at(-1)?.textContent ?? '',
  }));
  expect(looks).toMatchObject({ ink: 'rgb(0, 0, 0)', ground: 'rgb(255, 255, 255)' });
  expect(new Set(looks.heads)).toEqual(new Set(['table-header-group']));
  expect(looks.wide).toBeLessThanOrEqual(0);
  const yards = parts.flatMap(({ tables }) => tables).find(({ key }) => key === 'causes-by-yard')!;
  expect(looks.last).toContain(String(yards.rows.at(-1)![0]));
  const squeezed = (text: string) => text.replace(/\s+/g, '').replaceAll('ʼ', '’');
  for (const [format, box] of [['Letter', '612 792'], ['A4', '595']] as const) {
    const file = await page.pdf({ format });
    expect(file.toString('latin1')).toMatch(new RegExp(`/MediaBox \\[0 0 ${box}`));
    const pages = pdfText(file).map(squeezed);
    expect(pages.length).toBeGreaterThanOrEqual(8);
    pages.forEach((text, at) => {
      expect(text, `page ${at + 1}`).toContain(`${at + 1}of${pages.length}`);
      expect(text, `page ${at + 1}`).toContain('OssarValley,asof25November2026');
    });
    // No head of a table or of a part is the last on its page.
    const bodies = pages.map((text, at) => text.replace(`${at + 1}of${pages.length}`, '').replace('OssarValley,asof25November2026', ''));
    const heads = [
      ...parts.map(({ title }) => squeezed(title)), ...paper.sections.map(({ number, title }) => squeezed(`${number} ${title}`)),
      ...parts.flatMap(({ tables }) => tables).filter(({ onPaper }) => onPaper).map((table) => squeezed(paperLayout(table).columns.map(({ label }) => label).join(''))),
    ].filter((head) => head !== '');
    for (const head of heads) expect(bodies.filter((text) => text.endsWith(head)), head).toEqual([]);
    const whole = pages.join('');
    for (const { number, title } of paper.sections) expect(whole).toContain(squeezed(`${number} ${title}`));
    // The last colony that ended, and the last line of all: what was written to oneself.
    const last = ended.rows.at(-1)!;
    expect(pages.some((text) => text.includes(squeezed(`${dayInWords(day(String(last[0])))}${last[1]}${last[2]}${last[3]}`)))).toBe(true);
    expect(pages.at(-1)).toContain(squeezed(kept));
    // Colonies that ended go over more than one page: the head of the table stands on each of them.
    const rows = ended.rows.map(([on, label, yard]) => squeezed(`${dayInWords(day(String(on)))}${label}${yard}`));
    const bearing = pages.filter((text) => rows.some((row) => text.includes(row)));
    for (const text of bearing) expect(text).toContain('DayColonyYardHowCause');
    expect(rows.filter((row) => !whole.includes(row))).toEqual([]);
  }
});

test('an empty book has no answers and no paper, and says so', async () => {
  const { page } = await open({
    at: '/losses/answers',
    first: async (desk) => {
      await desk('book.create', { name: 'New book' });
    },
  });
  await page.getByText('Once colonies are in the book').waitFor();
  await expectAccessible(page);
  await goTo(page, 'Losses');
  await page.evaluate(() => {
    location.hash = '/print/losses';
  });
  await page.getByText('Nothing is in the book yet').waitFor();
  expect(await page.getByRole('button', { name: 'Print' }).count()).toBe(0);
  await expectAccessible(page);
});
